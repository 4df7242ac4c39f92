#include "ui/pages/bench_verdict.h"

#include "core/wording/wording.h"
#include "ui/widgets/large_label.h"
#include "ui/widgets/physical_size.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QPainter>

#include <cmath>

namespace coilbook {

namespace {

constexpr double kLossMillimetres = 10.0;
constexpr double kWordsMillimetres = 6.0;
constexpr double kMarkMillimetres = 7.0; ///< its width; it is twice as tall

Standing standingOf(MeasuredStanding measured) {
    switch (measured) {
    case MeasuredStanding::Baseline:
        return Standing::NoTrend;
    case MeasuredStanding::WithinLimit:
        return Standing::Sound;
    case MeasuredStanding::PastLimit:
        return Standing::PastLimit;
    }
    Q_UNREACHABLE();
}

} // namespace

BenchVerdict::BenchVerdict(QWidget* parent)
    : QWidget(parent)
    , m_loss(new LargeLabel(kLossMillimetres))
    , m_words(new LargeLabel(kWordsMillimetres))
    , m_markPlace(new QWidget) {
    m_loss->setBold(true);
    m_loss->setWidest(QStringLiteral("\u221288.8 lbf"));
    m_words->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    m_markPlace->setFixedWidth(
        static_cast<int>(std::ceil(generousPixelsOf(kMarkMillimetres, *this))));
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(m_markPlace);
    row->addWidget(m_loss);
    row->addSpacing(m_markPlace->width() / 3);
    row->addWidget(m_words, 1);
}

void BenchVerdict::judge(const std::optional<RoundVerdict>& verdict, const JudgingRules& rules,
                         const Quantities& quantities) {
    m_mark.reset();
    if (!verdict) {
        m_loss->setText(QStringLiteral("\u2013"));
        m_words->setText(tr("not read yet"));
    } else if (verdict->standing == MeasuredStanding::Baseline) {
        m_mark = StandingMark{Standing::NoTrend, std::nullopt};
        m_loss->setText(tr("baseline"));
        m_words->setText(tr("nothing to compare with yet"));
    } else {
        m_mark = StandingMark{standingOf(verdict->standing), verdict->used};
        const Force loss = *verdict->loss;
        const bool lost = loss.inPoundsForce() >= 0.0;
        m_loss->setText(quantities.forceWithUnit(lost ? loss : -loss));
        const QString limit = quantities.forceWithUnit(rules.limit);
        if (verdict->standing == MeasuredStanding::PastLimit) {
            m_words->setText(tr("lost: PAST the limit of %1").arg(limit));
        } else if (lost) {
            m_words->setText(tr("lost, within the limit of %1").arg(limit));
        } else {
            m_words->setText(tr("above its baseline"));
        }
    }
    colour();
}

QString BenchVerdict::text() const {
    return m_loss->text() + QLatin1Char(' ') + m_words->text();
}

void BenchVerdict::paintEvent(QPaintEvent*) {
    if (!m_mark) {
        return;
    }
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF room = QRectF(m_markPlace->geometry()).adjusted(2.0, 2.0, -2.0, -2.0);
    const double wide = std::min(room.width(), room.height() / 2.0);
    drawStandingMark(painter, QRectF(room.left(), room.top(), wide, room.height()), *m_mark,
                     schemeFor(palette()));
}

void BenchVerdict::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::PaletteChange) {
        colour();
    }
}

void BenchVerdict::colour() {
    const Scheme scheme = schemeFor(palette());
    const QColor of = m_mark ? scheme.of(m_mark->standing) : scheme.mutedText;
    m_loss->setColour(of);
    m_words->setColour(of);
    update();
}

} // namespace coilbook
