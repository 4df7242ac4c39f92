#pragma once

#include "core/wear/events.h"
#include "core/wear/season.h"

#include <Eigen/Core>

#include <vector>

namespace coilbook::wear {

/// Lives that share all but their readings: the same cells, design rows and noise. What depends on
/// the hyperparameters is computed once per class (section 3, 'Classes').
struct LifeClass {
    std::vector<std::size_t> lives;     ///< indices in Season::lives
    std::vector<Eigen::Index> sessions; ///< t_i of its cells
    Eigen::VectorXd x;
    Eigen::VectorXd fixedVariance; ///< part of v_i that is plugged in
    Eigen::MatrixXd local; ///< Z, n × (3 + E): start, own rate, own settling, level changes, events
    Eigen::MatrixXd shared;        ///< F without its session columns, n × (3 + K)
    Eigen::Index levelColumns = 0; ///< how many of the columns after the third are level changes
    Eigen::MatrixXd readings;      ///< y minus the life's first reading, n × number of lives
    Eigen::VectorXd readingsSum;   ///< over the lives
    /// Sum of y y' over the lives, lower half, doubled below the diagonal: the sum of its products
    /// with the lower half of a symmetric A is that of y'A y.
    Eigen::MatrixXd readingsOuter;
};

/// Where a life is found.
struct LifePosition {
    std::size_t lifeClass = 0;
    Eigen::Index column = 0; ///< in LifeClass::readings
};

/// The season with its events, arranged for repeated solution at many hyperparameters.
struct Design {
    Eigen::VectorXd sessions; ///< X_t
    double now = 0.0;
    Eigen::Index overRevs = 0;
    std::vector<LifeClass> classes;
    std::vector<LifePosition> positions; ///< per life
    std::vector<Event> events;           ///< in the order of their columns within each life

    [[nodiscard]] Eigen::Index sharedColumns() const { return 3 + overRevs; }

    [[nodiscard]] Eigen::Index columns() const { return sharedColumns() + sessions.size(); }

    /// Column of an event in LifeClass::local.
    [[nodiscard]] Eigen::Index columnOf(std::size_t event) const;
};

[[nodiscard]] Design designOf(const Season& season, const std::vector<Event>& events);

} // namespace coilbook::wear
