#pragma once

#include "core/domain/history.h"
#include "core/wear/fit.h"
#include "core/wear/season_builder.h"

#include <string>

namespace coilbook::testing {

/// A season of tests/data/wear as the program reads it, up to its last inspection.
struct ReferenceSeason {
    EngineHistory history;
    wear::SeasonOfHistory arranged;

    /// "3 E life 2" of a life of the season: cylinder, valve, and the how-manieth at its place.
    [[nodiscard]] std::string nameOf(std::size_t life) const;
};

/// `name` without its endings: "engine09", "case_high_last".
[[nodiscard]] ReferenceSeason referenceSeason(const std::string& name);

/// A fit with one node only: the posterior at fixed hyperparameters.
[[nodiscard]] wear::Fit fitAt(const wear::Season& season, const wear::Hyperparameters& theta,
                              const std::vector<wear::Event>& events = {});

} // namespace coilbook::testing
