#pragma once

#include "core/domain/engine_log.h"

#include <QDate>
#include <QString>

#include <optional>
#include <vector>

namespace coilbook {

/// What became of a row of the readings.
enum class ReadingFate {
    Counts,
    Corrected, ///< a later row says what should have been written
    Withdrawn, ///< should not have been written at all
    Retested,  ///< a re-test in the same inspection replaces it
};

/// One reading as it was written at some time.
struct TrailEntry {
    InspectionId inspection;
    QDate on;
    int races = 0; ///< the engine's count at that inspection
    Place place;
    int hit = 1;
    bool retest = false;
    bool correction = false; ///< this row itself corrects the one before it
    TypedForce value{0, 0, ForceUnit::PoundForce};
    QString tester; ///< empty: not noted
    QString note;
    ReadingFate fate = ReadingFate::Counts;
    /// Corrected or withdrawn: who did it, when and why.
    std::optional<Authorship> amendedBy;
    /// The user's say about the spring in this inspection, if one is in force.
    std::optional<Decision> say;

    bool operator==(const TrailEntry&) const = default;
};

/// All that was ever written of one spring in this engine, the newest inspection first; within an
/// inspection by hit, and each hit from its first form to its present one.
[[nodiscard]] std::vector<TrailEntry> readingTrail(const EngineLog& log, const SpringId& spring);

} // namespace coilbook
