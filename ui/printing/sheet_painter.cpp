#include "ui/printing/sheet_painter.h"

#include "core/wording/wording.h"
#include "ui/drawing/standing_mark.h"
#include "ui/printing/amendment_list.h"
#include "ui/printing/paper_plan.h"
#include "ui/printing/printed_words.h"
#include "ui/printing/sheet_blocks.h"
#include "ui/printing/spring_cell.h"

#include <QStringList>

#include <algorithm>
#include <array>

namespace coilbook {

namespace {

constexpr double kGap = mm(2.2);
constexpr double kTallestCell = mm(16.5);
constexpr double kSummarySize = 9.0; ///< points
constexpr double kSummaryHeight = mm(6.4);

class SheetPainting {
public:
    SheetPainting(PaperCanvas& canvas, const SheetContent& content)
        : m_canvas(canvas)
        , m_content(content)
        , m_free(canvas.area()) {}

    void paint() {
        takeTop(drawTitle(m_canvas, m_free, Printed::tr("Valve spring sheet"),
                          Printed::tr("Engine: %1").arg(m_content.engine)));
        takeTop(drawFacts(m_canvas, m_free, facts()));
        drawFoot();
        takeTop(drawSummary());
        const double list = amendmentsHeight();
        const QRectF amendments(m_free.left(), m_free.bottom() - list, m_free.width(), list);
        m_free.setBottom(amendments.top() - kGap);
        const double below = drawPlan();
        // The list follows the plan; it does not stick to the foot when the engine is small.
        drawAmendmentList(
            m_canvas, QRectF(amendments.left(), below + kGap, amendments.width(), list), m_content);
    }

private:
    void takeTop(double height) { m_free.setTop(m_free.top() + height + kGap); }

    QRectF takeBottom(double height) {
        const QRectF taken(m_free.left(), m_free.bottom() - height, m_free.width(), height);
        m_free.setBottom(taken.top() - kGap);
        return taken;
    }

    [[nodiscard]] std::vector<HeadFact> facts() const {
        const QString unknown = Printed::tr("not noted");
        const auto orUnknown = [&](const QString& text) {
            return text.isEmpty() ? unknown : text;
        };
        QStringList names;
        QStringList ranges;
        QStringList calibrations;
        for (const SheetTester& tester : m_content.testers) {
            names << tester.name;
            ranges << orUnknown(tester.range);
            calibrations << orUnknown(tester.calibratedOn);
        }
        const QString separator = QStringLiteral("; ");
        const bool inspected = !m_content.inspectedOn.isEmpty();
        const QString inspection = inspected
                                       ? Printed::tr("%1, after %2 races", "a date, a count")
                                             .arg(m_content.inspectedOn, m_content.inspectedAtRaces)
                                       : Printed::tr("none yet");
        return {
            {Printed::tr("Seal or serial number"), orUnknown(m_content.serial)},
            {Printed::tr("Inspection"), inspection},
            {Printed::tr("Races run by %1").arg(m_content.asOf), m_content.racesRun},
            {Printed::tr("Swap at a loss of"), m_content.limit},
            {Printed::tr("Tester"), orUnknown(names.join(separator))},
            {Printed::tr("Range of the tester"), orUnknown(ranges.join(separator))},
            {Printed::tr("Tester calibrated on"), orUnknown(calibrations.join(separator))},
            {Printed::tr("Tested by"), orUnknown(m_content.inspectors.join(separator))},
        };
    }

    void drawFoot() {
        drawFooter(m_canvas, takeBottom(footerHeight()), m_content.printedAt, m_content.seal);
        drawSignatures(m_canvas, takeBottom(signaturesHeight()),
                       {Printed::tr("Tested by, date"),
                        Printed::tr("Responsible for the engine, date"),
                        Printed::tr("Tech inspector, date")});
        const double cautions = cautionsHeight(m_content.cautions, m_free.width());
        drawCautions(m_canvas, takeBottom(cautions), m_content.cautions);
    }

    /// How many springs stand where, and which; at the same time the key to the marks.
    double drawSummary() {
        struct Column {
            Standing standing;
            double part; ///< of the width
        };

        constexpr std::array kColumns{Column{Standing::PastLimit, 0.30},
                                      Column{Standing::Due, 0.40}, Column{Standing::Sound, 0.13},
                                      Column{Standing::NoTrend, 0.17}};
        double left = m_free.left();
        for (const auto& [standing, part] : kColumns) {
            const double width = m_free.width() * part;
            const QRectF mark(left, m_free.top(), kSummaryHeight / 2.2, kSummaryHeight);
            drawStandingMark(m_canvas.painter(), mark, {standing, 0.6}, m_canvas.scheme());
            m_canvas.text(QRectF(mark.right() + mm(1.2), m_free.top(),
                                 width - mark.width() - mm(2.4), kSummaryHeight),
                          summaryOf(standing), {kSummarySize, QFont::Bold});
            left += width;
        }
        double height = kSummaryHeight;
        height += note(height, m_content.shift, {kSummarySize, QFont::Bold}, m_free.height());
        const QString separator = QStringLiteral("; ");
        // Lists of any length on one page: what has no room is in the logbook.
        const double twoLines = 2.0 * PaperCanvas::lineHeight(kSmallPrint);
        if (!m_content.notCounted.isEmpty()) {
            height += note(height,
                           Printed::tr("Not counted in the trends: %1")
                               .arg(m_content.notCounted.join(separator)),
                           {}, twoLines);
        }
        height += note(height, m_content.testerNotes.join(QLatin1Char(' ')), {}, twoLines);
        if (!m_content.levelChanges.isEmpty()) {
            height += note(height,
                           Printed::tr("Level changes, no wear: %1")
                               .arg(m_content.levelChanges.join(separator)),
                           {}, twoLines);
        }
        return height;
    }

