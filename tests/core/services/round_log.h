#pragma once

#include "core/domain/engine_log.h"

#include <QDate>
#include <QString>

namespace coilbook::testing {

/// Builds an engine's log by hand, row by row, for the tests of the round.
class RoundLog {
public:
    RoundLog() {
        log.engine.id = EngineId::make();
        log.engine.name = QStringLiteral("Blue");
    }

    InspectionId inspect(const char* on, int races, bool closed = true) {
        const InspectionId id = InspectionId::make();
        log.inspections.push_back({id, log.engine.id,
                                   QDate::fromString(QString::fromLatin1(on), Qt::ISODate), races,
                                   closed});
        log.sittings.push_back({SittingId::make(), id, {}, QStringLiteral("Pat"), {}});
        return id;
    }

    [[nodiscard]] SpringId spring(const char* label) {
        const QString text = QString::fromLatin1(label);
        for (const Spring& each : log.springs) {
            if (each.label == text) {
                return each.id;
            }
        }
        log.springs.push_back({SpringId::make(), text, {}, {}, {}});
        return log.springs.back().id;
    }

    /// A hit in the newest inspection.
    ReadingId read(const Place& place, const char* label, const char* value, int hit = 1,
                   bool retest = false) {
        Reading reading;
        reading.id = ReadingId::make();
        reading.sitting = log.sittings.back().id;
        reading.spring = spring(label);
        reading.place = place;
        reading.hit = hit;
        reading.retest = retest;
        reading.value =
            TypedForce::parse(QString::fromLatin1(value), ForceUnit::PoundForce).value();
        log.readings.push_back(reading);
        return reading.id;
    }

    EngineLog log;
};

inline Place place(int cylinder, Valve valve) {
    return {Cylinder(cylinder), valve};
}

} // namespace coilbook::testing
