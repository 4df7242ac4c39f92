#include "core/wear/mode_search.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace coilbook::wear {

namespace {

constexpr double kStep = 0.1;     ///< of all finite differences
constexpr double kFloor = 0.5;    ///< of the eigenvalues of the curvature
constexpr double kFarthest = 4.0; ///< clamp of eta
constexpr int kFirstIterations = 10;
constexpr int kLaterIterations = 6;

/// Central differences along the axes.
struct Slopes {
    Eta gradient;
    Eta second;
    std::array<double, kEta> forward{}; ///< f(eta + h_i), kept for the cross differences
};

Slopes slopesAt(Objective& objective, const Eta& eta, double value) {
    Slopes slopes;
    for (int i = 0; i < kEta; ++i) {
        Eta moved = eta;
        moved[i] = eta[i] + kStep;
        const double up = objective(moved);
        moved[i] = eta[i] - kStep;
        const double down = objective(moved);
        slopes.forward[static_cast<std::size_t>(i)] = up;
        slopes.gradient[i] = (up - down) / (2.0 * kStep);
        slopes.second[i] = (up - 2.0 * value + down) / (kStep * kStep);
    }
    return slopes;
}

EtaMatrix curvatureAt(Objective& objective, const Eta& eta, double value, const Slopes& slopes) {
    EtaMatrix a = slopes.second.asDiagonal();
    for (int i = 0; i < kEta; ++i) {
        for (int j = i + 1; j < kEta; ++j) {
            Eta moved = eta;
            moved[i] += kStep;
            moved[j] += kStep;
            a(i, j) = (objective(moved) - slopes.forward[static_cast<std::size_t>(i)] -
                       slopes.forward[static_cast<std::size_t>(j)] + value) /
                      (kStep * kStep);
            a(j, i) = a(i, j);
        }
    }
    return a;
}

void updateByStep(EtaMatrix& a, const Eta& s, const Eta& y) {
    const Eta as = a * s;
    const double sas = s.dot(as);
    if (const double sy = s.dot(y); sy > 0.001 * sas) {
        a += y * y.transpose() / sy - as * as.transpose() / sas;
    }
}

/// Brings the diagonal to the measured one and scales rows and columns along.
void rescale(EtaMatrix& a, const Eta& diagonal) {
    for (int i = 0; i < kEta; ++i) {
        const double factor = std::sqrt(std::max(diagonal[i], 0.3) / std::max(a(i, i), 0.3));
        a.row(i) *= factor;
        a.col(i) *= factor;
        a(i, i) = diagonal[i];
    }
}

Eta stepFrom(const EtaMatrix& a, const Eta& gradient) {
    const EigenSystem system = jacobi(a);
    const Eta d = system.values.cwiseMax(kFloor);
    Eta step = -system.vectors * (system.vectors.transpose() * gradient).cwiseQuotient(d);
    constexpr double kLongest = 1.5;
    if (const double longest = step.cwiseAbs().maxCoeff(); longest > kLongest) {
        step *= kLongest / longest;
    }
    return step;
}

/// Takes the longest shortened step that lowers f; false if none does.
bool advance(Objective& objective, ModeState& state, const Eta& step) {
    double factor = 1.0;
    for (int k = 0; k <= 5; ++k, factor *= 0.4) {
        const Eta tried = (state.eta + factor * step).cwiseMax(-kFarthest).cwiseMin(kFarthest);
        const double value = objective(tried);
        if (value < state.value) {
            state.eta = tried;
            state.value = value;
            return true;
        }
    }
    return false;
}

} // namespace

double Objective::operator()(const Eta& eta) {
    const Hyperparameters theta = m_prior.at(eta);
    const auto overRevs = static_cast<std::size_t>(m_design.overRevs);
    if (!m_workspace.solve(m_design, theta, coefficientPriorsAt(theta.lambda, overRevs))) {
        return std::numeric_limits<double>::infinity();
    }
    return 0.5 * eta.squaredNorm() - m_workspace.logMarginalLikelihood();
}

void searchMode(Objective& objective, ModeState& state) {
    const int most = state.searched ? kLaterIterations : kFirstIterations;
    state.value = objective(state.eta);
    Eta lastStep = Eta::Zero();
    Eta lastGradient = Eta::Zero();
    bool stepped = false;
    for (int iteration = 0; iteration < most && std::isfinite(state.value); ++iteration) {
        const Slopes slopes = slopesAt(objective, state.eta, state.value);
        if (!state.searched) {
            state.a = curvatureAt(objective, state.eta, state.value, slopes);
            state.searched = true;
        } else {
            if (stepped) {
                updateByStep(state.a, lastStep, slopes.gradient - lastGradient);
            }
            rescale(state.a, slopes.second);
        }
        if (!state.a.allFinite() || !slopes.gradient.allFinite()) {
            return;
        }
        const Eta step = stepFrom(state.a, slopes.gradient);
        constexpr double kShortest = 0.05;
        if (step.cwiseAbs().maxCoeff() < kShortest) {
            return;
        }
        const ModeState before = state;
        if (!advance(objective, state, step)) {
            return;
        }
        stepped = true;
        lastStep = state.eta - before.eta;
        lastGradient = slopes.gradient;
        constexpr double kLeastGain = 0.001;
        if (before.value - state.value < kLeastGain) {
            return;
        }
    }
}

EigenSystem axesAt(Objective& objective, const ModeState& state) {
    const Slopes slopes = slopesAt(objective, state.eta, state.value);
    EigenSystem axes = jacobi(curvatureAt(objective, state.eta, state.value, slopes));
    axes.values = axes.values.cwiseMax(kFloor);
    return axes;
}

} // namespace coilbook::wear
