#pragma once

#include "core/domain/inspection.h"

#include <vector>

namespace coilbook {

/// What the user says about the readings of one spring in one inspection.
enum class ReadingJudgement {
    LeftToModel,   ///< no say, or an earlier one taken back
    Kept,          ///< it counts as it stands, whatever the model makes of it
    SetAside,      ///< it does not count in the estimate
    DropConfirmed, ///< tested again: the spring really lost that much at once
    DropDenied,    ///< tested again: the low reading was a misread
};

/// One such say. Decisions are appended and never altered; the newest (by id) about a spring in an
/// inspection is in force, for all its hits there.
struct Decision {
    DecisionId id;
    InspectionId inspection;
    SpringId spring;
    ReadingJudgement judgement = ReadingJudgement::LeftToModel;
    Authorship author;

    bool operator==(const Decision&) const = default;
};

/// What is in force about a spring in an inspection among decisions in order of arrival.
[[nodiscard]] ReadingJudgement judgementInForce(const std::vector<Decision>& decisions,
                                                const InspectionId& inspection,
                                                const SpringId& spring);

} // namespace coilbook
