#include "core/wear/functional.h"

#include <algorithm>

namespace coilbook::wear {

FunctionalPosterior posteriorOf(const Functional& functional, const Design& design,
                                const Solution& solution) {
    const Eigen::Index statics = design.sharedColumns();
    const Hyperparameters& theta = solution.theta();
    FunctionalPosterior result;
    Eigen::VectorXd k = functional.shared;
    result.constant = k.head(statics).dot(solution.priors().sharedMean);

    if (functional.commonWander) {
        const double g2 = theta.gamma * theta.gamma;
        const auto [from, to] = *functional.commonWander;
        const Eigen::VectorXd q =
            -g2 * (design.sessions.array().min(to) - design.sessions.array().min(from)).matrix();
        const Eigen::VectorXd cq = solution.sessionPrecision() * q;
        k.tail(q.size()) += cq;
        result.residual += g2 * (to - from) - q.dot(cq);
    }
    if (functional.local.size() > 0) {
        const LifePosition& position = design.positions[functional.life];
        const LifeClass& lifeClass = design.classes[position.lifeClass];
        const ClassSolution& own = solution.classes()[position.lifeClass];
        Eigen::VectorXd l = functional.local;
        Eigen::MatrixXd wm = Eigen::MatrixXd::Zero(lifeClass.x.size(), 1);
        if (functional.ownWanderAt) {
            const double k2 = theta.kappa * theta.kappa;
            const Eigen::MatrixXd m =
                k2 * lifeClass.x.array().min(*functional.ownWanderAt).max(0.0).matrix();
            own.w.apply(m, wm);
            l += lifeClass.local.transpose() * wm;
            result.residual += k2 * *functional.ownWanderAt - m.col(0).dot(wm.col(0));
        }
        own.g.triangularView<Eigen::Lower>().solveInPlace(l);
        result.local = l;
        const Eigen::VectorXd v = own.right * l - wm;
        result.constant -= v.dot(own.f0);
        k.head(statics) -= lifeClass.shared.transpose() * v;
        for (Eigen::Index i = 0; i < v.size(); ++i) {
            k[statics + lifeClass.sessions[static_cast<std::size_t>(i)]] -= v[i];
        }
        result.mean = v.dot(lifeClass.readings.col(position.column));
        result.slopes = v;
    }
    result.constant += k.dot(solution.phi());
    result.mean += result.constant;
    solution.solveLower(k);
    result.shared = std::move(k);
    result.residual = std::max(result.residual, 0.0);
    return result;
}

std::pair<double, double> sessionShift(std::size_t session, const Design& design,
                                       const Solution& solution) {
    const auto t = static_cast<Eigen::Index>(session);
    const double s2 = solution.theta().sigmaC * solution.theta().sigmaC;
    Eigen::VectorXd k = Eigen::VectorXd::Zero(design.columns());
    k.tail(design.sessions.size()) = s2 * solution.sessionPrecision().col(t);
    const double mean = k.dot(solution.phi());
    solution.solveLower(k);
    const double residual = s2 - s2 * s2 * solution.sessionPrecision()(t, t);
    return {mean, k.squaredNorm() + std::max(residual, 0.0)};
}

} // namespace coilbook::wear
