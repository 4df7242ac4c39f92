#include "ui/widgets/message_strip.h"

#include "ui/drawing/scheme.h"
#include "ui/look/icons.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>
#include <QPushButton>
#include <QStyle>

#include <utility>

namespace coilbook {

MessageStrip::MessageStrip(QWidget* parent)
    : QFrame(parent)
    , m_picture(new QLabel(this))
    , m_text(new QLabel(this))
    , m_buttons(new QHBoxLayout) {
    m_text->setTextFormat(Qt::PlainText);
    m_text->setWordWrap(true);
    m_text->setTextInteractionFlags(Qt::TextSelectableByMouse);
    auto* close = new QPushButton(icon(Picture::Close), tr("Close"), this);
    close->setFocusPolicy(Qt::TabFocus);
    connect(close, &QPushButton::clicked, this, &MessageStrip::dismiss);

    auto* row = new QHBoxLayout(this);
    row->addSpacing(style()->pixelMetric(QStyle::PM_LayoutLeftMargin) / 2);
    row->addWidget(m_picture);
    row->addWidget(m_text, 1);
    row->addLayout(m_buttons);
    row->addWidget(close);
    hide();
}

void MessageStrip::tell(Kind kind, const QString& sentence, std::vector<WayOut> waysOut) {
    m_kind = kind;
    const int side = style()->pixelMetric(QStyle::PM_SmallIconSize);
    const Picture picture = kind == Kind::Fault ? Picture::Caution : Picture::Saved;
    m_picture->setPixmap(icon(picture).pixmap(QSize(side, side), devicePixelRatioF()));
    m_text->setText(sentence);
    for (QPushButton* old : std::exchange(m_waysOut, {})) {
        old->hide();
        old->deleteLater(); // it may be the one whose click brought us here
    }
    for (WayOut& way : waysOut) {
        auto* button = new QPushButton(way.text, this);
        button->setFocusPolicy(Qt::TabFocus);
        connect(button, &QPushButton::clicked, this, [this, take = std::move(way.take)] {
            dismiss();
            take();
        });
        m_buttons->addWidget(button);
        button->show();
        m_waysOut.push_back(button);
    }
    setAccessibleName(sentence);
    show();
    update();
}

void MessageStrip::dismiss() {
    hide();
    m_text->clear();
}

QString MessageStrip::sentence() const {
    return m_text->text();
}

void MessageStrip::paintEvent(QPaintEvent* event) {
    QFrame::paintEvent(event);
    const Scheme scheme = schemeFor(palette());
    const QColor edge = m_kind == Kind::Fault ? scheme.pastLimit : scheme.sound;
    QPainter painter(this);
    painter.fillRect(rect(), scheme.panel);
    painter.fillRect(QRect(0, 0, fontMetrics().averageCharWidth() / 2, height()), edge);
    painter.fillRect(QRect(0, height() - 1, width(), 1), scheme.line);
}

} // namespace coilbook
