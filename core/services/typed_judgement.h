#pragma once

#include "core/assessment/assessment.h"
#include "core/assessment/hit_agreement.h"
#include "core/services/round.h"

#include <QString>

#include <optional>

namespace coilbook {

/// What a text in the field is, against the band in which the reading is expected.
enum class TypedJudgement {
    Open,       ///< nothing typed, not a number yet, or digits are still to come
    NoBand,     ///< a reading, and nothing is known to compare it with
    AsExpected, ///< inside the band
    Below,      ///< lower than nine of ten such readings: test again
    Above,
    TooFar, ///< too far off to be a reading; taken only with an explicit yes
};

/// Judges what is typed so far. While further digits can still lead to a credible reading a text
/// that is too far off is Open: nobody is shouted at for the first digits of a good reading.
[[nodiscard]] TypedJudgement judgementOf(const QString& text, ForceUnit unit,
                                         const std::optional<ForceEstimate>& expected);

/// The same of a reading that is whole, as when it is to be kept: never Open.
[[nodiscard]] TypedJudgement judgementOf(Force reading,
                                         const std::optional<ForceEstimate>& expected);

/// How far from the middle of its band a reading is taken for no reading: 12 lbf (kFarFromSet), and
/// where the band itself is wide three times the way to its bound, which is about five standard
/// deviations (our own choice, no source).
[[nodiscard]] Force tooFarFrom(const ForceEstimate& expected);

/// How the hits of a stop that count agree with each other.
struct HitSpread {
    Force range;   ///< largest minus smallest
    Force allowed; ///< by the tester's repeatability
    int hits = 0;

    [[nodiscard]] bool isTooWide() const { return hits >= 2 && range > allowed; }
};

/// The stop with one hit more, as it is being typed; a first re-test crosses the other hits out.
[[nodiscard]] RoundStop withHit(RoundStop stop, const TypedForce& value, bool retest);

[[nodiscard]] HitSpread spreadOf(const RoundStop& stop, const HitAgreement& agreement);

} // namespace coilbook
