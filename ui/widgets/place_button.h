#pragma once

#include "ui/look/icons.h"

#include <QAbstractButton>

namespace coilbook {

/// Leads to one of the window's places. Shows picture, word and key side by side; the place one is
/// in stands on the page's own ground with a heavy bar above. At least 9 mm high.
class PlaceButton : public QAbstractButton {
    Q_OBJECT
public:
    PlaceButton(Picture picture, const QString& word, const QString& key,
                QWidget* parent = nullptr);

    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;
    void enterEvent(QEnterEvent* event) override;
    void leaveEvent(QEvent* event) override;

private:
    [[nodiscard]] QFont keyFont() const;
    [[nodiscard]] int unit() const; ///< the step of all distances inside
    [[nodiscard]] int pictureSide() const;

    QString m_key;
};

} // namespace coilbook
