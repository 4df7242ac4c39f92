#include "core/wording/estimate_words.h"

#include "core/wording/round_words.h"
#include "core/wording/tester_words.h"
#include "core/wording/wording.h"
#include "core/wording/words.h"

#include <algorithm>

namespace coilbook::wording {

QString lowOrHigh(Force shift, const Quantities& quantities) {
    return shift < Force() ? Words::tr("%1 low", "an amount").arg(quantities.forceWithUnit(-shift))
                           : Words::tr("%1 high", "an amount").arg(quantities.forceWithUnit(shift));
}

QString shiftAllowedFor(int racesThen, Force shift, const Quantities& quantities) {
    return Words::tr("The inspection after %1 reads about %2 on all springs; the trend allows for "
                     "that, so leave its readings as they are.",
                     "races, an amount low or high")
        .arg(races(racesThen), lowOrHigh(shift, quantities));
}

ForceEstimate toldLoss(const ForceEstimate& loss) {
    return {std::max(loss.mean, Force()), std::max(loss.low90, Force()),
            std::max(loss.high90, Force())};
}

QString lossWithRange(const ForceEstimate& loss, const Quantities& quantities) {
    const ForceEstimate told = toldLoss(loss);
    return Words::tr("%1 (%2 to %3)", "a loss and its bounds")
        .arg(quantities.force(told.mean), quantities.force(told.low90),
             quantities.force(told.high90));
}

QString liveFigures(const LiveFigures& figures, const JudgingRules& rules,
                    const Quantities& quantities) {
    QStringList parts;
    if (figures.spring.loss && figures.spring.loss->low90 < figures.spring.loss->high90) {
        parts << Words::tr("By its trend lost %1 %2: %3", "a loss with its bounds, unit, standing")
                     .arg(lossWithRange(*figures.spring.loss, quantities), quantities.unitName(),
                          standing(figures.spring, rules.racesAhead));
    }
    const QString corrected =
        figures.typed ? correctionSentence(*figures.typed, quantities) : QString();
    if (!corrected.isEmpty()) {
        parts << corrected;
    }
    return parts.join(QStringLiteral("   \u00B7   "));
}

QString expectedReading(const ForceEstimate& band, const Quantities& quantities) {
    return Words::tr("%1 to %2", "the bounds of a band")
        .arg(quantities.force(band.low90), quantities.force(band.high90));
}

QString roundCheck(const RoundCheck& check, const Quantities& quantities) {
    return Words::tr("All springs of this round read about %1: before going on look at the "
                     "tester\u2019s zero, its adapter and the engine\u2019s temperature, and test "
                     "three springs again.",
                     "an amount low or high")
        .arg(lowOrHigh(check.shift.mean, quantities));
}

QString newestShift(const Assessment& assessment, const Quantities& quantities) {
    if (assessment.inspections.empty() || !assessment.inspections.back().shifted ||
        !assessment.inspections.back().shift) {
        return {};
    }
    const InspectionAssessment& newest = assessment.inspections.back();
    const Force shift = newest.shift->mean;
    const QString what =
        Words::tr("The inspection of %1 reads about %2 on all springs: look at the tester's zero, "
                  "its adapter and the engine's temperature, and test three springs again before "
                  "swapping.",
                  "a day, an amount low or high")
            .arg(quantities.date(newest.on), lowOrHigh(shift, quantities));
    const QString limits =
        shift < Force()
            ? Words::tr("One inspection cannot tell this from a real loss that all springs share, "
                        "as after an over-rev that nobody noted; the next one can.")
            : Words::tr("Until then losses look smaller than they are.");
    return what + QLatin1Char(' ') + limits;
}

QStringList earlierShifts(const Assessment& assessment, const Quantities& quantities) {
    QStringList sentences;
    for (std::size_t i = 0; i + 1 < assessment.inspections.size(); ++i) {
        const InspectionAssessment& inspection = assessment.inspections[i];
        if (inspection.shifted && inspection.shift) {
            sentences << shiftAllowedFor(inspection.races, inspection.shift->mean, quantities);
        }
    }
    return sentences;
}

} // namespace coilbook::wording