    /// A paragraph `below` the top of what is free; the height that it took, none if it is empty.
    double note(double below, const QString& text, const TextStyle& style, double most) {
        constexpr double kAbove = mm(0.6);
        if (text.isEmpty()) {
            return 0.0;
        }
        const double top = m_free.top() + below + kAbove;
        const double room = std::min(most, m_free.bottom() - top);
        return kAbove +
               m_canvas.paragraph(QRectF(m_free.left(), top, m_free.width(), room), text, style);
    }

    [[nodiscard]] QString summaryOf(Standing standing) const {
        QStringList places;
        for (const SheetSpring& spring : m_content.springs) {
            if (!spring.label.isEmpty() && spring.standing == standing) {
                places << placeText(spring.place);
            }
        }
        const QString words = QString::number(places.size()) + QLatin1Char(' ') +
                              wording::standing(standing, m_content.racesAhead);
        const bool named = standing == Standing::PastLimit || standing == Standing::Due;
        return named && !places.isEmpty()
                   ? words + QStringLiteral(": ") + places.join(QStringLiteral(", "))
                   : words;
    }

    [[nodiscard]] double amendmentsHeight() const {
        const double beside = m_free.height() - legendHeight() - mm(0.8) - kGap -
                              paperPlanHeight(m_content.layout, kTallestCell);
        return std::min(amendmentListHeight(m_content),
                        std::max(leastAmendmentListHeight(m_content), beside));
    }

    /// Where the plan and its legend end.
    double drawPlan() {
        const double legend = legendHeight();
        const QRectF area = m_free.adjusted(0.0, 0.0, 0.0, -legend - mm(0.8));
        const EnginePlanLayout plan = layOutPaperPlan(m_content.layout, area, kTallestCell);
        drawPlanHeadings(m_canvas, plan);
        double bottom = area.top();
        double previousLeft = -1.0;
        for (const EnginePlanLayout::Spot& spot : plan.spots) {
            if (spot.area.left() > previousLeft) {
                drawSpringCaptions(m_canvas, spot.area);
                previousLeft = spot.area.left();
            }
            const auto spring =
                std::find_if(m_content.springs.begin(), m_content.springs.end(),
                             [&](const SheetSpring& known) { return known.place == spot.place; });
            if (spring != m_content.springs.end()) {
                drawSpringCell(m_canvas, spot.area, *spring, m_content.range);
            }
            bottom = std::max(bottom, spot.area.bottom());
        }
        m_canvas.paragraph(QRectF(area.left(), bottom + mm(0.8), area.width(), legend),
                           legendText());
        return bottom + mm(0.8) + legend;
    }

    [[nodiscard]] double legendHeight() const {
        return paragraphHeight(legendText(), m_free.width());
    }

    /// Whether the cells are wide enough for their trends; that does not depend on the height.
    [[nodiscard]] bool drawsTrends() const {
        const EnginePlanLayout plan = layOutPaperPlan(m_content.layout, m_free, kTallestCell);
        return !plan.spots.empty() &&
               !layOutSpringCell({plan.spots.front().area.width(), kTallestCell}, false)
                    .trend.isNull();
    }

    [[nodiscard]] QString legendText() const {
        if (!drawsTrends()) {
            return Printed::tr("Forces in %1.").arg(m_content.unit);
        }
        return Printed::
            tr("Forces in %1. Trend: loss downward, %2 to %3, over races %4 to %5; line "
               "across: limit; ring: as read; dot: without the inspection's shift; crossed: set "
               "aside; arrow: drop; dotted: provisional; dashed: ahead; triangle: swap; bar: "
               "over-rev; thin bar: other running; square: level change.")
                .arg(m_content.unit, m_content.rangeLeast, m_content.rangeMost,
                     QString::number(m_content.range.firstRace),
                     QString::number(m_content.range.lastRace));
    }

    PaperCanvas& m_canvas;
    const SheetContent& m_content;
    QRectF m_free;
};

} // namespace

void paintSheet(QPainter& painter, const QRectF& device, Paper paper, const SheetContent& content) {
    PaperCanvas canvas(painter, device, paper);
    SheetPainting(canvas, content).paint();
}

} // namespace coilbook
