#include "ui/pages/review_cells.h"

#include "core/wording/wording.h"
#include "ui/drawing/standing_mark.h"

#include <QCoreApplication>
#include <QPainter>

#include <algorithm>

namespace coilbook {

namespace {

struct Words {
    Q_DECLARE_TR_FUNCTIONS(ReviewCells)
};

QFont bold(QFont font) {
    font.setBold(true);
    return font;
}

/// How a cell is shared out between the mark, the words and the chart.
struct CellParts {
    QRectF mark;
    QRectF words;
    QRectF chart;
};

/// Of the small charts' few words: they step back behind the spring's own.
QFont chartFont(QFont font) {
    font.setPointSizeF(font.pointSizeF() * 0.85);
    return font;
}

/// The font, made smaller until the text fits its room by breaking lines; at most by half, which at
/// large text is still the size of small print.
QFont fitted(QFont font, const QString& text, const QSizeF& room) {
    const double size = font.pointSizeF();
    for (double part = 1.0; part > 0.5; part -= 0.05) {
        font.setPointSizeF(size * part);
        const QRectF needed = QFontMetricsF(font).boundingRect(
            QRectF(QPointF(), room), Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap, text);
        if (needed.width() <= room.width() && needed.height() <= room.height()) {
            break;
        }
    }
    return font;
}

CellParts partsOf(const QRectF& cell, const QFont& font) {
    const QFontMetricsF metrics(font);
    const double line = metrics.height();
    const double markWidth = line * 0.7;
    const double markHeight = std::min(cell.height() - 4.0, 2.2 * markWidth);
    const double gap = line * 0.35;
    // Wide enough for the longest standing but the due one, which takes two lines.
    const double words = std::max(
        metrics.averageCharWidth() * 12.0,
        QFontMetricsF(bold(font)).horizontalAdvance(wording::standing(Standing::PastLimit, 0)) +
            gap);
    CellParts parts;
    parts.mark = QRectF(cell.left() + gap, cell.top() + gap, markWidth, markHeight - gap);
    parts.words = QRectF(parts.mark.right() + gap, cell.top(), std::min(words, cell.width() * 0.5),
                         cell.height());
    parts.chart = QRectF(QPointF(parts.words.right(), cell.top()), cell.bottomRight());
    return parts;
}

} // namespace

void ReviewCells::set(const EngineHistory& history, std::shared_ptr<const Assessment> assessment,
                      const Quantities& quantities) {
    m_assessment = std::move(assessment);
    m_quantities = quantities;
    m_painter.setQuantities(quantities);
    m_entries.clear();
    std::vector<LossChart> charts;
    for (const SpringAssessment& spring : m_assessment->springs) {
        charts.push_back(lossChartOf(history, *m_assessment, spring));
    }
    m_range = commonRange(charts, *m_assessment, quantities.unit());
    for (std::size_t i = 0; i < charts.size(); ++i) {
        m_entries[m_assessment->springs[i].place] = {i, std::move(charts[i])};
    }
}

void ReviewCells::clear() {
    m_assessment.reset();
    m_entries.clear();
}

const LossChart* ReviewCells::chartAt(const Place& place) const {
    const auto found = m_entries.find(place);
    return found == m_entries.end() ? nullptr : &found->second.chart;
}

const SpringAssessment* ReviewCells::springAt(const Place& place) const {
    const auto found = m_entries.find(place);
    return found == m_entries.end() ? nullptr : &m_assessment->springs[found->second.spring];
}

void ReviewCells::paint(QPainter& painter, const EnginePlan::Cell& cell, const Scheme& scheme) {
    const CellParts parts = partsOf(cell.area, painter.font());
    const SpringAssessment* spring = springAt(cell.place);
    if (spring == nullptr) {
        painter.setPen(scheme.mutedText);
        painter.drawText(parts.words.united(parts.chart), Qt::AlignLeft | Qt::AlignVCenter,
                         Words::tr("%1: no spring yet", "a place").arg(placeText(cell.place)));
        return;
    }
    drawStandingMark(painter, parts.mark, standingMarkOf(*spring, m_assessment->rules), scheme);
    paintWords(painter, parts.words, *spring, scheme);
    painter.setFont(chartFont(painter.font()));
    m_painter.paint(painter, parts.chart, *chartAt(cell.place), m_range, ChartDetail::Small,
                    scheme);
}

void ReviewCells::paintWords(QPainter& painter, const QRectF& area, const SpringAssessment& spring,
                             const Scheme& scheme) const {
    const QFont plain = painter.font();
    const QFontMetricsF metrics(plain);
    const double line = metrics.height();
    const bool roomy = area.height() >= 4.0 * line; // a line for the loss alone
    const QString place = placeText(spring.place);
    const QString loss = spring.measuredLoss ? m_quantities.force(*spring.measuredLoss) : QString();

    painter.setFont(bold(plain));
    painter.setPen(scheme.text);
    const QRectF first(area.left(), area.top(), area.width(), line * 1.1);
    painter.drawText(first, Qt::AlignLeft | Qt::AlignVCenter, place);
    const double placeEnd = painter.fontMetrics().horizontalAdvance(place + QLatin1String("  "));

    painter.setFont(plain);
    const double lossWidth = roomy ? 0.0 : metrics.horizontalAdvance(loss + QLatin1Char(' '));
    const double labelWidth = area.width() - placeEnd - lossWidth;
    painter.setPen(scheme.mutedText);
    painter.drawText(first.adjusted(placeEnd, 0.0, 0.0, 0.0), Qt::AlignLeft | Qt::AlignVCenter,
                     metrics.elidedText(spring.label, Qt::ElideRight, labelWidth));
    painter.setPen(scheme.text);
    double below = first.bottom();
    if (roomy) {
        const QString full = spring.measuredLoss ? m_quantities.forceWithUnit(*spring.measuredLoss)
                                                 : Words::tr("not read yet");
        painter.drawText(QRectF(area.left(), below, area.width(), line),
                         Qt::AlignLeft | Qt::AlignVCenter, full);
        below += line;
    } else {
        painter.drawText(first.adjusted(0.0, 0.0, -metrics.averageCharWidth() * 0.5, 0.0),
                         Qt::AlignRight | Qt::AlignVCenter, loss);
    }

    const QString word = wording::standing(spring, m_assessment->rules.racesAhead);
    const QRectF rest(QPointF(area.left(), below), area.bottomRight());
    painter.setFont(fitted(bold(plain), word, rest.size()));
    painter.setPen(scheme.of(spring.standing));
    painter.drawText(rest, Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap, word);
    painter.setFont(plain);
}

void ReviewCells::paintScale(QPainter& painter, const QRectF& area, const Scheme& scheme) {
    if (m_assessment) {
        const QRectF chart = partsOf(area, painter.font()).chart;
        painter.setFont(chartFont(painter.font()));
        m_painter.paintRaceScale(painter, chart, m_range, scheme);
    }
}

QString ReviewCells::describe(const Place& place) const {
    const SpringAssessment* spring = springAt(place);
    if (spring == nullptr) {
        return Words::tr("%1: no spring yet.", "a place").arg(wording::place(place));
    }
    const QString standing = wording::standing(*spring, m_assessment->rules.racesAhead);
    if (!spring->measuredLoss) {
        return Words::tr("%1, spring %2: %3.", "place, label, standing")
            .arg(wording::place(place), spring->label, standing);
    }
    return Words::tr("%1, spring %2: %3, measured loss %4.", "place, label, standing, force")
        .arg(wording::place(place), spring->label, standing,
             m_quantities.forceWithUnit(*spring->measuredLoss));
}

} // namespace coilbook
