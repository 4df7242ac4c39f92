#pragma once

#include "ui/look/icons.h"

#include <QAbstractButton>

namespace coilbook {

/// A big choice of an empty page: picture, a word or two, and a sentence on what it does.
class ChoiceCard : public QAbstractButton {
    Q_OBJECT
public:
    ChoiceCard(Picture picture, const QString& title, const QString& sentence,
               QWidget* parent = nullptr);

    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

    [[nodiscard]] bool hasHeightForWidth() const override { return true; }

    [[nodiscard]] int heightForWidth(int width) const override;

protected:
    void paintEvent(QPaintEvent* event) override;
    void enterEvent(QEnterEvent* event) override;
    void leaveEvent(QEvent* event) override;

private:
    [[nodiscard]] QFont titleFont() const;
    [[nodiscard]] int margin() const;
    [[nodiscard]] int pictureSide() const;
    /// Where the words stand in a card of that width.
    [[nodiscard]] QRect wordsIn(int width) const;

    QString m_sentence;
};

} // namespace coilbook
