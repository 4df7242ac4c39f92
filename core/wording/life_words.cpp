#include "core/wording/life_words.h"

#include "core/wording/wording.h"
#include "core/wording/words.h"

#include <cmath>

namespace coilbook::wording {

namespace {

QString number(double races) {
    return QString::number(races, 'g', 3);
}

} // namespace

QString lifeGroup(const LifeGroup& group) {
    if (group.valve) {
        return valve(*group.valve);
    }
    return group.name.isEmpty() ? Words::tr("not noted", "part or batch of springs") : group.name;
}

QString medianLife(const LifeGroup& group) {
    if (!group.curve || group.curve->ended == 0) {
        return Words::tr("none has reached the limit yet");
    }
    const statistics::SurvivalCurve& curve = *group.curve;
    if (!curve.median) {
        return Words::tr("more than half have not reached the limit yet");
    }
    QString half = Words::tr("half of them last %1 races").arg(number(*curve.median));
    if (!curve.medianLow) {
        return half;
    }
    return curve.medianHigh
               ? Words::tr("%1 (likely between %2 and %3)", "a sentence about half of the springs")
                     .arg(half, number(*curve.medianLow), number(*curve.medianHigh))
               : Words::tr("%1 (likely %2 or more)", "a sentence about half of the springs")
                     .arg(half, number(*curve.medianLow));
}

QString lifeDifference(const LifeComparison& comparison) {
    constexpr double kClear = 0.05;
    if (comparison.groups.size() < 2) {
        return Words::tr("There is one group only: nothing to compare.");
    }
    if (!comparison.difference) {
        return Words::tr("The groups cannot be compared yet: springs must first reach the limit "
                         "while others of another group still run.");
    }
    const double p = comparison.difference->p;
    const QString often = QString::number(std::max(1.0, std::round(100.0 * p)), 'f', 0);
    return p < kClear
               ? Words::tr("The groups do not last alike: so large a difference would come about "
                           "by chance %1 times in 100 or less (log-rank comparison).")
                     .arg(often)
               : Words::tr("No clear difference: one so large would come about by chance some %1 "
                           "times in 100 (log-rank comparison).")
                     .arg(often);
}

QString lifeEnd(LifeEnd end) {
    switch (end) {
    case LifeEnd::Running:
        return Words::tr("running");
    case LifeEnd::ReachedLimit:
        return Words::tr("reached the limit");
    case LifeEnd::TakenOut:
        return Words::tr("taken out before it");
    }
    return {};
}

QString lifeStay(const LifeStay& stay) {
    const QString from = stay.from.toString(Qt::ISODate);
    return stay.to.isNull()
               ? Words::tr("%1 %2 since %3 (races: %4)", "engine, place, day")
                     .arg(stay.engine, placeText(stay.place), from, QString::number(stay.races))
               : Words::tr("%1 %2 from %3 to %4 (races: %5)", "engine, place, days")
                     .arg(stay.engine, placeText(stay.place), from, stay.to.toString(Qt::ISODate),
                          QString::number(stay.races));
}

} // namespace coilbook::wording
