#include "core/testers/study_result.h"

#include "core/statistics/crossed_study.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace coilbook {

std::optional<StudyResult> resultOf(const RepeatabilityStudy& study) {
    if (study.readings.size() != study.size()) {
        return std::nullopt;
    }
    std::vector<statistics::StudyReading> readings;
    for (int spring = 0; spring < study.springs.size(); ++spring) {
        for (int person = 0; person < study.persons.size(); ++person) {
            for (int hit = 0; hit < study.hits; ++hit) {
                const auto& reading = study.readings[study.at(spring, person, hit)];
                if (!reading) {
                    return std::nullopt;
                }
                readings.push_back({static_cast<std::size_t>(spring),
                                    static_cast<std::size_t>(person),
                                    reading->force().inPoundsForce()});
            }
        }
    }
    const auto anova =
        statistics::analyseCrossed(readings, static_cast<std::size_t>(study.springs.size()),
                                   static_cast<std::size_t>(study.persons.size()));
    if (!anova) {
        return std::nullopt;
    }
    const statistics::VarianceShares shares =
        statistics::varianceShares(*anova, statistics::Pooling::WhenInteractionIsUnclear);
    StudyResult result;
    result.tester = Force::poundsForce(std::sqrt(shares.repeatability));
    result.persons = Force::poundsForce(std::sqrt(shares.reproducibility()));
    result.springs = Force::poundsForce(std::sqrt(shares.part));
    result.testerDegreesOfFreedom = shares.repeatabilityDf;
    result.onePerson = study.persons.size() < 2;
    if (shares.total() > 0.0) {
        result.testerShare = shares.repeatability / shares.total();
        result.personsShare = shares.reproducibility() / shares.total();
        result.springsShare = shares.part / shares.total();
    }
    if (const std::optional<double> categories = shares.distinctCategories()) {
        // Beyond a thousand grades the number says nothing more.
        constexpr double kMost = 1000.0;
        result.grades = std::max(1, static_cast<int>(std::min(*categories, kMost)));
    }
    return result;
}

} // namespace coilbook
