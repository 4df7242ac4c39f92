#pragma once

#include "core/domain/changes.h"
#include "core/domain/engine_log.h"
#include "core/exchange/json_writer.h"

#include <map>
#include <optional>
#include <vector>

namespace coilbook {

/// Writes `logbook.json`, everything that a logbook holds, engine by engine:
/// {"format": "coilbook-logbook/1", "testers": […], "calibrations": […],
/// "studies": […], "engines": […], "tester_amendments": […]}.
/// Each engine holds its springs, fittings, races, inspections, sittings, readings, running, level
/// changes, decisions and amendments, which name each other by id. A spring that stood in two
/// engines is in both. Testers are by name, engines in the order given, springs by label, races by
/// number; inspections, running and level changes by date and count; all else in order of arrival.
/// The same logbook gives the same bytes.
class LogbookJson {
public:
    LogbookJson(JsonWriter::Sink sink, const std::vector<Tester>& testers,
                const std::vector<Calibration>& calibrations,
                const std::vector<RepeatabilityStudy>& studies);

    void add(const EngineLog& log, const std::optional<Draft>& draft);

    void finish();

private:
    void write(const Engine& engine);
    void writePlaces(const std::vector<Place>& places);
    void write(const Tester& tester);
    void write(const Calibration& calibration);
    void write(const RepeatabilityStudy& study);
    void write(const Spring& spring);
    void write(const Fitting& fitting);
    void write(const Race& race);
    void write(const Inspection& inspection);
    void write(const Sitting& sitting);
    void write(const Reading& reading);
    void write(const Running& running);
    void write(const LevelChange& change);
    void write(const PlannedRace& race);
    void write(const Shelving& shelving);
    void write(const Decision& decision);
    void write(const Amendment& amendment);
    void write(const Draft& draft);

    template <class Record>
    void writeAll(const char* key, const std::vector<Record>& records);
    void writePlace(const Place& place);
    void writeAuthor(const Authorship& author);
    void field(const char* key, const QString& text);
    void field(const char* key, const QDate& day);
    void field(const char* key, int number);
    void field(const char* key, const std::optional<int>& number);
    void field(const char* key, bool flag);
    void field(const char* key, const std::optional<TypedForce>& force);

    JsonWriter m_json;
    std::map<AmendmentId, Amendment> m_testerAmendments; ///< each is in the log of every engine
};

} // namespace coilbook
