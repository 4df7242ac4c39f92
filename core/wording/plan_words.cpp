#include "core/wording/plan_words.h"

#include "core/wording/words.h"

#include <cmath>

namespace coilbook::wording {

namespace {

QString percent(double probability) {
    return QString::number(std::lround(100.0 * probability));
}

QString springs(int count) {
    return count == 1 ? Words::tr("1 spring") : Words::tr("%1 springs").arg(count);
}

/// Places to be changed before the race of that index.
QString placesBefore(const SwapPlan& plan, std::size_t race) {
    QStringList places;
    for (const PlannedSwap& spring : plan.springs) {
        if (spring.changeBefore == race) {
            places << placeText(spring.place);
        }
    }
    return places.join(QStringLiteral(", "));
}

QString changeNow(const SwapPlan& plan) {
    const QString race = plannedRace(plan.races.front().race);
    const QString places = placesBefore(plan, 0);
    return places.isEmpty()
               ? Words::tr("Nothing needs changing before %1: no spring is past the limit, and "
                           "each has at most %2 % chance to be when it is over.",
                           "a race")
                     .arg(race, percent(plan.question.risk))
               : Words::tr("Change before %1: %2.", "a race, places").arg(race, places);
}

QString stock(const SwapPlan& plan, int onShelf) {
    const PlannedRaceOutlook& last = plan.races.back();
    const QString needed =
        plan.races.size() == 1
            ? Words::tr("To be %1 % sure of not running out before %2 is over you need %3.")
            : Words::tr("To be %1 % sure of not running out before %2, the last of these races, is "
                        "over you need %3.");
    const QString there = onShelf == 1 ? Words::tr("There is 1 on the shelf.")
                                       : Words::tr("There are %1 on the shelf.").arg(onShelf);
    QString text =
        needed.arg(percent(plan.question.certainty), plannedRace(last.race), springs(last.enough)) +
        QLatin1Char(' ') + there;
    if (last.enough > onShelf) {
        text += QLatin1Char(' ') + Words::tr("Order %1.").arg(last.enough - onShelf);
    }
    return text;
}

QString renewed(const SwapPlan& plan) {
    const PlannedRaceOutlook& last = plan.races.back();
    return Words::tr("With a whole new set now, %1 instead of %2 springs would likely have reached "
                     "the limit by then, and %3 would be enough on the shelf.",
                     "two mean counts, springs")
        .arg(QString::number(last.expectedDueNew, 'f', 1),
             QString::number(last.expectedDue, 'f', 1), springs(last.enoughNew));
}

} // namespace

QString plannedRace(const PlannedRace& race) {
    const QString day = race.plannedOn.toString(Qt::ISODate);
    return race.venue.isEmpty() ? day : day + QLatin1Char(' ') + race.venue;
}

QStringList planSummary(const SwapPlan& plan, int onShelf, const Quantities& quantities) {
    QStringList sentences;
    if (plan.races.empty()) {
        return {Words::tr("No race is planned after the newest day of the logbook. Enter the "
                          "coming races in the calendar, and the plan appears here.")};
    }
    sentences << changeNow(plan);
    if (!plan.hasEstimates) {
        return sentences << Words::tr("There are no trends yet, so only the measured loss against "
                                      "the limit of %1 is looked at. Test the springs after the "
                                      "next race.")
                                .arg(quantities.forceWithUnit(plan.rules.limit));
    }
    sentences << stock(plan, onShelf) << renewed(plan);
    if (plan.racesLeftOut > 0) {
        sentences << Words::tr("%1 later races are not looked at.").arg(plan.racesLeftOut);
    }
    return sentences;
}

QString planCheck(const PlannedSwap& spring) {
    if (spring.offTrend) {
        return Words::tr("It fell off its trend: test it again now, and if that holds, take it out "
                         "and look for a crack.");
    }
    if (spring.evidence == PastBy::Measured) {
        return Words::tr("Test it again before swapping: its newest reading alone says that it is "
                         "past the limit.");
    }
    if (spring.standing == Standing::NoTrend) {
        return Words::tr("It has no trend yet: test it after the next race.");
    }
    return {};
}

} // namespace coilbook::wording
