#include "core/services/typed_judgement.h"

#include "core/services/round_verdict.h"

#include <algorithm>
#include <cmath>

namespace coilbook {

namespace {

constexpr double kBandsAway = 3.0;
/// Rounding of unit conversions must not make hits disagree that lie just at what is allowed.
constexpr Force kRounding = Force::poundsForce(1e-9);

bool isCredible(Force reading, const ForceEstimate& expected) {
    const Force away = std::max(reading - expected.mean, expected.mean - reading);
    return away <= tooFarFrom(expected);
}

/// Whether further digits can make a credible reading of a number: decimals behind it, or, while it
/// has no decimal mark, one, two … whole digits more.
bool canBecomeCredible(const TypedForce& typed, int digits, const ForceEstimate& expected) {
    const Force low = expected.mean - tooFarFrom(expected);
    const Force high = expected.mean + tooFarFrom(expected);
    const double value = typed.force().in(typed.unit());
    const double step = std::pow(10.0, -typed.decimals());
    const auto meets = [&](double tens) {
        return Force::of(value * tens, typed.unit()) <= high &&
               Force::of((value + step) * tens, typed.unit()) > low;
    };
    if (typed.decimals() < TypedForce::kMostDecimals && meets(1.0)) {
        return true;
    }
    double tens = 10.0;
    for (; typed.decimals() == 0 && digits < TypedForce::kMostWholeDigits; ++digits) {
        if (meets(tens)) {
            return true;
        }
        tens *= 10.0;
    }
    return false;
}

} // namespace

Force tooFarFrom(const ForceEstimate& expected) {
    return std::max({kFarFromSet, (expected.high90 - expected.mean) * kBandsAway,
                     (expected.mean - expected.low90) * kBandsAway});
}

TypedJudgement judgementOf(Force reading, const std::optional<ForceEstimate>& expected) {
    if (!expected) {
        return TypedJudgement::NoBand;
    }
    if (!isCredible(reading, *expected)) {
        return TypedJudgement::TooFar;
    }
    if (reading < expected->low90) {
        return TypedJudgement::Below;
    }
    return reading > expected->high90 ? TypedJudgement::Above : TypedJudgement::AsExpected;
}

TypedJudgement judgementOf(const QString& text, ForceUnit unit,
                           const std::optional<ForceEstimate>& expected) {
    const std::optional<TypedForce> typed = TypedForce::parse(text, unit);
    if (!typed || typed->digits() == 0) {
        return TypedJudgement::Open;
    }
    const TypedJudgement judgement = judgementOf(typed->force(), expected);
    if (judgement == TypedJudgement::TooFar &&
        canBecomeCredible(*typed, static_cast<int>(text.size()), *expected)) {
        return TypedJudgement::Open;
    }
    return judgement;
}

RoundStop withHit(RoundStop stop, const TypedForce& value, bool retest) {
    const bool crossedOut = !retest && stop.hasRetest();
    for (RoundHit& hit : stop.hits) {
        hit.crossedOut = hit.crossedOut || (retest && !hit.retest);
    }
    RoundHit typed;
    typed.number = stop.nextHit;
    typed.value = value;
    typed.retest = retest;
    typed.crossedOut = crossedOut;
    stop.hits.push_back(typed);
    return stop;
}

HitSpread spreadOf(const RoundStop& stop, const HitAgreement& agreement) {
    std::vector<Force> counting;
    for (const RoundHit& hit : stop.hits) {
        if (!hit.crossedOut) {
            counting.push_back(hit.value.force());
        }
    }
    HitSpread spread;
    spread.hits = static_cast<int>(counting.size());
    if (spread.hits >= 2) {
        const auto [least, most] = std::minmax_element(counting.begin(), counting.end());
        spread.range = *most - *least;
        spread.allowed = agreement.allowedRange(spread.hits) + kRounding;
    }
    return spread;
}

} // namespace coilbook
