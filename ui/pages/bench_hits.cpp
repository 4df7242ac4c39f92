#include "ui/pages/bench_hits.h"

#include "ui/widgets/follow_font.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QToolButton>

namespace coilbook {

namespace {

/// More hits than this fit no screen; the newest are the ones to be corrected.
constexpr std::size_t kMost = 6;

QString textOf(const RoundHit& hit) {
    QString text = BenchHits::tr("Hit %1: %2").arg(hit.number).arg(hit.value.text());
    if (hit.retest) {
        text += QLatin1Char(' ') + BenchHits::tr("re-test");
    }
    if (hit.corrected) {
        text += QLatin1Char(' ') + BenchHits::tr("corrected");
    }
    if (hit.crossedOut) {
        text += QLatin1Char(' ') + BenchHits::tr("crossed out");
    }
    return text;
}

} // namespace

BenchHits::BenchHits(QWidget* parent)
    : QWidget(parent)
    , m_none(new QLabel(tr("No hit yet."))) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(m_none);
    for (std::size_t i = 0; i < kMost; ++i) {
        addButton(i);
    }
    row->addStretch(1);
    keepTargetHeight(*this);
}

void BenchHits::addButton(std::size_t index) {
    auto* button = new QToolButton;
    button->setFocusPolicy(Qt::NoFocus);
    button->setCheckable(true);
    button->setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Expanding);
    button->hide();
    connect(button, &QToolButton::clicked, this, [this, index] {
        Q_EMIT hitChosen(m_buttons[index]->property("hit").value<std::size_t>());
    });
    m_buttons.push_back(button);
    layout()->addWidget(button);
}

void BenchHits::list(const std::vector<RoundHit>& hits, std::optional<std::size_t> chosen) {
    m_none->setVisible(hits.empty());
    const std::size_t first = hits.size() > kMost ? hits.size() - kMost : 0;
    for (std::size_t i = 0; i < kMost; ++i) {
        const std::size_t hit = first + i;
        QToolButton* button = m_buttons[i];
        button->setVisible(hit < hits.size());
        if (hit < hits.size()) {
            QFont struck; // only this trait is set; the size follows
            struck.setStrikeOut(hits[hit].crossedOut);
            button->setFont(struck);
            button->setText(textOf(hits[hit]));
            button->setProperty("hit", QVariant::fromValue(hit));
            button->setChecked(chosen == hit);
            button->setToolTip(tr("Correct or withdraw this hit"));
        }
    }
}

QString BenchHits::text() const {
    QStringList texts;
    for (const QToolButton* button : m_buttons) {
        if (!button->isHidden()) {
            texts.append(button->text());
        }
    }
    return texts.join(QStringLiteral("; "));
}

} // namespace coilbook
