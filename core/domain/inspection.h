#pragma once

#include "core/domain/ids.h"
#include "core/domain/place.h"
#include "core/support/clock.h"
#include "core/units/temperature.h"
#include "core/units/typed_force.h"

#include <QDate>
#include <QString>

#include <optional>

namespace coilbook {

/// One round over an engine on one day at one count of races, or a quick test of a single spring.
struct Inspection {
    InspectionId id;
    EngineId engine;
    QDate inspectedOn;
    int engineRaces = 0; ///< races that the engine had run by then
    bool closed = true;  ///< an open inspection is resumed at the bench where it was left

    bool operator==(const Inspection&) const = default;
};

/// A part of an inspection done with one tester by one person at one engine temperature. Most
/// inspections have one; the exchange files allow these facts to differ from row to row.
struct Sitting {
    SittingId id;
    InspectionId inspection;
    std::optional<TesterId> tester;
    QString inspector;
    std::optional<Temperature> engineTemperature;

    bool operator==(const Sitting&) const = default;
};

enum class ReadingKind {
    Original,   ///< as taken at the spring
    Correction, ///< amends an earlier row: what should have been written
    Withdrawal, ///< amends an earlier row: should not have been written at all; its value repeats
                ///< that of the row it withdraws
};

/// Who changed something, when and why. Empty for an original reading but for `at`.
struct Authorship {
    QString who;
    Moment at; ///< empty utc where not known (imported rows)
    QString why;

    bool operator==(const Authorship&) const = default;
};

/// One row of the readings: one push of the tester as read (a hit), or an amendment of such a row.
/// Rows are appended and never altered. An amendment repeats spring, place, hit and retest of the
/// row that it amends unless it corrects them, and always stays in the same sitting.
struct Reading {
    ReadingId id;
    SittingId sitting;
    SpringId spring;
    Place place;
    int hit = 1; ///< 1, 2 … within one inspection of one spring
    bool retest = false;
    TypedForce value{0, 0, ForceUnit::PoundForce};
    QString note;
    ReadingKind kind = ReadingKind::Original;
    std::optional<ReadingId> amends; ///< set if and only if kind is not Original
    Authorship author;

    bool operator==(const Reading&) const = default;
};

} // namespace coilbook
