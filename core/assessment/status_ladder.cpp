#include "core/assessment/status_ladder.h"

namespace coilbook {

namespace {

constexpr double kDueFrom = 0.5;

} // namespace

Verdict judge(const Evidence& evidence, const JudgingRules& rules) {
    const bool measured = evidence.measuredLoss && reaches(*evidence.measuredLoss, rules.limit);
    const bool estimated =
        evidence.pPastLimit && *evidence.pPastLimit >= probabilityOf(rules.caution);
    if (measured && estimated) {
        return {Standing::PastLimit, PastBy::Both};
    }
    if (measured) {
        return {Standing::PastLimit, PastBy::Measured};
    }
    if (estimated) {
        return {Standing::PastLimit, PastBy::Estimate};
    }
    if (evidence.pDue && *evidence.pDue >= kDueFrom) {
        return {Standing::Due, std::nullopt};
    }
    return {evidence.hasTrend ? Standing::Sound : Standing::NoTrend, std::nullopt};
}

} // namespace coilbook
