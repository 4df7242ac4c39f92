#include "core/services/plan_content.h"

#include "core/domain/shelf.h"
#include "core/services/sheet_content.h"
#include "core/wording/plan_words.h"
#include "core/wording/wording.h"

#include <algorithm>
#include <tuple>

namespace coilbook {

namespace {

/// `12 %`; narrow columns of them stand side by side, so the ends are said by signs.
QString oddsText(double odds, const Quantities& quantities) {
    constexpr double kLeast = 0.01;
    if (odds < kLeast) {
        return QStringLiteral("<1 %");
    }
    return odds > 1.0 - kLeast ? QStringLiteral(">99 %") : quantities.percent(odds);
}

PlanRow rowOf(const PlannedSwap& spring, const SwapPlan& plan, const Quantities& quantities) {
    PlanRow row;
    row.place = spring.place;
    row.spring = spring.label;
    row.standing = wording::standing(spring.standing, plan.rules.racesAhead);
    row.changeIndex = spring.changeBefore;
    row.changeBefore = spring.changeBefore
                           ? wording::plannedRace(plan.races[*spring.changeBefore].race)
                           : QStringLiteral("–");
    for (const double odds : spring.pastBy) {
        row.odds << oddsText(odds, quantities);
    }
    return row;
}

PlanRace raceOf(const PlannedRaceOutlook& outlook, const Quantities& quantities) {
    PlanRace race;
    race.day = quantities.date(outlook.race.plannedOn);
    race.venue = outlook.race.venue;
    race.laps = outlook.race.laps ? QString::number(*outlook.race.laps) : QString();
    if (!outlook.due.empty()) {
        race.due = QString::number(outlook.expectedDue, 'f', 1);
        race.needed = QString::number(outlook.enough);
        race.dueRenewed = QString::number(outlook.expectedDueNew, 'f', 1);
        race.neededRenewed = QString::number(outlook.enoughNew);
    }
    return race;
}

} // namespace

int springsOnShelf(const EngineLog& log, const EngineHistory& history) {
    const std::vector<ShelvedSpring> shelf = shelfOf(log, history);
    return static_cast<int>(
        std::count_if(shelf.begin(), shelf.end(),
                      [](const ShelvedSpring& spring) { return spring.where == Storage::Shelf; }));
}

PlanContent planContentOf(const EngineLog& log, const SwapPlan& plan, int onShelf,
                          const std::vector<PlanLine>& more, const Quantities& quantities,
                          const Moment& printedAt) {
    PlanContent content;
    content.engine = log.engine.name;
    content.serial = log.engine.serial;
    content.asOf = quantities.date(plan.asOf);
    content.racesRun = QString::number(plan.racesNow);
    content.limit = quantities.forceWithUnit(plan.rules.limit);
    for (const PlannedRaceOutlook& race : plan.races) {
        content.races.push_back(raceOf(race, quantities));
    }
    for (const PlannedSwap& spring : plan.springs) {
        content.rows.push_back(rowOf(spring, plan, quantities));
    }
    std::stable_sort(content.rows.begin(), content.rows.end(),
                     [&](const PlanRow& a, const PlanRow& b) {
                         return a.changeIndex.value_or(plan.races.size()) <
                                b.changeIndex.value_or(plan.races.size());
                     });
    content.summary = wording::planSummary(plan, onShelf, quantities);
    for (const PlannedSwap& spring : plan.springs) {
        const QString check = wording::planCheck(spring);
        if (!check.isEmpty()) {
            content.lines.push_back({placeText(spring.place), check});
        }
    }
    content.lines.insert(content.lines.end(), more.begin(), more.end());
    content.cautions = wording::cautions();
    content.printedAt = printedMoment(printedAt);
    return content;
}

} // namespace coilbook
