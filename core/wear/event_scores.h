#pragma once

#include "core/wear/design.h"
#include "core/wear/solution.h"

#include <optional>

namespace coilbook::wear {

/// log prior odds and Bayes factor of a misread of size `estimate` (either sign) known with
/// `variance`, against no event (section 7, LO_mis).
[[nodiscard]] double logOddsMisread(double estimate, double variance);

/// Likewise of a sudden drop of `estimate` lbf, `exposure` races after the reading before
/// (section 7, LO_drop).
[[nodiscard]] double logOddsDrop(double estimate, double variance, double exposure);

/// log(e^a + e^b).
[[nodiscard]] double logSum(double a, double b);

/// What the newest reading of a life says against its own trend: z with the sign of loss
/// (section 7, 'Off trend'), from the misread column of its last cell; empty with fewer than 2
/// cells.
[[nodiscard]] std::optional<double> offTrendScore(std::size_t life, const Season& season,
                                                  const Design& design, const Solution& solution);

/// The best event that is not in the design yet, with its log odds; empty if there is none.
struct Candidate {
    Event event;
    double logOdds = 0.0;
};

[[nodiscard]] std::optional<Candidate> bestCandidate(const Season& season, const Design& design,
                                                     const Solution& solution);

/// How large an event of the design is: by how much a misread was too high, or how much was lost
/// at a drop; lbf, its own flat prior taken out.
[[nodiscard]] double eventSize(std::size_t event, const Design& design, const Solution& solution);

/// Log odds of an event in the design from its own cavity, put into the event; returns those by
/// which it is judged (section 7, step C).
double rejudge(std::size_t event, const Season& season, const Design& design,
               const Solution& solution, Event& judged);

} // namespace coilbook::wear
