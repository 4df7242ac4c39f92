#pragma once

#include "core/wear/joint_ahead.h"
#include "core/wear/priors.h"
#include "core/wear/season.h"

#include <Eigen/Cholesky>
#include <Eigen/Core>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>
#include <utility>
#include <vector>

namespace coilbook::testing {

/// The model of sections 1 and 2 of the specification as one normal distribution of all readings,
/// its covariance written down element by element. Slow, plain, and without any of the product's
/// algebra; the constants of the table in section 2 are repeated here on purpose. Events and level
/// changes are left out.
class DenseModel {
public:
    DenseModel(const wear::Season& season, const wear::Hyperparameters& theta)
        : m_season(season)
        , m_theta(theta) {
        for (std::size_t s = 0; s < season.lives.size(); ++s) {
            for (const wear::Cell& cell : season.lives[s].cells) {
                m_rows.push_back({s, &cell});
            }
        }
        const auto n = static_cast<Eigen::Index>(m_rows.size());
        Eigen::MatrixXd covariance(n, n);
        m_residual.resize(n);
        for (Eigen::Index i = 0; i < n; ++i) {
            const Row& row = m_rows[static_cast<std::size_t>(i)];
            m_residual[i] =
                row.cell->mean - season.lives[row.life].cells.front().mean + meanLoss(pointAt(row));
            for (Eigen::Index j = 0; j < n; ++j) {
                covariance(i, j) = readings(row, m_rows[static_cast<std::size_t>(j)], i == j);
            }
        }
        m_factor.compute(covariance);
    }

    [[nodiscard]] double logDensity() const {
        const Eigen::VectorXd white = m_factor.matrixL().solve(m_residual);
        const Eigen::MatrixXd& l = m_factor.matrixLLT();
        return -0.5 * white.squaredNorm() - l.diagonal().array().log().sum() -
               0.5 * static_cast<double>(m_residual.size()) * std::log(2.0 * std::numbers::pi);
    }

    /// Mean and variance of a life's loss today, given the readings.
    [[nodiscard]] std::pair<double, double> lossNow(std::size_t life) const {
        const wear::Life& data = m_season.lives[life];
        const Point now{life, data.xNow, data.xExhaustNow, m_season.now, &data.overRevsNow};
        const double gamma2 = m_theta.gamma * m_theta.gamma;
        Eigen::VectorXd with(m_residual.size()); // covariance with each reading: loss lowers it
        for (Eigen::Index i = 0; i < with.size(); ++i) {
            const Point then = pointAt(m_rows[static_cast<std::size_t>(i)]);
            const double common =
                std::min(now.calendar, then.calendar) - std::min(data.installed, then.calendar);
            with[i] = -own(now, then) - gamma2 * common;
        }
        const Eigen::VectorXd weights = m_factor.solve(with);
        const double prior = own(now, now) + gamma2 * (now.calendar - data.installed);
        return {meanLoss(now) + weights.dot(m_residual), prior - weights.dot(with)};
    }

    /// Means and covariance of the losses of several springs `races` from now, given the readings.
    [[nodiscard]] std::pair<Eigen::VectorXd, Eigen::MatrixXd>
    lossesAhead(const std::vector<wear::SpringAhead>& springs, double races) const {
        const std::vector<double> noOverRevs(m_season.overRevs, 0.0);
        const double gamma2 = m_theta.gamma * m_theta.gamma;
        std::vector<Point> points;
        std::vector<double> installed;
        for (std::size_t s = 0; s < springs.size(); ++s) {
            if (springs[s].life) {
                const wear::Life& data = m_season.lives[*springs[s].life];
                points.push_back({*springs[s].life, data.xNow + races,
                                  data.xExhaustNow + races * data.kind, m_season.now + races,
                                  &data.overRevsNow});
                installed.push_back(data.installed);
            } else {
                points.push_back({m_season.lives.size() + s, races, races * springs[s].kind,
                                  m_season.now + races, &noOverRevs});
                installed.push_back(m_season.now);
            }
        }
        const auto n = static_cast<Eigen::Index>(points.size());
        Eigen::MatrixXd with(m_residual.size(), n);
        Eigen::MatrixXd prior(n, n);
        Eigen::VectorXd mean(n);
        for (Eigen::Index s = 0; s < n; ++s) {
            const auto a = static_cast<std::size_t>(s);
            mean[s] = meanLoss(points[a]);
            for (Eigen::Index i = 0; i < with.rows(); ++i) {
                const Point then = pointAt(m_rows[static_cast<std::size_t>(i)]);
                const double common = std::min(points[a].calendar, then.calendar) -
                                      std::min(installed[a], then.calendar);
                with(i, s) = -own(points[a], then) - gamma2 * common;
            }
            for (Eigen::Index t = 0; t < n; ++t) {
                const auto b = static_cast<std::size_t>(t);
                prior(s, t) = own(points[a], points[b]) +
                              gamma2 * (points[a].calendar - std::max(installed[a], installed[b]));
            }
        }
        const Eigen::MatrixXd weights = m_factor.solve(with);
        return {mean + weights.transpose() * m_residual, prior - with.transpose() * weights};
    }

