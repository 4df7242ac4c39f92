#include "ui/printing/plan_painter.h"

#include "ui/printing/printed_words.h"
#include "ui/printing/sheet_blocks.h"

#include <algorithm>
#include <array>

namespace coilbook {

namespace {

constexpr double kGap = mm(2.2);
constexpr double kTallestRow = mm(5.2);
constexpr double kPad = mm(1.0);
constexpr std::array kLeading{mm(11.0), mm(20.0), mm(34.0), mm(41.0)};

/// `03-27`: the year is said once, above.
QString shortDay(const PlanRace& race) {
    return race.day.mid(5);
}

QString racesLine(const PlanContent& content) {
    QStringList races;
    for (const PlanRace& race : content.races) {
        QString text = race.venue.isEmpty() ? race.day : race.day + QLatin1Char(' ') + race.venue;
        if (!race.laps.isEmpty()) {
            text += Printed::tr(" (%1 laps)").arg(race.laps);
        }
        races << text;
    }
    return Printed::tr("Races: %1.").arg(races.join(QStringLiteral(", ")));
}

/// The springs and the sums below them, in columns.
class PlanTable {
public:
    PlanTable(PaperCanvas& canvas, const QRectF& area, const PlanContent& content)
        : m_canvas(canvas)
        , m_area(area)
        , m_content(content)
        , m_races(std::min(content.races.size(), kMostPrintedRaces)) {
        constexpr double kSums = 4.0;
        const double rows = static_cast<double>(content.rows.size()) + kSums + 1.0;
        m_rowHeight = std::min(kTallestRow, area.height() / rows);
        double left = area.left();
        for (const double width : kLeading) {
            m_lefts.push_back(left);
            left += width;
        }
        const double rest = std::max(0.0, area.right() - left);
        constexpr double kWidestRace = mm(16.0);
        m_raceWidth = std::min(kWidestRace, rest / std::max(1.0, static_cast<double>(m_races)));
        for (std::size_t race = 0; race <= m_races; ++race) {
            m_lefts.push_back(left + m_raceWidth * static_cast<double>(race));
        }
    }

    void draw() {
        drawHead();
        for (const PlanRow& row : m_content.rows) {
            drawRow(row);
        }
        if (!m_content.races.empty() && !m_content.races.front().needed.isEmpty()) {
            drawSum(Printed::tr("Springs likely at the limit once it is run"), &PlanRace::due);
            drawSum(Printed::tr("Spares to have until then"), &PlanRace::needed);
            drawSum(Printed::tr("With a whole new set: likely at the limit"),
                    &PlanRace::dueRenewed);
            drawSum(Printed::tr("With a whole new set: spares to have"), &PlanRace::neededRenewed);
        }
    }

private:
    [[nodiscard]] QRectF cell(std::size_t column) const {
        const double right =
            column + 1 < m_lefts.size() ? m_lefts[column + 1] : m_lefts.back() + m_raceWidth;
        return {m_lefts[column], top(), right - m_lefts[column] - kPad, m_rowHeight};
    }

    [[nodiscard]] double top() const {
        return m_area.top() + m_rowHeight * static_cast<double>(m_drawn);
    }

    void endRow() {
        ++m_drawn;
        m_canvas.line({m_area.left(), top()}, {m_area.right(), top()});
    }

    void drawHead() {
        const TextStyle bold{kSmallPrint, QFont::Bold};
        const std::array heads{Printed::tr("Place"), Printed::tr("Spring"), Printed::tr("Standing"),
                               Printed::tr("Change before")};
        for (std::size_t column = 0; column < heads.size(); ++column) {
            m_canvas.text(cell(column), heads.at(column), bold);
        }
        for (std::size_t race = 0; race < m_races; ++race) {
            m_canvas.number(cell(kLeading.size() + race), shortDay(m_content.races[race]),
                            {kSmallPrint, QFont::Bold, Qt::AlignRight | Qt::AlignVCenter});
        }
        endRow();
    }

