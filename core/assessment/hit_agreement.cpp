#include "core/assessment/hit_agreement.h"

#include "core/statistics/range_distribution.h"
#include "core/wear/season_builder.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace coilbook {

namespace {

constexpr double kConfidence = 0.95;
constexpr int kMostTabled = 10;
constexpr double kUnknownLbf = 4.0; // h of the hit screen without any repeated hit
constexpr double kUnknownGraduations = 1.5;

double criticalRangeFactor(int hits) {
    static const std::array<double, kMostTabled + 1> factors = [] {
        std::array<double, kMostTabled + 1> made{};
        for (int n = 2; n <= kMostTabled; ++n) {
            made[static_cast<std::size_t>(n)] = rangeQuantile(n, kConfidence);
        }
        return made;
    }();
    return factors.at(static_cast<std::size_t>(std::clamp(hits, 2, kMostTabled)));
}

} // namespace

HitAgreement::HitAgreement(const wear::HitNoise& tester)
    : m_graduation(tester.graduation)
    , m_hitSd(std::sqrt(tester.withinVariance)) {}

Force HitAgreement::allowedRange(int hits) const {
    if (m_hitSd > 0.0) {
        return Force::poundsForce(std::max(m_graduation, criticalRangeFactor(hits) * m_hitSd));
    }
    return Force::poundsForce(std::max(kUnknownLbf, kUnknownGraduations * m_graduation));
}

HitAgreement hitAgreementOf(const EngineHistory& history, std::optional<std::size_t> tester) {
    const wear::SeasonOfHistory season = wear::seasonOf(history);
    return season.testers.empty()
               ? HitAgreement()
               : HitAgreement(season.testers.at(tester.value_or(season.testers.size() - 1)));
}

} // namespace coilbook
