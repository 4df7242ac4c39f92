#include "tests/ui/printing/sample_sheet.h"

#include "core/wording/wording.h"

#include <array>

namespace coilbook::testing {

namespace {

constexpr int kRacesAhead = 3;
constexpr std::array kDays{0, 1, 2, 4, 5, 6, 7, 8, 9};

/// Invented: a straight loss with a little scatter, the same for the same place.
LossChart chartOf(const Place& place, double perRace) {
    LossChart chart;
    chart.place = place;
    chart.limit = Force::poundsForce(5.0);
    int step = place.cylinder.number();
    for (const int race : kDays) {
        step = (step * 7 + 3) % 11;
        const double loss = race == 0 ? 0.0 : perRace * race + (step - 5) * 0.06;
        LossChart::Point point;
        point.races = race;
        point.loss = Force::poundsForce(loss);
        point.corrected = Force::poundsForce(loss - 0.2 * (race % 3));
        if (race == 5 && place.cylinder.number() == 3) {
            point.event = EventFinding{};
        }
        chart.readings.push_back(point);
    }
    const auto band = [&](double race) {
        return LossChart::BandPoint{race, Force::poundsForce(perRace * race),
                                    Force::poundsForce(perRace * race - 0.1 - 0.06 * race),
                                    Force::poundsForce(perRace * race + 0.1 + 0.06 * race)};
    };
    for (int race = 0; race <= 9; ++race) {
        chart.estimate.push_back(band(race));
    }
    for (int race = 9; race <= 9 + kRacesAhead; ++race) {
        chart.projection.push_back(band(race));
    }
    chart.marks.push_back({LossChart::Mark::Kind::OverRev, 5.0, {}, {}});
    if (place.cylinder.number() == 6) {
        chart.marks.push_back({LossChart::Mark::Kind::Swap, 4.0, {}, {}});
    }
    return chart;
}

SheetSpring springAt(const Place& place, int number, const Quantities& quantities) {
    const double perRace = 0.1 + 0.06 * ((number * 5) % 9);
    const Force baseline = Force::poundsForce(120.0 + number % 4);
    const Force loss = Force::poundsForce(perRace * 9.0);
    SheetSpring spring;
    spring.place = place;
    spring.label = QStringLiteral("S-%1").arg(number, 2, 10, QLatin1Char('0'));
    spring.baseline = quantities.force(baseline);
    spring.latest = quantities.force(baseline - loss);
    spring.loss = quantities.force(loss);
    spring.usedOfLimit = loss / Force::poundsForce(5.0);
    spring.standing = *spring.usedOfLimit >= 1.0   ? Standing::PastLimit
                      : *spring.usedOfLimit >= 0.8 ? Standing::Due
                                                   : Standing::Sound;
    spring.chart = chartOf(place, perRace);
    return spring;
}

} // namespace

EngineLayout layoutWith(int banks, int cylindersPerBank) {
    EngineLayout layout;
    int number = 0;
    for (int bank = 0; bank < banks; ++bank) {
        Bank row{QStringLiteral("Bank %1").arg(bank + 1), {}};
        for (int i = 0; i < cylindersPerBank; ++i) {
            const Cylinder cylinder(++number);
            layout.firingOrder.push_back(cylinder);
            row.places.push_back({cylinder, Valve::Exhaust});
            row.places.push_back({cylinder, Valve::Intake});
        }
        layout.banks.push_back(row);
    }
    return layout;
}

SheetContent sampleSheet(const EngineLayout& layout) {
    const Quantities quantities(ForceUnit::PoundForce, QLocale::c());
    SheetContent content;
    content.engine = QStringLiteral("Blue");
    content.serial = QStringLiteral("CB-0417");
    content.inspectedOn = QStringLiteral("2026-05-02");
    content.inspectedAtRaces = QStringLiteral("9");
    content.asOf = QStringLiteral("2026-05-02");
    content.racesRun = QStringLiteral("9");
    content.testers = {
        {QStringLiteral("Bench tester"), QStringLiteral("160 lbf"), QStringLiteral("2026-01-15")}};
    content.inspectors = {QStringLiteral("Shop hand")};
    content.limit = QStringLiteral("5.0 lbf");
    content.unit = quantities.unitName();
    content.racesAhead = kRacesAhead;
    content.layout = layout;
    int number = 0;
    for (const Bank& bank : layout.banks) {
        for (const Place& place : bank.places) {
            content.springs.push_back(springAt(place, ++number, quantities));
        }
    }
    content.springs.at(3).standing = Standing::NoTrend;
    content.springs.at(3).latestOn = QStringLiteral("2026-04-18");
    content.springs.at(6).standing = Standing::PastLimit;
    content.springs.at(6).pastBy = PastBy::Estimate;
    content.springs.at(6).estimatedLoss = QStringLiteral("5.2 lbf");
    content.springs.at(7).offTrend = true;
    for (SheetSpring& spring : content.springs) {
        spring.standingWords = wording::standing(spring.standing, kRacesAhead);
        if (spring.standing == Standing::PastLimit && !spring.pastBy) {
            spring.pastBy = PastBy::Measured;
        }
    }
    content.range = {
        0.0, 12.0, 2.0, Force::poundsForce(-1.0), Force::poundsForce(8.0), Force::poundsForce(1.0)};
    content.rangeLeast = quantities.forceWithUnit(content.range.least);
    content.rangeMost = quantities.forceWithUnit(content.range.most);
    content.amendedSince = QStringLiteral("2026-04-18");
    content.notCounted = {QStringLiteral("3 E S-27, 112.4 of 2026-04-18 (set aside by Kim)"),
                          QStringLiteral("5 I S-09, 1 hit (too far from the others)")};
    content.levelChanges = {QStringLiteral("2 I S-03 on 2026-04-11 (shims)")};
    content.amendments = {
        {QStringLiteral("2026-05-02"), QStringLiteral("3 E, hit 1 of 2026-05-02"),
         QStringLiteral("171.25 lbf"), QStringLiteral("117.25 lbf"), QStringLiteral("Shop hand"),
         QStringLiteral("digits swapped while writing")},
        {QStringLiteral("2026-04-20"), QStringLiteral("Race 7, raced on"),
         QStringLiteral("2026-04-11"), QStringLiteral("2026-04-12"), QStringLiteral("Shop hand"),
         QStringLiteral("rained out on Saturday")},
    };
    content.cautions = wording::cautions();
    content.printedAt = QStringLiteral("2026-05-02 18:30 UTC+02:00");
    content.seal = QStringLiteral("118:9f3a2b7c01de44aa");
    return content;
}

SheetContent overlongSheet() {
    SheetContent content = sampleSheet();
    const QString endless = QStringLiteral("An endless name that no column holds ").repeated(12);
    content.engine = endless;
    content.serial = endless;
    content.inspectors = {endless, endless};
    content.testers.insert(content.testers.end(), 5, {endless, endless, endless});
    for (SheetSpring& spring : content.springs) {
        spring.label = endless;
        spring.baseline = QStringLiteral("-123456789.0");
        spring.latest = spring.baseline;
        spring.loss = spring.baseline;
        spring.usedOfLimit = 1e9;
        spring.standing = Standing::PastLimit;
        spring.standingWords = endless;
        spring.latestOn = endless;
        for (LossChart::Point& point : spring.chart.readings) {
            point.loss = Force::poundsForce(900.0);
            point.races = 4000.0;
        }
    }
    content.shift = endless;
    content.notCounted = QStringList(40, endless);
    content.levelChanges = content.notCounted;
    content.amendments.assign(
        40, {QStringLiteral("2026-05-01"), endless, endless, endless, endless, endless});
    return content;
}

RoundFormContent sampleForm(const EngineLayout& layout) {
    RoundFormContent content;
    content.engine = QStringLiteral("Blue");
    content.serial = QStringLiteral("CB-0417");
    content.racesRun = QStringLiteral("9");
    content.unit = QStringLiteral("lbf");
    content.layout = layout;
    int number = 0;
    for (const Bank& bank : layout.banks) {
        for (const Place& place : bank.places) {
            content.places.push_back({place, QStringLiteral("S-%1").arg(++number),
                                      QStringLiteral("%1.5").arg(116 + number % 5)});
        }
    }
    content.cautions = wording::cautions();
    content.printedAt = QStringLiteral("2026-05-02 18:30 UTC+02:00");
    return content;
}

} // namespace coilbook::testing
