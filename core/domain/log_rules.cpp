#include "core/domain/log_rules.h"

#include "core/domain/current_readings.h"
#include "core/support/text.h"

#include <QHash>

#include <algorithm>
#include <tuple>

namespace coilbook {

namespace {

QString isoText(const QDate& day) {
    return day.toString(Qt::ISODate);
}

Result<void> checkNeighbours(const Inspection& earlier, const Inspection& later,
                             const InspectionId& given) {
    if (earlier.inspectedOn == later.inspectedOn && earlier.engineRaces == later.engineRaces) {
        return fail(LogbookFault::InspectionExists,
                    {isoText(later.inspectedOn), QString::number(later.engineRaces)});
    }
    if (later.engineRaces < earlier.engineRaces) {
        const bool earlierIsGiven = earlier.id == given;
        const Inspection& at = earlierIsGiven ? earlier : later;
        const Inspection& crossed = earlierIsGiven ? later : earlier;
        return fail(LogbookFault::RacesGoBack,
                    {QString::number(at.engineRaces), isoText(crossed.inspectedOn),
                     QString::number(crossed.engineRaces)});
    }
    return {};
}

Result<void> nameClash(const QString& what, const QString& name, const QString& other) {
    if (name != other) {
        return fail(LogbookFault::NameDiffersInCaseOnly, {name, other});
    }
    if (what == QLatin1String("engine")) {
        return fail(LogbookFault::EngineNameTaken, {name});
    }
    return fail(LogbookFault::NameTaken, {what, name});
}

/// Something of that day and count beside the inspections: an inspection of an earlier day counts
/// no more races, one of a later day no fewer.
Result<void> checkMoment(const QDate& day, int engineRaces,
                         const std::vector<Inspection>& inspections) {
    for (const Inspection& inspection : inspections) {
        if (!isInOrder(day, engineRaces, inspection.inspectedOn, inspection.engineRaces)) {
            return fail(LogbookFault::RacesGoBack,
                        {QString::number(engineRaces), isoText(inspection.inspectedOn),
                         QString::number(inspection.engineRaces)});
        }
    }
    return {};
}

QString labelOf(const SpringId& spring, const std::vector<Spring>& springs) {
    const auto found = std::find_if(springs.begin(), springs.end(), [&](const Spring& candidate) {
        return candidate.id == spring;
    });
    return found == springs.end() ? spring.text() : found->label;
}

} // namespace

Result<void> checkDay(const QDate& day, const QDate& today) {
    if (!day.isValid() || day < QDate(1950, 1, 1)) {
        return fail(LogbookFault::DateTooEarly, {isoText(day)});
    }
    if (day > today.addDays(1)) {
        return fail(LogbookFault::DateInFuture, {isoText(day)});
    }
    return {};
}

Result<void> checkName(const QString& name, const QString& what) {
    if (name.trimmed().isEmpty()) {
        return fail(LogbookFault::EmptyName, {what});
    }
    return {};
}

Result<void> checkEngine(const Engine& engine) {
    if (Result<void> named = checkName(engine.name, QStringLiteral("engine")); !named) {
        return named;
    }
    if (Result<EngineLayout> layout = checkedLayout(engine.layout); !layout) {
        return tl::unexpected(layout.error());
    }
    // The logbook keeps whole millionths of a pound-force; written so that NaN fails too.
    const double limit = engine.rules.limit.inPoundsForce();
    if (!(limit >= 1e-6 && limit <= 1000.0)) {
        return fail(LogbookFault::BadLimit, {QString::number(limit)});
    }
    if (engine.rules.racesAhead < 0 || engine.rules.racesAhead > 60) {
        return fail(LogbookFault::BadRacesAhead, {QString::number(engine.rules.racesAhead)});
    }
    return {};
}

Result<void> checkNameIsFree(const QString& name, const QString& what, const QStringList& others) {
    for (const QString& other : others) {
        if (caseKey(name) == caseKey(other)) {
            return nameClash(what, name, other);
        }
    }
    return {};
}

Result<void> checkTimeline(const std::vector<Inspection>& inspections,
                           const std::vector<Race>& races, const InspectionId& given) {
    std::vector<const Inspection*> byDay;
    byDay.reserve(inspections.size());
    for (const Inspection& inspection : inspections) {
        byDay.push_back(&inspection);
    }
    std::sort(byDay.begin(), byDay.end(), [](const Inspection* a, const Inspection* b) {
        return std::tie(a->inspectedOn, a->engineRaces) < std::tie(b->inspectedOn, b->engineRaces);
    });
    for (std::size_t i = 1; i < byDay.size(); ++i) {
        if (Result<void> fits = checkNeighbours(*byDay[i - 1], *byDay[i], given); !fits) {
            return fits;
        }
    }

    std::vector<const Race*> byNumber;
    byNumber.reserve(races.size());
    for (const Race& race : races) {
        byNumber.push_back(&race);
    }
    std::sort(byNumber.begin(), byNumber.end(),
              [](const Race* a, const Race* b) { return a->number < b->number; });
    // Counts rise with the days by now, so race and inspection advance together: the inspections
    // counting a race begin with the earliest of them.
    auto counting = byDay.begin();
    for (std::size_t i = 0; i < byNumber.size(); ++i) {
        const Race& race = *byNumber[i];
        if (i > 0 && byNumber[i - 1]->number == race.number) {
            return fail(LogbookFault::RaceExists, {QString::number(race.number)});
        }
        counting = std::find_if(counting, byDay.end(), [&](const Inspection* inspection) {
            return inspection->engineRaces >= race.number;
        });
        if (counting != byDay.end() && race.racedOn > (*counting)->inspectedOn) {
            return fail(LogbookFault::RaceAfterInspection,
                        {QString::number(race.number), isoText(race.racedOn),
                         isoText((*counting)->inspectedOn)});
        }
    }
    return {};
}

bool isInOrder(const QDate& oneDay, int oneRaces, const QDate& otherDay, int otherRaces) {
    return oneDay == otherDay || oneRaces == otherRaces ||
           (oneDay < otherDay) == (oneRaces < otherRaces);
}

Result<void> checkMoments(const EngineLog& log) {
    for (const Running& running : log.running) {
        Result<void> fits = running.withdrawn
                                ? Result<void>()
                                : checkMoment(running.ranOn, running.engineRaces, log.inspections);
        if (!fits) {
            return fits;
        }
    }
    for (const LevelChange& change : log.levelChanges) {
        Result<void> fits =
            change.withdrawn ? Result<void>()
                             : checkMoment(change.changedOn, change.engineRaces, log.inspections);
        if (!fits) {
            return fits;
        }
    }
    return {};
}

Result<void> checkRunning(const Running& running) {
    const auto isWithin = [](const std::optional<int>& amount, int most) {
        return amount && *amount >= 1 && *amount <= most;
    };
    const bool clear =
        running.laps.has_value() != running.raceThousandths.has_value() &&
        (isWithin(running.laps, 1'000'000) || isWithin(running.raceThousandths, 10'000));
    return clear ? Result<void>() : fail(LogbookFault::RunningUnclear);
}

Result<void> checkLevelChange(const LevelChange& change, const std::vector<Spring>& springs) {
    const bool known = std::any_of(springs.begin(), springs.end(), [&](const Spring& spring) {
        return spring.id == change.spring;
    });
    return known ? Result<void>()
                 : fail(LogbookFault::UnknownPlaceOfSpring, {labelOf(change.spring, springs)});
}

Result<void> checkPlannedRace(const PlannedRace& race) {
    if (!race.plannedOn.isValid() || race.plannedOn < QDate(1950, 1, 1)) {
        return fail(LogbookFault::DateTooEarly, {isoText(race.plannedOn)});
    }
    if (race.laps && (*race.laps < 1 || *race.laps > 1'000'000)) {
        return fail(LogbookFault::BadLaps, {QString::number(*race.laps)});
    }
    return {};
}

Result<void> checkShelving(const Shelving& shelving) {
    constexpr double kLowest = 10.0; // mm, no valve spring is shorter or longer
    constexpr double kHighest = 200.0;
    if (shelving.pressure && !shelving.pressure->isWithinBounds()) {
        return fail(LogbookFault::ReadingOutOfBounds, {shelving.pressure->text()});
    }
    if (shelving.height && (shelving.height->inMillimetres() < kLowest ||
                            shelving.height->inMillimetres() > kHighest)) {
        return fail(LogbookFault::BadHeight,
                    {QString::number(shelving.height->inMillimetres(), 'f', 2)});
    }
    return {};
}

Result<void> checkDecision(const Decision& decision, const EngineLog& log) {
    const std::vector<CurrentHit> hits = currentHits(log);
    const bool isRead = std::any_of(hits.begin(), hits.end(), [&](const CurrentHit& hit) {
        return log.inspections[hit.inspection].id == decision.inspection &&
               log.readings[hit.row].spring == decision.spring;
    });
    if (isRead) {
        return {};
    }
    const auto inspection =
        std::find_if(log.inspections.begin(), log.inspections.end(),
                     [&](const Inspection& known) { return known.id == decision.inspection; });
    const QDate day = inspection == log.inspections.end() ? QDate() : inspection->inspectedOn;
    return fail(LogbookFault::NothingToDecide,
                {labelOf(decision.spring, log.springs), isoText(day)});
}

Result<void> checkSprings(const std::vector<Spring>& springs) {
    QHash<QString, const Spring*> byKey;
    for (const Spring& spring : springs) {
        if (Result<void> named = checkName(spring.label, QStringLiteral("spring")); !named) {
            return named;
        }
        const Spring*& there = byKey[caseKey(spring.label)];
        if (there != nullptr && there->id != spring.id) {
            return nameClash(QStringLiteral("spring"), spring.label, there->label);
        }
        there = &spring;
    }
    return {};
}

Result<void> checkReading(const Reading& reading, const EngineLayout& layout) {
    if ((reading.kind == ReadingKind::Original) == reading.amends.has_value()) {
        return fail(LogbookFault::NothingToAmend);
    }
    if (!reading.value.isWithinBounds()) {
        return fail(LogbookFault::ReadingOutOfBounds, {reading.value.text()});
    }
    if (!layout.has(reading.place)) {
        return fail(LogbookFault::NoSuchPlace, {placeText(reading.place)});
    }
    return {};
}

Result<void> checkHits(const EngineLog& log) {
    std::vector<CurrentHit> hits = currentHits(log);
    const auto rowOf = [&](const CurrentHit& hit) -> const Reading& {
        return log.readings[hit.row];
    };
    std::sort(hits.begin(), hits.end(), [&](const CurrentHit& a, const CurrentHit& b) {
        const Reading& x = rowOf(a);
        const Reading& y = rowOf(b);
        return std::tie(a.inspection, x.spring, x.hit, x.id) <
               std::tie(b.inspection, y.spring, y.hit, y.id);
    });
    for (std::size_t i = 1; i < hits.size(); ++i) {
        const Reading& first = rowOf(hits[i - 1]);
        const Reading& second = rowOf(hits[i]);
        if (hits[i - 1].inspection != hits[i].inspection || first.spring != second.spring) {
            continue;
        }
        if (first.place != second.place) {
            // The row that arrived first says where the spring stands.
            const Reading& there = first.id < second.id ? first : second;
            return fail(LogbookFault::SpringElsewhere,
                        {labelOf(second.spring, log.springs), placeText(there.place)});
        }
        if (first.hit == second.hit) {
            return fail(LogbookFault::HitExists,
                        {labelOf(second.spring, log.springs), QString::number(second.hit)});
        }
    }
    return {};
}

} // namespace coilbook
