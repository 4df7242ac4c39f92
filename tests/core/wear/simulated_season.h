#pragma once

#include "core/wear/hit_noise.h"
#include "core/wear/priors.h"
#include "core/wear/season.h"

#include <cmath>
#include <random>
#include <vector>

namespace coilbook::testing {

/// A season drawn from the model itself, hyperparameters included, with the losses that the
/// readings hide. Springs are tested after every race; readings are rounded to the graduation.
struct SimulatedSeason {
    wear::Season season;
    std::vector<double> lossNow;   ///< true ones, per life
    std::vector<double> lossAhead; ///< three races on
};

struct SimulationPlan {
    std::size_t lives = 16;
    std::size_t sessions = 4;
    int hits = 2;
    double graduation = 0.5;
    double hitSd = 0.5; ///< of the hits of a cell
};

class SeasonSimulator {
public:
    SeasonSimulator(const SimulationPlan& plan, unsigned seed)
        : m_plan(plan)
        , m_random(seed) {}

    SimulatedSeason draw() {
        const int degreesOfFreedom =
            static_cast<int>(m_plan.lives * m_plan.sessions) * (m_plan.hits - 1);
        wear::Eta eta;
        for (double& value : eta) {
            value = normal(1.0);
        }
        m_theta = wear::hyperPriorFor(degreesOfFreedom).at(eta);
        drawShared();
        SimulatedSeason made;
        made.season.hitDegreesOfFreedom = degreesOfFreedom;
        for (std::size_t t = 0; t < m_plan.sessions; ++t) {
            made.season.sessions.push_back(static_cast<double>(t));
        }
        made.season.now = made.season.sessions.back();
        for (std::size_t s = 0; s < m_plan.lives; ++s) {
            addLife(made, static_cast<int>(s % 2));
        }
        addNoise(made.season);
        return made;
    }

private:
    static constexpr std::size_t kAhead = 3;

    double normal(double sd) { return std::normal_distribution<double>(0.0, sd)(m_random); }

    void drawShared() {
        const double lambda = m_theta.lambda;
        m_rate = 0.30 * lambda + normal(0.30 * lambda);
        m_exhaust = 0.07 * lambda + normal(0.12 * lambda);
        m_settling = 0.75 + normal(1.0);
        m_shifts.clear();
        m_common.assign(1, 0.0);
        for (std::size_t t = 0; t < m_plan.sessions; ++t) {
            m_shifts.push_back(normal(m_theta.sigmaC));
        }
        for (std::size_t t = 1; t < m_plan.sessions + kAhead; ++t) {
            m_common.push_back(m_common.back() + normal(m_theta.gamma));
        }
    }

    void addLife(SimulatedSeason& made, int kind) {
        const double start = 120.0 + normal(3.0);
        const double rate = m_rate + m_exhaust * kind + normal(m_theta.tau);
        const double settling = m_settling + normal(0.35);
        double wander = 0.0;
        wear::Life life;
        life.kind = kind;
        for (std::size_t t = 0; t < m_plan.sessions + kAhead; ++t) {
            const auto x = static_cast<double>(t);
            wander += t > 0 ? normal(m_theta.kappa) : 0.0;
            const double loss = t == 0 ? 0.0 : rate * x + settling + wander + m_common[t];
            if (t + 1 == m_plan.sessions) {
                made.lossNow.push_back(loss);
                life.xNow = x;
                life.xExhaustNow = x * kind;
            }
            if (t + 1 == m_plan.sessions + kAhead) {
                made.lossAhead.push_back(loss);
            }
            if (t < m_plan.sessions) {
                life.cells.push_back(cellAt(t, kind, start - loss + m_shifts[t]));
            }
        }
        made.season.lives.push_back(std::move(life));
    }

    wear::Cell cellAt(std::size_t session, int kind, double pressure) {
        wear::Cell cell;
        cell.session = session;
        cell.x = static_cast<double>(session);
        cell.xExhaust = cell.x * kind;
        cell.hits = m_plan.hits;
        const double placed = pressure + normal(m_theta.sigma);
        std::vector<double> hits;
        for (int h = 0; h < m_plan.hits; ++h) {
            const double hit = placed + normal(m_plan.hitSd);
            hits.push_back(m_plan.graduation * std::round(hit / m_plan.graduation));
            cell.mean += hits.back() / m_plan.hits;
        }
        for (const double hit : hits) {
            cell.sumSquares += (hit - cell.mean) * (hit - cell.mean);
        }
        m_groups.push_back({0, session, 0, hits});
        return cell;
    }

    void addNoise(wear::Season& season) {
        const wear::HitNoise noise = wear::hitNoiseOf(m_groups, 0, m_plan.graduation);
        m_groups.clear();
        for (wear::Life& life : season.lives) {
            for (wear::Cell& cell : life.cells) {
                cell.fixedVariance = noise.fixedVariance(cell.hits);
            }
        }
    }

    SimulationPlan m_plan;
    std::mt19937_64 m_random;
    wear::Hyperparameters m_theta;
    double m_rate = 0.0;
    double m_exhaust = 0.0;
    double m_settling = 0.0;
    std::vector<double> m_shifts;
    std::vector<double> m_common; ///< G at each race
    std::vector<wear::HitGroup> m_groups;
};

} // namespace coilbook::testing
