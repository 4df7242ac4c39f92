#pragma once

#include "core/domain/place.h"

#include <QDate>
#include <QString>

#include <map>
#include <optional>
#include <vector>

namespace coilbook::demo {

/// A race of the invented season.
struct SeasonRace {
    QDate on;
    QString venue;
    int laps = 0;
    int peakRpm = 0;
    QString note;
};

/// An inspection: after which race, with which tester, and what was wrong with the tester.
struct SeasonInspection {
    QDate on;
    int races = 0;
    QString tester;
    QString inspector;
    double engineCelsius = 20.0;
    double shiftLbf = 0.0; ///< added to every reading
    int hits = 2;
};

/// A race of the calendar that is still to be run.
struct SeasonPlan {
    QDate on;
    QString venue;
    int laps = 0;
};

/// A new spring on the shelf, measured on the bench.
struct SeasonSpare {
    QDate on;
    QString label;
    QString batch;
    QString pressureLbf; ///< as read, at `heightIn`
    double heightIn = 0.0;
};

/// Something that befell one spring.
struct SuddenLoss {
    Place place;
    int atRaces = 0; ///< from the inspection after this race on
    double lbf = 0.0;
};

/// A spring put in at an inspection; the old one is read there for the last time.
struct SeasonSwap {
    Place place;
    int atRaces = 0;
    QString label;
    double freshLbf = 0.0;
    QString reason;
};

/// A slip of the pen that was put right later.
struct Slip {
    Place place;
    int atRaces = 0;
    QString typed;
    QString why;
};

/// One hit that the tester, not the spring, got wrong.
struct BadSeating {
    Place place;
    int atRaces = 0;
    double lbf = 0.0;
};

/// How one engine's springs fared, as the causes behind the readings.
struct DemoSeason {
    QString engine;
    QString serial;
    int rpmCeiling = 0;
    QString springPrefix;
    QString part;
    QString batch;
    unsigned seed = 0;
    double freshLbf = 0.0;   ///< seat pressure of a typical new spring
    double breakInLbf = 0.0; ///< lost in the first race
    double intakeLbfPerRace = 0.0;
    double exhaustLbfPerRace = 0.0;
    std::map<Place, double> fastLbfPerRace; ///< springs that tire faster than the rest
    double overRevLbf = 0.0;                ///< lost by every spring in a race above the ceiling
    std::vector<SeasonRace> races;
    std::vector<SeasonInspection> inspections;
    std::vector<SuddenLoss> suddenLosses;
    std::vector<SeasonSwap> swaps;
    std::vector<Slip> slips;
    std::vector<BadSeating> badSeatings;
    std::vector<SeasonPlan> plans;
    std::vector<SeasonSpare> spares;
};

/// Heron: a full season, run in from new, over-revved once, with a cracked spring and two swaps.
[[nodiscard]] DemoSeason heron();

/// Plover: half a season on a set that was run in before its baseline; its newest inspection was
/// taken with a tester that reads low.
[[nodiscard]] DemoSeason plover();

} // namespace coilbook::demo
