#include "core/exchange/export.h"

#include "core/exchange/logbook_json.h"
#include "core/exchange/observation_export.h"
#include "core/exchange/output_set.h"

#include <algorithm>

namespace coilbook {

Result<void> exportLogbook(const LogbookStore& store, const QString& folder) {
    Result<std::vector<EngineSummary>> engines = store.engines();
    if (!engines) {
        return tl::unexpected(engines.error());
    }
    const Result<std::vector<Tester>> testers = store.testers();
    if (!testers) {
        return tl::unexpected(testers.error());
    }
    const Result<std::vector<Calibration>> calibrations = store.calibrations();
    if (!calibrations) {
        return tl::unexpected(calibrations.error());
    }
    const Result<std::vector<RepeatabilityStudy>> studies = store.studies();
    if (!studies) {
        return tl::unexpected(studies.error());
    }
    // UTF-8 sorts by code points.
    std::sort(engines->begin(), engines->end(), [](const EngineSummary& a, const EngineSummary& b) {
        return a.name.toUtf8() < b.name.toUtf8();
    });

    OutputSet files(folder);
    CsvWriter races(files.add(QStringLiteral("races.csv")));
    CsvWriter readings(files.add(QStringLiteral("readings.csv")));
    OutputFile& jsonFile = files.add(QStringLiteral("logbook.json"));
    LogbookJson json([&jsonFile](const QByteArray& text) { jsonFile.write(text); }, *testers,
                     *calibrations, *studies);
    writeHeader(races, ExchangeKind::Races);
    writeHeader(readings, ExchangeKind::Readings);
    for (const EngineSummary& engine : *engines) {
        const Result<EngineLog> log = store.engineLog(engine.id);
        if (!log) {
            return tl::unexpected(log.error());
        }
        const Result<std::optional<Draft>> draft = store.draft(engine.id);
        if (!draft) {
            return tl::unexpected(draft.error());
        }
        writeRaces(races, *log);
        writeReadings(readings, *log);
        json.add(*log, *draft);
    }
    json.finish();
    return files.commit();
}

} // namespace coilbook
