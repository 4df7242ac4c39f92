#include "ui/look/icons.h"

#include <QFile>
#include <QGuiApplication>
#include <QIconEngine>
#include <QPainter>
#include <QPalette>
#include <QSvgRenderer>

#include <array>
#include <optional>
#include <utility>

// The resources sit in a static library: without this the linker leaves them out. It has to be
// outside of any namespace.
static void loadResources() {
    Q_INIT_RESOURCE(resources);
}

namespace coilbook {

namespace {

/// In the order of the enumerators.
constexpr std::array kFiles{"coil",  "bench",   "review", "sheet",   "engine",   "new",
                            "demo",  "open",    "import", "export",  "backup",   "undo",
                            "redo",  "caution", "saved",  "locked",  "close",    "add",
                            "amend", "race",    "tester", "records", "settings", "retired"};

QByteArray drawingOf(Picture picture) {
    static const bool loaded = [] {
        loadResources();
        return true;
    }();
    Q_UNUSED(loaded)
    const char* name = kFiles.at(static_cast<std::size_t>(picture));
    QFile file(QStringLiteral(":/coilbook/icons/%1.svg").arg(QLatin1String(name)));
    return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}

/// Draws one SVG whose strokes are black in whatever colour the palette has now.
class PictureEngine final : public QIconEngine {
public:
    PictureEngine(QByteArray drawing, const std::optional<QColor>& colour)
        : m_drawing(std::move(drawing))
        , m_colour(colour) {}

    void paint(QPainter* painter, const QRect& rect, QIcon::Mode mode, QIcon::State) override {
        QByteArray coloured = m_drawing;
        coloured.replace("#000", colourFor(mode).name(QColor::HexRgb).toLatin1());
        QSvgRenderer renderer(coloured);
        renderer.setAspectRatioMode(Qt::KeepAspectRatio);
        renderer.render(painter, QRectF(rect));
    }

    QPixmap pixmap(const QSize& size, QIcon::Mode mode, QIcon::State state) override {
        QPixmap result(size);
        result.fill(Qt::transparent);
        QPainter painter(&result);
        paint(&painter, QRect(QPoint(0, 0), size), mode, state);
        return result;
    }

    [[nodiscard]] QIconEngine* clone() const override { return new PictureEngine(*this); }

private:
    [[nodiscard]] QColor colourFor(QIcon::Mode mode) const {
        const QPalette palette = QGuiApplication::palette();
        switch (mode) {
        case QIcon::Disabled:
            return palette.color(QPalette::Disabled, QPalette::WindowText);
        case QIcon::Selected:
            return palette.color(QPalette::HighlightedText);
        case QIcon::Normal:
        case QIcon::Active:
            break;
        }
        return m_colour.value_or(palette.color(QPalette::WindowText));
    }

    QByteArray m_drawing;
    std::optional<QColor> m_colour;
};

} // namespace

QIcon icon(Picture picture) {
    return QIcon(new PictureEngine(drawingOf(picture), std::nullopt));
}

QIcon icon(Picture picture, const QColor& colour) {
    return QIcon(new PictureEngine(drawingOf(picture), colour));
}

} // namespace coilbook
