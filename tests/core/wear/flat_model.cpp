#include "tests/core/wear/flat_model.h"

#include "core/wear/functional.h"
#include "core/wear/outputs.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace coilbook::testing {

namespace {

constexpr double kStep = 1e-3; ///< of the differences: what they leave over is far below 1e-5

/// A spread nine logs below the noise is none: further down nothing changes.
FlatModel::Logs withSpreads(FlatModel::Logs logs) {
    for (const int spread : {1, 2}) {
        logs[spread] = std::max(logs[spread], logs[0] - 9.0);
    }
    return logs;
}

} // namespace

FlatModel::FlatModel(const MixedModelData& data)
    : m_season(data.season()) {
    m_fit.prior = wear::hyperPriorFor(0);
    m_fit.design = wear::designOf(m_season, {});
    m_fit.nodes = {{wear::Eta::Zero(), 1.0}};
    m_fit.solutions.resize(1);
    m_priors.startPrecision = 0.0;
    m_priors.sharedMean = Eigen::VectorXd::Zero(3);
    // Columns that are nothing but zeros are held at 0 by a precision of 1.
    m_priors.sharedPrecision = Eigen::Vector3d(0.0, data.hasKinds() ? 0.0 : 1.0, 1.0);
}

double FlatModel::logLikelihood(const Logs& logs) {
    wear::Hyperparameters theta;
    theta.sigma = std::exp(logs[0]);
    theta.sigmaC = std::exp(logs[1]);
    theta.tau = std::exp(logs[2]);
    wear::Solution& solution = m_fit.solutions.front();
    return solution.solve(m_fit.design, theta, m_priors) ? solution.logMarginalLikelihood()
                                                         : -std::numeric_limits<double>::infinity();
}

FlatModel::Logs FlatModel::start() const {
    double squares = 0.0;
    int count = 0;
    double longest = 1.0; ///< exposure
    for (const wear::Life& life : m_season.lives) {
        longest = std::max(longest, life.cells.back().x);
        for (std::size_t i = 2; i < life.cells.size(); ++i) {
            const double bend =
                life.cells[i].mean - 2.0 * life.cells[i - 1].mean + life.cells[i - 2].mean;
            squares += bend * bend / 6.0; // what independent noise of variance 1 would give
            ++count;
        }
    }
    const double half = count > 0 && squares > 0.0 ? 0.5 * std::log(0.5 * squares / count) : 0.0;
    return {half, half, half - std::log(longest) + 1.0};
}

FlatModel::Slopes FlatModel::slopesAt(const Logs& logs, double value) {
    Slopes slopes;
    for (int i = 0; i < 3; ++i) {
        const Logs moved = kStep * Logs::Unit(i);
        const double up = logLikelihood(logs + moved);
        const double down = logLikelihood(logs - moved);
        slopes.gradient[i] = (up - down) / (2.0 * kStep);
        slopes.second[i] = (up - 2.0 * value + down) / (kStep * kStep);
    }
    return slopes;
}

FlatModel::Logs FlatModel::optimum() {
    constexpr int kMostSteps = 200;
    constexpr double kLongest = 1.0;
    constexpr double kShortest = 1e-5; ///< what is left after it is far less
    Logs logs = start();
    double value = logLikelihood(logs);
    Slopes slopes = slopesAt(logs, value);
    Eigen::Matrix3d inverse = slopes.second.cwiseAbs().cwiseMax(1.0).cwiseInverse().asDiagonal();
    for (int step = 0; step < kMostSteps; ++step) {
        Logs moved = inverse * slopes.gradient;
        moved *= std::min(1.0, kLongest / moved.cwiseAbs().maxCoeff());
        Logs next = withSpreads(logs + moved);
        double reached = logLikelihood(next);
        while (!(reached >= value - 1e-9) && moved.norm() > kShortest) {
            moved *= 0.5;
            next = withSpreads(logs + moved);
            reached = logLikelihood(next);
        }
        if (moved.cwiseAbs().maxCoeff() < kShortest) {
            logs = next;
            break;
        }
        const Logs s = next - logs;
        const Logs before = slopes.gradient;
        slopes = slopesAt(next, reached);
        const Logs y = before - slopes.gradient; // of the negative log likelihood
        if (const double sy = s.dot(y); sy > 1e-12) {
            const Eigen::Matrix3d left = Eigen::Matrix3d::Identity() - s * y.transpose() / sy;
            inverse = left * inverse * left.transpose() + s * s.transpose() / sy;
        }
        logs = next;
        value = reached;
    }
    logLikelihood(logs);
    return logs;
}

double FlatModel::slope(std::size_t life) const {
    return -wear::posteriorOfLife(life, m_season, m_fit).rate().mean();
}

double FlatModel::shift(std::size_t session) const {
    return wear::sessionShift(session, m_fit.design, m_fit.solutions.front()).first;
}

} // namespace coilbook::testing
