#include "core/statistics/survival.h"

#include "core/statistics/distributions.h"

#include <Eigen/Dense>

#include <algorithm>
#include <cmath>
#include <map>

namespace coilbook::statistics {

namespace {

bool areTimes(std::span<const Lifetime> lifetimes) {
    return std::all_of(lifetimes.begin(), lifetimes.end(), [](const Lifetime& life) {
        return std::isfinite(life.time) && life.time >= 0.0;
    });
}

/// Fills in the interval of a step whose survival and standard error are known. `highBefore` is the
/// upper bound of the step before.
void addInterval(SurvivalStep& step, double z, double highBefore) {
    if (step.survival >= 1.0) {
        return;
    }
    if (step.survival <= 0.0) {
        step.low = 0.0;
        step.high = highBefore;
        return;
    }
    const double logS = std::log(step.survival);
    const double spread = z * step.se / (step.survival * -logS);
    step.low = std::pow(step.survival, std::exp(spread));
    step.high = std::pow(step.survival, std::exp(-spread));
}

/// The first time at which a curve of the steps is below one half; the middle of the stretch where
/// it is one half.
std::optional<double> halfTime(const std::vector<SurvivalStep>& steps,
                               double SurvivalStep::*curve) {
    constexpr double kHalf = 0.5;
    constexpr double kRounding = 1e-12; // of products of ratios such as 5/6 · 3/5
    for (std::size_t i = 0; i < steps.size(); ++i) {
        if (std::abs(steps[i].*curve - kHalf) <= kRounding) {
            for (std::size_t j = i + 1; j < steps.size(); ++j) {
                if (steps[j].*curve < kHalf - kRounding) {
                    return 0.5 * (steps[i].time + steps[j].time);
                }
            }
            return steps[i].time;
        }
        if (steps[i].*curve < kHalf) {
            return steps[i].time;
        }
    }
    return std::nullopt;
}

/// Per group at one time: how many are at risk, and how many fail.
struct Counts {
    Eigen::VectorXd atRisk;
    Eigen::VectorXd ended;
};

std::map<double, Counts> countsOf(const std::vector<std::vector<Lifetime>>& groups) {
    const auto k = static_cast<Eigen::Index>(groups.size());
    std::map<double, Counts> counts;
    for (const std::vector<Lifetime>& group : groups) {
        for (const Lifetime& life : group) {
            if (life.ended) {
                counts[life.time] = {Eigen::VectorXd::Zero(k), Eigen::VectorXd::Zero(k)};
            }
        }
    }
    for (std::size_t g = 0; g < groups.size(); ++g) {
        const auto column = static_cast<Eigen::Index>(g);
        for (const Lifetime& life : groups[g]) {
            for (auto& [time, at] : counts) {
                at.atRisk[column] += life.time >= time ? 1.0 : 0.0;
                at.ended[column] += life.ended && life.time == time ? 1.0 : 0.0;
            }
        }
    }
    return counts;
}

} // namespace

double SurvivalCurve::survivalAt(double time) const {
    double survival = 1.0;
    for (const SurvivalStep& step : steps) {
        if (step.time > time) {
            break;
        }
        survival = step.survival;
    }
    return survival;
}

std::optional<SurvivalCurve> kaplanMeier(std::span<const Lifetime> lifetimes, double confidence) {
    const std::optional<double> z = normalQuantile(0.5 + 0.5 * confidence);
    if (lifetimes.empty() || !areTimes(lifetimes) || !(confidence > 0.0) || !z) {
        return std::nullopt;
    }
    SurvivalCurve curve;
    curve.n = lifetimes.size();
    curve.confidence = confidence;
    std::map<double, SurvivalStep> steps;
    for (const Lifetime& life : lifetimes) {
        SurvivalStep& step = steps[life.time];
        step.time = life.time;
        ++(life.ended ? step.ended : step.censored);
    }
    std::size_t atRisk = curve.n;
    double survival = 1.0;
    double sum = 0.0; // Greenwood's Σ d / (n (n − d))
    for (auto& [time, step] : steps) {
        step.atRisk = atRisk;
        const auto n = static_cast<double>(atRisk);
        const auto d = static_cast<double>(step.ended);
        survival *= (n - d) / n;
        sum += n > d ? d / (n * (n - d)) : 0.0;
        step.survival = survival;
        step.se = survival * std::sqrt(sum);
        addInterval(step, *z, curve.steps.empty() ? 1.0 : curve.steps.back().high);
        atRisk -= step.ended + step.censored;
        curve.ended += step.ended;
        curve.steps.push_back(step);
    }
    curve.median = halfTime(curve.steps, &SurvivalStep::survival);
    curve.medianLow = halfTime(curve.steps, &SurvivalStep::low);
    curve.medianHigh = halfTime(curve.steps, &SurvivalStep::high);
    return curve;
}

std::optional<LogRank> logRank(const std::vector<std::vector<Lifetime>>& groups) {
    LogRank result;
    for (const std::vector<Lifetime>& group : groups) {
        if (!areTimes(group)) {
            return std::nullopt;
        }
        result.groups.push_back({group.size(), 0, 0.0});
    }
    const auto k = static_cast<Eigen::Index>(groups.size());
    Eigen::VectorXd observed = Eigen::VectorXd::Zero(k);
    Eigen::VectorXd expected = Eigen::VectorXd::Zero(k);
    Eigen::MatrixXd variance = Eigen::MatrixXd::Zero(k, k);
    for (const auto& [time, at] : countsOf(groups)) {
        const double n = at.atRisk.sum();
        const double d = at.ended.sum();
        const Eigen::VectorXd share = at.atRisk / n;
        observed += at.ended;
        expected += d * share;
        if (n > 1.0) {
            const double factor = d * (n - d) / (n - 1.0);
            variance += factor * Eigen::MatrixXd(share.asDiagonal());
            variance -= factor * share * share.transpose();
        }
    }
    // A group that was never at risk when something failed says nothing; of the others one is told
    // by the rest, since the differences sum to 0.
    std::vector<Eigen::Index> used;
    for (Eigen::Index g = 0; g < k; ++g) {
        result.groups[static_cast<std::size_t>(g)].observed =
            static_cast<std::size_t>(std::lround(observed[g]));
        result.groups[static_cast<std::size_t>(g)].expected = expected[g];
        if (expected[g] > 0.0) {
            used.push_back(g);
        }
    }
    if (used.size() < 2) {
        return std::nullopt;
    }
    used.pop_back();
    const Eigen::VectorXd difference = (observed - expected)(used);
    const Eigen::MatrixXd own = variance(used, used);
    const auto solver = own.completeOrthogonalDecomposition();
    result.degreesOfFreedom = used.size();
    result.chiSquared = difference.dot(solver.solve(difference));
    const std::optional<double> p =
        chiSquaredTail(result.chiSquared, static_cast<double>(result.degreesOfFreedom));
    if (!p) {
        return std::nullopt;
    }
    result.p = *p;
    return result;
}

} // namespace coilbook::statistics
