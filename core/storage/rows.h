#pragma once

#include "core/domain/amendment.h"
#include "core/domain/calibration.h"
#include "core/domain/decision.h"
#include "core/domain/engine.h"
#include "core/domain/inspection.h"
#include "core/domain/level_change.h"
#include "core/domain/planned_race.h"
#include "core/domain/race.h"
#include "core/domain/repeatability_study.h"
#include "core/domain/running.h"
#include "core/domain/shelving.h"
#include "core/domain/spring.h"
#include "core/domain/tester.h"
#include "core/support/result.h"

#include <QStringList>
#include <QVariant>

namespace coilbook::storage {

/// What a table of data is called and holds; `checksum` follows the columns named here.
struct TableShape {
    QString name;
    QStringList columns;
    QString key;             ///< columns of the primary key, as in ON CONFLICT (…)
    QStringList silentFacts; ///< columns that may change without leaving an amendment
};

/// The kind of record that a table holds, and back. Precondition: a table that amendments name.
[[nodiscard]] Subject subjectOf(const QString& table);
[[nodiscard]] QString tableOf(Subject subject);

/// Rows to records and back, for one kind of record: the only place that knows its columns.
template <class Record>
struct Rows {
    [[nodiscard]] static const TableShape& shape();
    [[nodiscard]] static QVariantList values(const Record& record);
    [[nodiscard]] static Result<Record> record(const QVariantList& values);
};

template <>
const TableShape& Rows<Engine>::shape();
template <>
QVariantList Rows<Engine>::values(const Engine& record);
template <>
Result<Engine> Rows<Engine>::record(const QVariantList& values);

template <>
const TableShape& Rows<Tester>::shape();
template <>
QVariantList Rows<Tester>::values(const Tester& record);
template <>
Result<Tester> Rows<Tester>::record(const QVariantList& values);

template <>
const TableShape& Rows<Spring>::shape();
template <>
QVariantList Rows<Spring>::values(const Spring& record);
template <>
Result<Spring> Rows<Spring>::record(const QVariantList& values);

template <>
const TableShape& Rows<Fitting>::shape();
template <>
QVariantList Rows<Fitting>::values(const Fitting& record);
template <>
Result<Fitting> Rows<Fitting>::record(const QVariantList& values);

template <>
const TableShape& Rows<Race>::shape();
template <>
QVariantList Rows<Race>::values(const Race& record);
template <>
Result<Race> Rows<Race>::record(const QVariantList& values);

template <>
const TableShape& Rows<Inspection>::shape();
template <>
QVariantList Rows<Inspection>::values(const Inspection& record);
template <>
Result<Inspection> Rows<Inspection>::record(const QVariantList& values);

template <>
const TableShape& Rows<Sitting>::shape();
template <>
QVariantList Rows<Sitting>::values(const Sitting& record);
template <>
Result<Sitting> Rows<Sitting>::record(const QVariantList& values);

template <>
const TableShape& Rows<Reading>::shape();
template <>
QVariantList Rows<Reading>::values(const Reading& record);
template <>
Result<Reading> Rows<Reading>::record(const QVariantList& values);

template <>
const TableShape& Rows<Running>::shape();
template <>
QVariantList Rows<Running>::values(const Running& record);
template <>
Result<Running> Rows<Running>::record(const QVariantList& values);

template <>
const TableShape& Rows<LevelChange>::shape();
template <>
QVariantList Rows<LevelChange>::values(const LevelChange& record);
template <>
Result<LevelChange> Rows<LevelChange>::record(const QVariantList& values);

template <>
const TableShape& Rows<Calibration>::shape();
template <>
QVariantList Rows<Calibration>::values(const Calibration& record);
template <>
Result<Calibration> Rows<Calibration>::record(const QVariantList& values);

template <>
const TableShape& Rows<RepeatabilityStudy>::shape();
template <>
QVariantList Rows<RepeatabilityStudy>::values(const RepeatabilityStudy& record);
template <>
Result<RepeatabilityStudy> Rows<RepeatabilityStudy>::record(const QVariantList& values);

template <>
const TableShape& Rows<PlannedRace>::shape();
template <>
QVariantList Rows<PlannedRace>::values(const PlannedRace& record);
template <>
Result<PlannedRace> Rows<PlannedRace>::record(const QVariantList& values);

template <>
const TableShape& Rows<Shelving>::shape();
template <>
QVariantList Rows<Shelving>::values(const Shelving& record);
template <>
Result<Shelving> Rows<Shelving>::record(const QVariantList& values);

template <>
const TableShape& Rows<Decision>::shape();
template <>
QVariantList Rows<Decision>::values(const Decision& record);
template <>
Result<Decision> Rows<Decision>::record(const QVariantList& values);

template <>
const TableShape& Rows<Amendment>::shape();
template <>
QVariantList Rows<Amendment>::values(const Amendment& record);
template <>
Result<Amendment> Rows<Amendment>::record(const QVariantList& values);

} // namespace coilbook::storage
