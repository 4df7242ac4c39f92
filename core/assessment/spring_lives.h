#pragma once

#include "core/domain/engine_log.h"
#include "core/statistics/survival.h"

#include <QDate>
#include <QString>

#include <optional>
#include <vector>

namespace coilbook {

/// A spring in one place of one engine, from one moment to another.
struct LifeStay {
    QString engine;
    Place place;
    QDate from;
    QDate to; ///< null: it stands there now
    int races = 0;

    bool operator==(const LifeStay&) const = default;
};

/// How a spring's running came to an end, if it did.
enum class LifeEnd {
    Running,      ///< stands in an engine, within the limit as far as is known
    ReachedLimit, ///< had lost the limit at an inspection; it may run on
    TakenOut,     ///< stands in no place, and had not lost it
};

/// The whole history of one spring, over all engines that it stood in.
struct SpringLife {
    SpringId spring;
    QString label;
    QString part;
    QString batch;
    std::vector<LifeStay> stays; ///< in order of time
    int races = 0;               ///< until it reached the limit, else until it was seen last
    LifeEnd end = LifeEnd::Running;

    bool operator==(const SpringLife&) const = default;
};

/// The springs of all these engines, by label. A spring has reached the limit of its engine at the
/// first inspection at which its estimated loss has (shifts and misreads taken out), or its
/// measured one where there is no estimate; what it lost in an earlier engine is added. Races that
/// it ran where the logbook does not see them leave it out: nobody knows what it lost there.
[[nodiscard]] std::vector<SpringLife> springLives(const std::vector<EngineLog>& logs);

/// What lives are compared by.
enum class LifeGrouping { Part, Batch, Engine, Valve };

/// Springs of one kind, and how long they last.
struct LifeGroup {
    QString name; ///< empty: not noted
    std::optional<Valve> valve;
    std::size_t running = 0; ///< still running or taken out early: censored
    std::optional<statistics::SurvivalCurve> curve;

    bool operator==(const LifeGroup& other) const {
        return name == other.name && valve == other.valve && running == other.running;
    }
};

/// The lives by what they are compared by.
struct LifeComparison {
    std::vector<LifeGroup> groups;                 ///< by name, intake before exhaust
    std::optional<statistics::LogRank> difference; ///< empty: nothing to compare
};

/// A spring that stood in several engines or at both kinds of valve belongs where it stood last.
[[nodiscard]] LifeComparison compareLives(const std::vector<SpringLife>& lives,
                                          LifeGrouping grouping);

} // namespace coilbook
