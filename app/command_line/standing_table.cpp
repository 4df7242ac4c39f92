#include "app/command_line/standing_table.h"

#include "app/command_line/text.h"
#include "core/support/text.h"
#include "core/wording/wording.h"

#include <QLocale>

#include <algorithm>
#include <array>

namespace coilbook {

namespace {

constexpr qsizetype kGap = 2;
const QString kNothing = QStringLiteral("-");

/// Cells of a row, and which columns hold numbers and stand to the right.
constexpr std::size_t kColumns = 9;
using Row = std::array<QString, kColumns>;
constexpr std::array<bool, kColumns> kIsNumber{false, false, true,  true, true,
                                               false, true,  false, false};

Quantities quantities() {
    return Quantities(ForceUnit::PoundForce, QLocale::c());
}

QString force(const std::optional<Force>& value) {
    return value ? quantities().force(*value) : kNothing;
}

QString estimate(const SpringAssessment& spring) {
    return spring.loss ? wording::lossWithRange(*spring.loss, quantities()) : kNothing;
}

QString perRace(const SpringAssessment& spring) {
    return spring.lossPerRace
               ? QLocale::c().toString(spring.lossPerRace->mean.inPoundsForce(), 'f', 2)
               : kNothing;
}

QString racesLeft(const SpringAssessment& spring) {
    if (!spring.racesLeft) {
        return kNothing;
    }
    const auto count = [](const std::optional<int>& races) {
        return races ? QString::number(*races) : CommandText::tr("over 60");
    };
    return CommandText::tr("%1 (%2 to %3)")
        .arg(count(spring.racesLeft->median), count(spring.racesLeft->p10),
             count(spring.racesLeft->p90));
}

Row rowOf(const SpringAssessment& spring, const Assessment& assessment) {
    return {placeText(spring.place),
            shown(spring.label),
            force(spring.baseline),
            force(spring.latest),
            force(spring.measuredLoss),
            estimate(spring),
            perRace(spring),
            racesLeft(spring),
            wording::standing(spring, assessment.rules.racesAhead)};
}

QStringList aligned(const std::vector<Row>& rows) {
    std::array<qsizetype, kColumns> widths{};
    for (const Row& row : rows) {
        for (std::size_t column = 0; column < kColumns; ++column) {
            widths.at(column) = std::max(widths.at(column), row.at(column).size());
        }
    }
    QStringList lines;
    for (const Row& row : rows) {
        QStringList cells;
        for (std::size_t column = 0; column < kColumns; ++column) {
            const QString& cell = row.at(column);
            cells << (kIsNumber.at(column) ? cell.rightJustified(widths.at(column))
                                           : cell.leftJustified(widths.at(column)));
        }
        QString line = cells.join(QString(kGap, QLatin1Char(' ')));
        while (line.endsWith(QLatin1Char(' '))) {
            line.chop(1);
        }
        lines << line;
    }
    return lines;
}

QString placesOf(const Assessment& assessment, Standing standing) {
    QStringList places;
    for (const SpringAssessment& spring : assessment.springs) {
        if (spring.standing == standing) {
            places << placeText(spring.place);
        }
    }
    return places.isEmpty() ? CommandText::tr("none") : places.join(QStringLiteral(", "));
}

QStringList heading(const Assessment& assessment) {
    const JudgingRules& rules = assessment.rules;
    QStringList lines;
    lines << (assessment.asOf.isValid()
                  ? CommandText::tr("%1 on %2, %3 races run")
                        .arg(shown(assessment.engine), quantities().date(assessment.asOf),
                             QString::number(assessment.racesNow))
                  : shown(assessment.engine));
    lines << CommandText::tr("Limit %1, looking %2 races ahead")
                 .arg(quantities().forceWithUnit(rules.limit), QString::number(rules.racesAhead));
    const QString shift = wording::newestShift(assessment, quantities());
    if (!shift.isEmpty()) {
        lines << shift;
    }
    lines += wording::earlierShifts(assessment, quantities());
    return lines;
}

QStringList reasonsOf(const SpringAssessment& spring, const Assessment& assessment) {
    QStringList lines;
    for (const Reason& reason : spring.reasons) {
        if (reason.kind == ReasonKind::InspectionShifted ||
            reason.kind == ReasonKind::EarlierShifted) {
            continue; // said once, above the table
        }
        lines << QStringLiteral("  ") + wording::reason(reason, spring, assessment, quantities());
    }
    if (!lines.isEmpty()) {
        lines.prepend(placeText(spring.place) + QStringLiteral("  ") + shown(spring.label));
    }
    return lines;
}

} // namespace

QStringList standingTable(const Assessment& assessment) {
    QStringList lines = heading(assessment);
    if (assessment.springs.empty()) {
        lines << CommandText::tr("No springs are recorded up to that day.");
        return lines;
    }
    lines << CommandText::tr("Past the limit: %1").arg(placesOf(assessment, Standing::PastLimit));
    lines << CommandText::tr("Due: %1").arg(placesOf(assessment, Standing::Due)) << QString();

    std::vector<Row> rows{
        {CommandText::tr("Place"), CommandText::tr("Spring"), CommandText::tr("Baseline"),
         CommandText::tr("Latest"), CommandText::tr("Lost"), CommandText::tr("Likely loss"),
         CommandText::tr("Per race"), CommandText::tr("Races left"), CommandText::tr("Standing")}};
    for (const SpringAssessment& spring : assessment.springs) {
        rows.push_back(rowOf(spring, assessment));
    }
    lines += aligned(rows);
    lines << QString();
    for (const SpringAssessment& spring : assessment.springs) {
        lines += reasonsOf(spring, assessment);
    }
    return lines;
}

} // namespace coilbook
