#include "core/services/round_closing.h"

#include "core/services/typed_judgement.h"

#include <algorithm>

namespace coilbook {

namespace {

const SpringAssessment* assessed(const Assessment* assessment, const RoundStop& stop) {
    if (assessment == nullptr || !stop.spring) {
        return nullptr;
    }
    const auto found =
        std::find_if(assessment->springs.begin(), assessment->springs.end(),
                     [&](const SpringAssessment& spring) { return spring.id == *stop.spring; });
    return found == assessment->springs.end() ? nullptr : &*found;
}

bool isOutsideItsBand(const RoundReview* review, const RoundStop& stop) {
    const std::optional<Force> mean = stop.mean();
    if (review == nullptr || !stop.spring || !mean) {
        return false;
    }
    for (const RoundReview::Expectation& expectation : review->expected) {
        if (expectation.spring == *stop.spring) {
            return judgementOf(*mean, expectation.band) != TypedJudgement::AsExpected;
        }
    }
    return false;
}

} // namespace

RoundClosing closingOf(const Round& round, Force limit, const Assessment* assessment,
                       const RoundReview* review) {
    RoundClosing closing;
    closing.measured = summaryOf(round, limit);
    closing.check = review == nullptr ? std::nullopt : review->check;
    const HitAgreement agreement = review == nullptr ? HitAgreement() : review->agreement;
    for (std::size_t i = 0; i < round.stops().size(); ++i) {
        const RoundStop& stop = round.stops()[i];
        if (!stop.isTested()) {
            continue;
        }
        const SpringAssessment* spring = assessed(assessment, stop);
        const std::vector<std::size_t>& measuredPast = closing.measured.pastLimit;
        const bool measured =
            std::find(measuredPast.begin(), measuredPast.end(), i) != measuredPast.end();
        const bool estimated =
            spring != nullptr && spring->pastBy.has_value() && *spring->pastBy != PastBy::Measured;
        const bool tooWide = spreadOf(stop, agreement).isTooWide();
        if (tooWide) {
            closing.repeat.push_back(i);
        }
        if (measured || estimated) {
            closing.pastLimit.push_back(i);
        } else if (spring != nullptr && spring->standing == Standing::Due) {
            closing.due.push_back(i);
        }
        const bool doubtful = (measured && !estimated) || (spring != nullptr && spring->offTrend) ||
                              isOutsideItsBand(review, stop);
        if (tooWide || (doubtful && !stop.hasRetest())) {
            closing.retest.push_back(i);
        }
    }
    return closing;
}

} // namespace coilbook
