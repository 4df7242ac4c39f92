#pragma once

#include "core/domain/engine_log.h"

#include <QDate>
#include <QString>

#include <map>
#include <utility>

namespace coilbook::testing {

/// Puts together an EngineLog as a store would load it, in few words.
class LogBuilder {
public:
    LogBuilder() {
        m_log.engine.id = EngineId::make();
        m_log.engine.name = QStringLiteral("Test engine");
    }

    /// Spring of that label; made at first mention.
    SpringId spring(const QString& label) {
        for (const Spring& known : m_log.springs) {
            if (known.label == label) {
                return known.id;
            }
        }
        m_log.springs.push_back({SpringId::make(), label, {}, {}, {}});
        return m_log.springs.back().id;
    }

    /// Later calls of reading() belong to this inspection. Call in order of date.
    LogBuilder& inspection(const QDate& on, int races) {
        m_log.inspections.push_back({InspectionId::make(), m_log.engine.id, on, races, true});
        m_log.sittings.push_back(
            {SittingId::make(), m_log.inspections.back().id, std::nullopt, {}, std::nullopt});
        return *this;
    }

    LogBuilder& race(int number, const QDate& on, std::optional<int> peakRpm = {}) {
        m_log.races.push_back(
            {RaceId::make(), m_log.engine.id, number, on, {}, {}, peakRpm, {}, {}});
        return *this;
    }

    /// The next hit of that spring in the inspection; returns its id.
    ReadingId reading(const Place& place, const QString& label, const QString& lbf,
                      bool retest = false) {
        Reading row;
        row.id = ReadingId::make();
        row.sitting = m_log.sittings.back().id;
        row.spring = spring(label);
        row.place = place;
        row.hit = ++m_hits[{m_log.sittings.back().id, row.spring}];
        row.retest = retest;
        row.value = *TypedForce::parse(lbf, ForceUnit::PoundForce);
        m_log.readings.push_back(row);
        return row.id;
    }

    ReadingId amendment(const ReadingId& of, const QString& lbf,
                        ReadingKind kind = ReadingKind::Correction) {
        Reading row;
        for (const Reading& known : m_log.readings) {
            if (known.id == of) {
                row = known;
            }
        }
        row.amends = of;
        row.id = ReadingId::make();
        row.kind = kind;
        row.value = *TypedForce::parse(lbf, ForceUnit::PoundForce);
        row.author.why = QStringLiteral("slip of the pen");
        m_log.readings.push_back(row);
        return row.id;
    }

    LogBuilder& fit(const Place& place, const QString& label, const QDate& on, int races) {
        m_log.fittings.push_back({FittingId::make(), m_log.engine.id, spring(label), place, on,
                                  races, QStringLiteral("set-up"), false});
        return *this;
    }

    LogBuilder& running(const QDate& on, int races, std::optional<int> laps,
                        std::optional<int> thousandths = {}) {
        m_log.running.push_back(
            {RunningId::make(), m_log.engine.id, on, races, laps, thousandths, {}, false});
        return *this;
    }

    LogBuilder& plan(const QDate& on, const QString& venue, std::optional<int> laps = {}) {
        m_log.plannedRaces.push_back(
            {PlannedRaceId::make(), m_log.engine.id, on, venue, laps, {}, false});
        return *this;
    }

    LogBuilder& shelve(const QString& label, const QDate& on, Storage to = Storage::Shelf) {
        m_log.shelvings.push_back({ShelvingId::make(),
                                   m_log.engine.id,
                                   spring(label),
                                   to,
                                   on,
                                   {},
                                   {},
                                   {},
                                   QStringLiteral("put away"),
                                   false});
        return *this;
    }

    LogBuilder& levelChange(const QString& label, const QDate& on, int races,
                            LevelChangeKind kind = LevelChangeKind::Shim) {
        m_log.levelChanges.push_back({LevelChangeId::make(), m_log.engine.id, spring(label), kind,
                                      on, races, QStringLiteral("0.015 in"), false});
        return *this;
    }

    /// About the readings of a spring in the `inspection`-th inspection, from 0.
    LogBuilder& decide(const QString& label, std::size_t inspection, ReadingJudgement judgement) {
        m_log.decisions.push_back({DecisionId::make(),
                                   m_log.inspections[inspection].id,
                                   spring(label),
                                   judgement,
                                   {QStringLiteral("Kim"), {}, {}}});
        return *this;
    }

    EngineLog& log() { return m_log; }

private:
    EngineLog m_log;
    std::map<std::pair<SittingId, SpringId>, int> m_hits;
};

inline Place intake(int cylinder) {
    return {Cylinder(cylinder), Valve::Intake};
}

inline Place exhaust(int cylinder) {
    return {Cylinder(cylinder), Valve::Exhaust};
}

} // namespace coilbook::testing