    /// Mean and variance of one reading more of a life today: in session `session`, or in one that
    /// holds no reading yet.
    [[nodiscard]] std::pair<double, double>
    reading(std::size_t life, std::optional<std::size_t> session, double fixedVariance) const {
        const wear::Life& data = m_season.lives[life];
        wear::Cell cell;
        cell.session = session.value_or(m_season.sessions.size());
        cell.x = data.xNow;
        cell.xExhaust = data.xExhaustNow;
        cell.fixedVariance = fixedVariance;
        cell.overRevs = data.overRevsNow;
        const Row row{life, &cell};
        Eigen::VectorXd with(m_residual.size());
        for (Eigen::Index i = 0; i < with.size(); ++i) {
            with[i] = readings(row, m_rows[static_cast<std::size_t>(i)], false);
        }
        const Eigen::VectorXd weights = m_factor.solve(with);
        return {data.cells.front().mean - meanLoss(pointAt(row)) + weights.dot(m_residual),
                readings(row, row, true) - weights.dot(with)};
    }

private:
    struct Row {
        std::size_t life;
        const wear::Cell* cell;
    };

    /// A moment in a life.
    struct Point {
        std::size_t life;
        double x;
        double xExhaust;
        double calendar;
        const std::vector<double>* overRevs;
    };

    [[nodiscard]] Point pointAt(const Row& row) const {
        const std::size_t session = row.cell->session;
        return {row.life, row.cell->x, row.cell->xExhaust,
                session < m_season.sessions.size() ? m_season.sessions[session] : m_season.now,
                &row.cell->overRevs};
    }

    [[nodiscard]] double settled(const Point& p) const {
        return p.x > 0.0 && !m_season.runIn ? 1.0 : 0.0;
    }

    [[nodiscard]] double meanLoss(const Point& p) const {
        double loss = m_theta.lambda * (0.30 * p.x + 0.07 * p.xExhaust) + 0.75 * settled(p);
        for (const double overRev : *p.overRevs) {
            loss += 0.9 * overRev;
        }
        return loss;
    }

    /// Prior covariance of two losses without the wander that all springs share.
    [[nodiscard]] double own(const Point& a, const Point& b) const {
        const double rate = 0.30 * m_theta.lambda;
        const double exhaust = 0.12 * m_theta.lambda;
        double c = rate * rate * a.x * b.x + exhaust * exhaust * a.xExhaust * b.xExhaust +
                   settled(a) * settled(b);
        for (std::size_t k = 0; k < m_season.overRevs; ++k) {
            c += 0.5 * 0.5 * (*a.overRevs)[k] * (*b.overRevs)[k];
        }
        if (a.life == b.life) {
            c += m_theta.tau * m_theta.tau * a.x * b.x + 0.35 * 0.35 * settled(a) * settled(b) +
                 m_theta.kappa * m_theta.kappa * std::min(a.x, b.x);
        }
        return c;
    }

    /// Covariance of two readings. The flat prior is that of a_s + G(X0_s), so the common wander
    /// enters with the calendar from its beginning.
    [[nodiscard]] double readings(const Row& a, const Row& b, bool same) const {
        const Point p = pointAt(a);
        const Point q = pointAt(b);
        double c = own(p, q) + m_theta.gamma * m_theta.gamma * std::min(p.calendar, q.calendar);
        if (a.life == b.life) {
            c += 100.0 * 100.0;
        }
        if (a.cell->session == b.cell->session) {
            c += m_theta.sigmaC * m_theta.sigmaC;
        }
        if (same) {
            c += m_theta.sigma * m_theta.sigma + a.cell->fixedVariance;
        }
        return c;
    }

    const wear::Season& m_season;
    wear::Hyperparameters m_theta;
    std::vector<Row> m_rows;
    Eigen::VectorXd m_residual;
    Eigen::LLT<Eigen::MatrixXd> m_factor;
};

} // namespace coilbook::testing
