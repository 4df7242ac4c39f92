#pragma once

#include "core/domain/repeatability_study.h"
#include "core/units/force.h"

#include <optional>

namespace coilbook {

/// What a repeatability study says, by crossed analysis of variance (core/statistics).
struct StudyResult {
    Force tester;  ///< SD of hits on the same spring by the same person: repeatability
    Force persons; ///< SD from person to person, their ways with single springs included
    Force springs; ///< SD from spring to spring
    double testerDegreesOfFreedom = 0.0;
    bool onePerson = false; ///< nothing can be said of persons

    /// Parts of the whole variance; the three add up to 1. 0 where nothing varied at all.
    double testerShare = 0.0;
    double personsShare = 0.0;
    double springsShare = 0.0;

    /// Grades of spring that it tells apart, at least 1; empty where measuring showed no spread.
    std::optional<int> grades;

    /// Five or more grades: what AIAG's Measurement Systems Analysis asks for.
    static constexpr int kGradesWanted = 5;

    bool operator==(const StudyResult&) const = default;
};

/// Nothing while readings are missing.
[[nodiscard]] std::optional<StudyResult> resultOf(const RepeatabilityStudy& study);

} // namespace coilbook
