#include "core/demo/demo_seasons.h"

namespace coilbook::demo {

namespace {

Place intake(int cylinder) {
    return {Cylinder(cylinder), Valve::Intake};
}

Place exhaust(int cylinder) {
    return {Cylinder(cylinder), Valve::Exhaust};
}

QDate day(int month, int dayOfMonth) {
    return {2026, month, dayOfMonth};
}

QDate nextYear(int month, int dayOfMonth) {
    return {2027, month, dayOfMonth};
}

// The people, places and engines of the demo are our own invention.
const QString kDana = QStringLiteral("Dana");
const QString kRuben = QStringLiteral("Ruben");
const QString kBench = QStringLiteral("Bench 160");
const QString kLowFen = QStringLiteral("Low Fen");
const QString kKettle = QStringLiteral("Kettle Hollow");
const QString kTarn = QStringLiteral("Tarn Ring");
const QString kQuarry = QStringLiteral("Quarry Bend");

} // namespace

DemoSeason heron() {
    DemoSeason season;
    season.engine = QStringLiteral("Heron");
    season.serial = QStringLiteral("Seal 0417");
    season.rpmCeiling = 6800;
    season.springPrefix = QStringLiteral("H-");
    season.part = QStringLiteral("Dual, with damper");
    season.batch = QStringLiteral("Spring lot 7");
    season.seed = 417;
    season.freshLbf = 128.0;
    season.breakInLbf = 0.8;
    season.intakeLbfPerRace = 0.17;
    season.exhaustLbfPerRace = 0.23;
    season.fastLbfPerRace = {
        {exhaust(4), 0.55}, {exhaust(6), 0.45}, {intake(7), 0.35}, {exhaust(7), 0.48}};
    season.overRevLbf = 0.6;
    season.races = {
        {day(3, 28), kLowFen, 40, 6620, {}},
        {day(4, 11), kKettle, 50, 6580, {}},
        {day(4, 25), kTarn, 40, 6640, {}},
        {day(5, 16), kLowFen, 40, 6600, {}},
        {day(5, 30), kQuarry, 75, 6650, {}},
        {day(6, 13), kTarn, 40, 7350, QStringLiteral("Missed a gear on the restart")},
        {day(7, 4), kKettle, 50, 6610, {}},
        {day(7, 25), kLowFen, 40, 6630, {}},
        {day(8, 15), kQuarry, 75, 6590, {}},
        {day(9, 5), kTarn, 40, 6640, {}},
    };
    season.inspections = {
        {day(3, 21), 0, kBench, kDana, 18.0, 0.0, 2},
        {day(3, 30), 1, kBench, kDana, 19.0, 0.1, 2},
        {day(4, 13), 2, kBench, kRuben, 17.0, -0.2, 2},
        {day(4, 27), 3, kBench, kDana, 20.0, 0.2, 2},
        {day(5, 18), 4, kBench, kDana, 21.0, -2.6, 2},
        {day(6, 1), 5, kBench, kRuben, 22.0, 0.0, 2},
        {day(6, 15), 6, kBench, kDana, 24.0, 0.1, 2},
        {day(7, 6), 7, kBench, kDana, 25.0, -0.1, 2},
        {day(7, 27), 8, kBench, kRuben, 26.0, 0.2, 2},
        {day(8, 17), 9, kBench, kDana, 24.0, 0.0, 2},
        {day(9, 7), 10, kBench, kDana, 22.0, 0.1, 2},
    };
    season.suddenLosses = {{exhaust(5), 10, 6.5}};
    season.swaps = {
        {exhaust(4), 8, QStringLiteral("H-17"), 128.5, QStringLiteral("Past the limit")},
        {exhaust(6), 10, QStringLiteral("H-18"), 127.5, QStringLiteral("Past the limit")},
    };
    season.slips = {{intake(2), 10, QStringLiteral("172.0"), QStringLiteral("Digits swapped")}};
    // 1 I is past the limit by its two outer readings alone; 7 E is past it though the newest hides
    // that.
    season.badSeatings = {
        {intake(1), 0, 1.0}, {intake(1), 10, -1.5}, {exhaust(7), 0, -0.7}, {exhaust(7), 10, 1.3}};
    season.plans = {
        {nextYear(3, 27), kLowFen, 40}, {nextYear(4, 10), kKettle, 50},
        {nextYear(4, 24), kTarn, 40},   {nextYear(5, 15), kLowFen, 40},
        {nextYear(5, 29), kQuarry, 75}, {nextYear(6, 12), kTarn, 40},
    };
    season.spares = {
        {day(9, 9), QStringLiteral("N-01"), QStringLiteral("Spring lot 8"), QStringLiteral("128.0"),
         1.9},
        {day(9, 9), QStringLiteral("N-02"), QStringLiteral("Spring lot 8"), QStringLiteral("131.5"),
         1.9},
        {day(9, 9), QStringLiteral("N-03"), QStringLiteral("Spring lot 8"), QStringLiteral("126.5"),
         1.9},
    };
    return season;
}

DemoSeason plover() {
    DemoSeason season;
    season.engine = QStringLiteral("Plover");
    season.serial = QStringLiteral("Seal 0522");
    season.rpmCeiling = 6800;
    season.springPrefix = QStringLiteral("P-");
    season.part = QStringLiteral("Dual, with damper");
    season.batch = QStringLiteral("Spring lot 9");
    season.seed = 522;
    season.freshLbf = 122.0;
    season.breakInLbf = 0.0;
    season.intakeLbfPerRace = 0.20;
    season.exhaustLbfPerRace = 0.26;
    season.fastLbfPerRace = {{exhaust(3), 0.55}};
    season.overRevLbf = 0.7;
    season.races = {
        {day(7, 11), kTarn, 40, 6540, {}},   {day(8, 1), kKettle, 50, 6500, {}},
        {day(8, 22), kLowFen, 40, 6560, {}}, {day(9, 12), kQuarry, 75, 6530, {}},
        {day(10, 3), kKettle, 50, 6550, {}}, {day(10, 17), kTarn, 40, 6520, {}},
    };
    season.inspections = {
        {day(7, 8), 0, kBench, kRuben, 24.0, 0.0, 2},
        {day(7, 13), 1, kBench, kRuben, 25.0, 0.1, 2},
        {day(8, 3), 2, kBench, kDana, 26.0, -0.1, 2},
        {day(8, 24), 3, kBench, kRuben, 23.0, 0.0, 2},
        {day(9, 14), 4, kBench, kRuben, 20.0, 0.1, 2},
        {day(10, 5), 5, kBench, kDana, 17.0, 0.0, 2},
        {day(10, 19), 6, kBench, kRuben, 15.0, -2.8, 2},
    };
    season.plans = {{nextYear(4, 3), kTarn, 40}, {nextYear(4, 17), kQuarry, 75}};
    return season;
}

} // namespace coilbook::demo
