#include "ui/drawing/fonts.h"

#include <QFontDatabase>

namespace coilbook {

QString programFontFamily() {
    static const QString family = [] {
        const QString wanted = QStringLiteral("Noto Sans");
        return QFontDatabase::hasFamily(wanted)
                   ? wanted
                   : QFontDatabase::systemFont(QFontDatabase::GeneralFont).family();
    }();
    return family;
}

QFont programFont(double points, QFont::Weight weight) {
    QFont font(programFontFamily());
    font.setPointSizeF(points);
    font.setWeight(weight);
    return font;
}

} // namespace coilbook
