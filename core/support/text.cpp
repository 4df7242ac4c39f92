#include "core/support/text.h"

namespace coilbook {

QString normalised(const QString& text) {
    return text.trimmed().normalized(QString::NormalizationForm_C);
}

QString caseKey(const QString& text) {
    return text.toCaseFolded();
}

namespace {

bool mayDisturb(QChar c) {
    return c.category() == QChar::Other_Control || c.category() == QChar::Other_Format ||
           c.category() == QChar::Separator_Line || c.category() == QChar::Separator_Paragraph;
}

} // namespace

QString shown(const QString& text, qsizetype longest) {
    QString result;
    for (const QChar c : text) {
        if (result.size() >= longest) {
            return result + QChar(0x2026);
        }
        if (c == QLatin1Char('\n')) {
            result += QStringLiteral("\\n");
        } else if (c == QLatin1Char('\t')) {
            result += QStringLiteral("\\t");
        } else if (c == QLatin1Char('\r')) {
            result += QStringLiteral("\\r");
        } else if (mayDisturb(c)) {
            result += QStringLiteral("\\u{%1}").arg(QString::number(c.unicode(), 16).toUpper());
        } else {
            result += c;
        }
    }
    return result;
}

} // namespace coilbook
