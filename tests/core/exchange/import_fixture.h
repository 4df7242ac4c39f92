#pragma once

#include "core/exchange/export.h"
#include "core/exchange/import.h"
#include "core/storage/logbook_store.h"
#include "tests/core/exchange/exchange_fixture.h"
#include "tests/support/printers.h"

#include <algorithm>
#include <initializer_list>

namespace coilbook::testing {

/// Imports into logbooks of the test's folder.
class ImportFixture : public ExchangeFixture {
protected:
    LogbookStore newLogbook(const QString& name = QStringLiteral("shop.coilbook")) {
        Result<LogbookStore> store = LogbookStore::create(pathOf(name));
        EXPECT_TRUE(store.has_value()) << ::testing::PrintToString(store.error());
        return std::move(*store);
    }

    /// Writes each text as a file and imports them together, in this order.
    Result<ImportReport> import(LogbookStore& store, const std::vector<std::string>& texts) {
        QStringList paths;
        for (const std::string& text : texts) {
            paths.append(write(QStringLiteral("in%1.csv").arg(paths.size()), text));
        }
        return importFiles(store, paths, m_clock);
    }

    ImportReport imported(LogbookStore& store, const std::vector<std::string>& texts) {
        const Result<ImportReport> report = import(store, texts);
        EXPECT_TRUE(report.has_value()) << ::testing::PrintToString(report.error());
        return report.value_or(ImportReport());
    }

    /// The bytes of races.csv and readings.csv as exported.
    std::pair<std::string, std::string> exported(const LogbookStore& store) {
        const QString folder = pathOf(QStringLiteral("out"));
        const Result<void> done = exportLogbook(store, folder);
        EXPECT_TRUE(done.has_value()) << ::testing::PrintToString(done.error());
        return {bytesOf(folder + QStringLiteral("/races.csv")),
                bytesOf(folder + QStringLiteral("/readings.csv"))};
    }

    EngineLog logOf(const LogbookStore& store, const QString& engine) {
        const std::vector<EngineSummary> engines = store.engines().value();
        for (const EngineSummary& summary : engines) {
            if (summary.name == engine) {
                return store.engineLog(summary.id).value();
            }
        }
        ADD_FAILURE() << "no engine " << engine.toStdString();
        return {};
    }
};

/// Rows under the needed columns of readings.csv and `hit`.
inline std::string readings(std::initializer_list<const char*> rows) {
    std::string text = "engine,inspected_on,engine_races,cylinder,valve,spring,reading_lbf,hit\n";
    for (const char* row : rows) {
        text += std::string(row) + "\n";
    }
    return text;
}

/// Rows under the needed columns alone: hits have no numbers.
inline std::string unnumbered(std::initializer_list<const char*> rows) {
    std::string text = "engine,inspected_on,engine_races,cylinder,valve,spring,reading_lbf\n";
    for (const char* row : rows) {
        text += std::string(row) + "\n";
    }
    return text;
}

inline std::string races(std::initializer_list<const char*> rows) {
    std::string text = "engine,race,raced_on,venue,laps,peak_rpm,over_rev,note\n";
    for (const char* row : rows) {
        text += std::string(row) + "\n";
    }
    return text;
}

} // namespace coilbook::testing
