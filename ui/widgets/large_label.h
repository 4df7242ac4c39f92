#pragma once

#include <QWidget>

namespace coilbook {

/// One line of text whose digits have a height in millimetres on the screen, to be read from afar.
/// It keeps its height whatever it shows, and shows text that is too wide for it smaller.
class LargeLabel : public QWidget {
    Q_OBJECT
public:
    explicit LargeLabel(double digitMillimetres, QWidget* parent = nullptr);

    [[nodiscard]] QString text() const { return m_text; }

    void setText(const QString& text);
    /// An invalid colour means that of ordinary text.
    void setColour(const QColor& colour);
    void setBold(bool bold);
    /// The widest text to be expected, for which room is kept.
    void setWidest(const QString& text);

    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    [[nodiscard]] double digitHeight() const;
    [[nodiscard]] int roomHeight() const;
    [[nodiscard]] QFont largeFont() const;

    double m_digitMillimetres;
    QString m_text;
    QString m_widest;
    QColor m_colour;
    bool m_bold = false;
};

} // namespace coilbook