    void drawRow(const PlanRow& row) {
        const auto weight = row.changeIndex ? QFont::Bold : QFont::Normal;
        m_canvas.text(cell(0), placeText(row.place), {kSmallPrint, QFont::Bold});
        m_canvas.text(cell(1), row.spring);
        m_canvas.text(cell(2), row.standing);
        m_canvas.text(cell(3), row.changeBefore, {kSmallPrint, weight});
        for (std::size_t race = 0; race < m_races; ++race) {
            const auto index = static_cast<qsizetype>(race);
            if (index < row.odds.size()) {
                const bool due = row.changeIndex && race >= *row.changeIndex;
                m_canvas.number(cell(kLeading.size() + race), row.odds.at(index),
                                {kSmallPrint, due ? QFont::Bold : QFont::Normal,
                                 Qt::AlignRight | Qt::AlignVCenter});
            }
        }
        endRow();
    }

    void drawSum(const QString& caption, QString PlanRace::*value) {
        const QRectF first = cell(0);
        m_canvas.text(QRectF(first.left(), first.top(),
                             m_lefts[kLeading.size()] - first.left() - kPad, m_rowHeight),
                      caption);
        for (std::size_t race = 0; race < m_races; ++race) {
            m_canvas.number(cell(kLeading.size() + race), m_content.races[race].*value,
                            {kSmallPrint, QFont::Normal, Qt::AlignRight | Qt::AlignVCenter});
        }
        endRow();
    }

    PaperCanvas& m_canvas;
    QRectF m_area;
    const PlanContent& m_content;
    std::size_t m_races;
    std::vector<double> m_lefts;
    double m_raceWidth = 0.0;
    double m_rowHeight = 0.0;
    std::size_t m_drawn = 0;
};

} // namespace

void paintPlan(QPainter& painter, const QRectF& device, Paper paper, const PlanContent& content) {
    PaperCanvas canvas(painter, device, paper);
    QRectF free = canvas.area();
    const auto takeTop = [&](double height) {
        free.setTop(free.top() + height + kGap);
    };
    const auto takeBottom = [&](double height) {
        const QRectF taken(free.left(), free.bottom() - height, free.width(), height);
        free.setBottom(taken.top() - kGap);
        return taken;
    };
    takeTop(drawTitle(canvas, free, Printed::tr("Swap plan"),
                      Printed::tr("Engine: %1").arg(content.engine)));
    takeTop(drawFacts(canvas, free,
                      {{Printed::tr("Seal or serial number"), content.serial},
                       {Printed::tr("As of"), content.asOf},
                       {Printed::tr("Races run"), content.racesRun},
                       {Printed::tr("Limit"), content.limit}}));
    drawFooter(canvas, takeBottom(footerHeight()), content.printedAt);
    drawCautions(canvas, takeBottom(cautionsHeight(content.cautions, free.width())),
                 content.cautions);
    constexpr double kText = 9.0;
    for (const QString& sentence : content.summary) {
        takeTop(canvas.paragraph(free, sentence, {kText, QFont::Normal}) - kGap + mm(0.8));
    }
    if (content.races.empty()) {
        return;
    }
    takeTop(canvas.paragraph(free, racesLine(content)));
    QStringList lines;
    for (const PlanLine& line : content.lines) {
        lines << (line.when.isEmpty() ? line.what : line.when + QStringLiteral(": ") + line.what);
    }
    const double room = free.height() * 0.35; // the springs need the rest
    double wanted = 0.0;
    for (const QString& line : lines) {
        wanted += paragraphHeight(line, free.width());
    }
    QRectF below = takeBottom(std::min(wanted, room));
    for (const QString& line : lines) {
        below.setTop(below.top() + canvas.paragraph(below, line));
    }
    PlanTable(canvas, free, content).draw();
}

} // namespace coilbook
