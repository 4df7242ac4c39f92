#include "core/wear/hit_noise.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace coilbook::wear {

namespace {

constexpr std::int64_t kMicro = 1'000'000;

std::int64_t microUnits(const TypedForce& reading) {
    std::int64_t value = reading.digits();
    for (int i = reading.decimals(); i < TypedForce::kMostDecimals; ++i) {
        value *= 10;
    }
    return value;
}

/// In the unit read, for the readings of that unit.
double graduationIn(std::span<const TypedForce> readings, ForceUnit unit) {
    // 0.1, 0.2, 0.25, 0.5, 1, 2, 5, 10 in millionths of a unit, largest first.
    constexpr std::array<std::int64_t, 8> kSteps{10 * kMicro, 5 * kMicro, 2 * kMicro, kMicro,
                                                 kMicro / 2,  kMicro / 4, kMicro / 5, kMicro / 10};
    for (const std::int64_t step : kSteps) {
        const bool all = std::all_of(readings.begin(), readings.end(), [&](const auto& reading) {
            return reading.unit() != unit || microUnits(reading) % step == 0;
        });
        if (all) {
            return static_cast<double>(step) / static_cast<double>(kMicro);
        }
    }
    int decimals = 0;
    for (const TypedForce& reading : readings) {
        decimals = reading.unit() == unit ? std::max(decimals, reading.decimals()) : decimals;
    }
    return std::pow(10.0, -decimals);
}

} // namespace

double HitNoise::fixedVariance(int hits) const {
    return withinVariance / hits + roundingCorrelation * graduation * graduation / 12.0;
}

double graduationOf(std::span<const TypedForce> readings) {
    double finest = 0.0;
    for (const ForceUnit unit : {ForceUnit::PoundForce, ForceUnit::Newton}) {
        const bool any = std::any_of(readings.begin(), readings.end(),
                                     [&](const auto& reading) { return reading.unit() == unit; });
        if (any) {
            const double lbf = Force::of(graduationIn(readings, unit), unit).inPoundsForce();
            finest = finest > 0.0 ? std::min(finest, lbf) : lbf;
        }
    }
    return finest;
}

double roundingCorrelation(double s, double q) {
    if (!(q > 0.0)) {
        return 0.0;
    }
    constexpr double kPi = std::numbers::pi;
    double sum = 0.0;
    for (int k = 1; k <= 8; ++k) {
        const double k2 = static_cast<double>(k) * k;
        sum += std::exp(-4.0 * kPi * kPi * k2 * s * s / (q * q)) / k2;
    }
    return 6.0 / (kPi * kPi) * sum;
}

HitNoise hitNoiseOf(const std::vector<HitGroup>& groups, std::size_t tester, double graduation) {
    constexpr int kEnoughDegreesOfFreedom = 16;
    HitNoise noise;
    noise.graduation = graduation;
    double sumSquares = 0.0;
    for (const HitGroup& group : groups) {
        if (group.tester != tester) {
            continue;
        }
        noise.degreesOfFreedom += static_cast<int>(group.hits.size()) - 1;
        double mean = 0.0;
        for (const double hit : group.hits) {
            mean += hit / static_cast<double>(group.hits.size());
        }
        for (const double hit : group.hits) {
            sumSquares += (hit - mean) * (hit - mean);
        }
    }
    if (noise.degreesOfFreedom < kEnoughDegreesOfFreedom) {
        return noise; // no credit for repeated hits: vw = 0, rho = 1
    }
    const double rounding = graduation * graduation / 12.0;
    const double within = sumSquares / noise.degreesOfFreedom;
    double s2 = std::max(within - rounding, 0.01);
    for (int i = 0; i < 5; ++i) {
        noise.roundingCorrelation = roundingCorrelation(std::sqrt(s2), graduation);
        s2 = std::max(within - (1.0 - noise.roundingCorrelation) * rounding, 0.01);
    }
    noise.withinVariance = std::max(within, 0.02);
    return noise;
}

} // namespace coilbook::wear
