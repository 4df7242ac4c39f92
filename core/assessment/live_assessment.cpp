#include "core/assessment/live_assessment.h"

#include "core/assessment/spring_assessment.h"
#include "core/assessment/wear_estimate.h"
#include "core/testers/reading_corrections.h"

#include <algorithm>
#include <cmath>

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

    /// The newest inspection as far as it is on record.
    [[nodiscard]] std::optional<RoundCheck> check() const {
        if (!wear || history.inspections.empty()) {
            return std::nullopt;
        }
        const std::size_t newest = history.inspections.size() - 1;
        const auto score = wear->newestScore();
        const auto shift = wear->shift(newest);
        if (!score || !shift) {
            return std::nullopt;
        }
        const auto springs =
            std::count_if(history.lives.begin(), history.lives.end(), [&](const auto& life) {
                return life.cells.size() > 1 && life.cells.back().inspection == newest;
            });
        return RoundCheck{*score, *shift, static_cast<std::size_t>(springs)};
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

bool RoundCheck::alarms() const {
    constexpr std::size_t kFewestSprings = 4;
    constexpr double kAlarm = 2.0;
    return springs >= kFewestSprings && std::abs(score) >= kAlarm;
}

std::optional<LiveFigures> LiveAssessment::onRecord(const SpringId& spring,
                                                    std::optional<std::size_t> tester) const {
    const auto life = fittedLifeOf(d->history, spring);
    if (!life) {
        return std::nullopt;
    }
    return LiveFigures{expectedReading(spring, tester),
                       d->check(),
                       hitAgreementOf(d->history, tester),
                       d->assessed(*life, d->history, d->wear),
                       {}};
}

std::optional<ForceEstimate>
LiveAssessment::expectedReading(const SpringId& spring, std::optional<std::size_t> tester) const {
    const auto life = fittedLifeOf(d->history, spring);
    if (!life || !d->wear) {
        return std::nullopt;
    }
    const std::size_t newest = d->history.inspections.size() - 1;
    const std::vector<HistoryCell>& cells = d->history.lives[*life].cells;
    std::optional<ForceEstimate> band;
    if (cells.empty() || cells.back().inspection != newest) {
        band = d->wear->nextReading(*life, tester);
    } else {
        // A spring does not vouch for itself: what it read in this inspection is left out.
        EngineHistory others = d->history;
        others.lives[*life].cells.pop_back();
        const std::optional<WearEstimate> without = d->wear->refitted(others);
        band = without ? without->nextReading(*life, tester) : std::nullopt;
    }
    if (band) { // what counts, told as it will be read
        const ReadingCorrections corrections(d->history);
        for (Force* bound : {&band->mean, &band->low90, &band->high90}) {
            *bound = corrections.asReadNow(d->history.lives[*life], *bound);
        }
    }
    return band;
}

RoundReview LiveAssessment::review(std::optional<std::size_t> tester) const {
    RoundReview review{d->check(), hitAgreementOf(d->history, tester), {}};
    for (const HistoryLife& life : d->history.lives) {
        const bool read = life.fitted && !life.cells.empty() &&
                          life.cells.back().inspection + 1 == d->history.inspections.size();
        const auto band = read ? expectedReading(life.spring, tester) : std::nullopt;
        if (band) {
            review.expected.push_back({life.spring, *band});
        }
    }
    return review;
}

std::optional<TypedFigures> LiveAssessment::withReading(const EngineHistory& typed,
                                                        const SpringId& spring) const {
    const auto life = fittedLifeOf(typed, spring);
    if (!life) {
        return std::nullopt;
    }
    const std::optional<WearEstimate> quick =
        d->wear ? d->wear->refitted(typed) : WearEstimate::of(typed, Curves::None);
    TypedFigures figures{d->assessed(*life, typed, quick), std::nullopt};
    const HistoryLife& read = typed.lives[*life];
    if (!read.cells.empty()) {
        figures.typed = ReadingCorrections(typed).of(read, read.cells.back());
    }
    return figures;
}

} // namespace coilbook
