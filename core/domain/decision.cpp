#include "core/domain/decision.h"

#include <algorithm>

namespace coilbook {

ReadingJudgement judgementInForce(const std::vector<Decision>& decisions,
                                  const InspectionId& inspection, const SpringId& spring) {
    const auto newest =
        std::find_if(decisions.rbegin(), decisions.rend(), [&](const Decision& decision) {
            return decision.inspection == inspection && decision.spring == spring;
        });
    return newest == decisions.rend() ? ReadingJudgement::LeftToModel : newest->judgement;
}

} // namespace coilbook
