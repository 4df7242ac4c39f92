#include "ui/widgets/choice_card.h"

#include "ui/drawing/scheme.h"
#include "ui/widgets/physical_size.h"

#include <QPainter>

#include <algorithm>

namespace coilbook {

namespace {

constexpr int kUsualCharacters = 58;
constexpr int kLeastCharacters = 30;

} // namespace

ChoiceCard::ChoiceCard(Picture picture, const QString& title, const QString& sentence,
                       QWidget* parent)
    : QAbstractButton(parent)
    , m_sentence(sentence) {
    setIcon(coilbook::icon(picture));
    setText(title);
    setAccessibleDescription(sentence);
    setFocusPolicy(Qt::StrongFocus);
    QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Fixed);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
}

QFont ChoiceCard::titleFont() const {
    QFont large = font();
    large.setPointSizeF(large.pointSizeF() * 1.3);
    large.setWeight(QFont::DemiBold);
    return large;
}

int ChoiceCard::margin() const {
    return fontMetrics().height() * 3 / 4;
}

int ChoiceCard::pictureSide() const {
    return fontMetrics().height() * 2;
}

QRect ChoiceCard::wordsIn(int width) const {
    const int left = 2 * margin() + pictureSide();
    const int room = std::max(1, width - left - margin());
    const QRect title(left, margin(), room, QFontMetrics(titleFont()).height());
    const QRect sentence = fontMetrics().boundingRect(
        QRect(left, title.bottom() + 1 + margin() / 4, room, 10000), Qt::TextWordWrap, m_sentence);
    return title.united(sentence);
}

int ChoiceCard::heightForWidth(int width) const {
    return std::max(wordsIn(width).bottom() + 1 + margin(), targetHeight(*this));
}

QSize ChoiceCard::sizeHint() const {
    const int width = fontMetrics().averageCharWidth() * kUsualCharacters;
    return {width, heightForWidth(width)};
}

QSize ChoiceCard::minimumSizeHint() const {
    // A card that is narrower than usual grows by heightForWidth(); its least height stays usual.
    return {fontMetrics().averageCharWidth() * kLeastCharacters, sizeHint().height()};
}

void ChoiceCard::enterEvent(QEnterEvent* event) {
    QAbstractButton::enterEvent(event);
    update();
}

void ChoiceCard::leaveEvent(QEvent* event) {
    QAbstractButton::leaveEvent(event);
    update();
}

void ChoiceCard::paintEvent(QPaintEvent*) {
    const Scheme scheme = schemeFor(palette());
    QPainter painter(this);
    const bool marked = isEnabled() && (underMouse() || hasFocus());
    painter.fillRect(rect(), isDown() ? scheme.grid : scheme.panel);
    painter.setPen(QPen(marked ? scheme.accent : scheme.grid, marked ? 2 : 1));
    painter.drawRect(rect().adjusted(1, 1, -1, -1));
    painter.fillRect(QRect(0, 0, margin() / 3, height()), marked ? scheme.accent : scheme.line);

    const int side = pictureSide();
    const QIcon::Mode mode = isEnabled() ? QIcon::Normal : QIcon::Disabled;
    QAbstractButton::icon().paint(&painter, QRect(margin(), margin(), side, side), Qt::AlignCenter,
                                  mode);
    const QRect words = wordsIn(width());
    painter.setPen(isEnabled() ? scheme.text : scheme.mutedText);
    painter.setFont(titleFont());
    painter.drawText(words, Qt::AlignLeft | Qt::AlignTop, text());
    painter.setFont(font());
    painter.setPen(scheme.mutedText);
    const int below = words.top() + QFontMetrics(titleFont()).height() + margin() / 4;
    painter.drawText(QRect(words.left(), below, width() - words.left() - margin(), height()),
                     Qt::TextWordWrap, m_sentence);
}

} // namespace coilbook
