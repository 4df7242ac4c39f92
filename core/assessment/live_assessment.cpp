#include "core/assessment/live_assessment.h"

#include "core/assessment/spring_assessment.h"
#include "core/assessment/wear_estimate.h"
#include "core/testers/reading_corrections.h"

#include <algorithm>

namespace coilbook {

namespace {

std::optional<std::size_t> fittedLifeOf(const EngineHistory& history, const SpringId& spring) {
    for (const std::size_t life : fittedLives(history)) {
        if (history.lives[life].spring == spring) {
            return life;
        }
    }
    return std::nullopt;
}

} // namespace

class LiveAssessment::Private {
public:
    Private(EngineHistory theHistory, const JudgingRules& theRules)
        : history(std::move(theHistory))
        , rules(theRules)
        , wear(WearEstimate::of(history, Curves::None)) {}

    [[nodiscard]] SpringAssessment assessed(std::size_t life, const EngineHistory& of,
                                            const std::optional<WearEstimate>& by) const {
        return assessSpring(life, of, by, assessInspections(of, by, rules));
    }

    /// By the record alone; the inspection in work counts as far as others were read in it.
    [[nodiscard]] std::optional<Force> expected(const SpringId& spring,
                                                std::size_t inspections) const {
        const auto life = fittedLifeOf(history, spring);
        if (!life || !wear) {
            return std::nullopt;
        }
        const bool begun = inspections == history.inspections.size();
        const std::optional<Force> counted =
            wear->expectedReading(*life, begun ? std::optional(inspections - 1) : std::nullopt);
        return counted ? std::optional(
                             ReadingCorrections(history).asReadNow(history.lives[*life], *counted))
                       : std::nullopt;
    }

    EngineHistory history; ///< `wear` refers to it
    JudgingRules rules;
    std::optional<WearEstimate> wear;
};

LiveAssessment::LiveAssessment(EngineHistory history, const JudgingRules& rules)
    : d(std::make_unique<Private>(std::move(history), rules)) {}

LiveAssessment::~LiveAssessment() = default;
LiveAssessment::LiveAssessment(LiveAssessment&&) noexcept = default;
LiveAssessment& LiveAssessment::operator=(LiveAssessment&&) noexcept = default;

std::optional<LiveFigures> LiveAssessment::onRecord(const SpringId& spring) const {
    const auto life = fittedLifeOf(d->history, spring);
    if (!life) {
        return std::nullopt;
    }
    return LiveFigures{d->expected(spring, d->history.inspections.size()),
                       d->assessed(*life, d->history, d->wear), std::nullopt};
}

std::optional<LiveFigures> LiveAssessment::withReading(const EngineHistory& typed,
                                                       const SpringId& spring) const {
    const auto life = fittedLifeOf(typed, spring);
    if (!life) {
        return std::nullopt;
    }
    const std::optional<WearEstimate> quick =
        d->wear ? d->wear->refitted(typed) : WearEstimate::of(typed, Curves::None);
    LiveFigures figures{d->expected(spring, typed.inspections.size()),
                        d->assessed(*life, typed, quick), std::nullopt};
    const HistoryLife& read = typed.lives[*life];
    if (!read.cells.empty()) {
        figures.typed = ReadingCorrections(typed).of(read, read.cells.back());
    }
    return figures;
}

} // namespace coilbook
