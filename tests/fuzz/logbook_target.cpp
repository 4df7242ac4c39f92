// Any bytes as a logbook file: opened for reading, verified, read and exported, as far as it can
// be. The file stays as it was, and every complaint is a plain sentence.

#include "core/assessment/assessment.h"
#include "core/domain/history.h"
#include "core/exchange/export.h"
#include "core/storage/logbook_store.h"
#include "core/wording/wording.h"
#include "tests/fuzz/target.h"

namespace coilbook {
namespace {

template <class Value>
void expectPlainIfFailed(const Result<Value>& result) {
    if (!result) {
        fuzz::expectPlain(wording::line(result.error()));
    }
}

void readAll(const LogbookStore& store) {
    expectPlainIfFailed(store.verify());
    expectPlainIfFailed(store.testers());
    expectPlainIfFailed(exportLogbook(store, fuzz::folder() + QStringLiteral("/export")));
    const auto engines = store.engines();
    expectPlainIfFailed(engines);
    if (!engines) {
        return;
    }
    for (const EngineSummary& engine : *engines) {
        expectPlainIfFailed(store.draft(engine.id));
        const Result<EngineLog> log = store.engineLog(engine.id);
        expectPlainIfFailed(log);
        if (log) {
            const Assessment assessment = assess(historyOf(*log), log->engine.rules, Curves::None);
            fuzz::expect(assessment.springs.size() <= log->fittings.size() + log->readings.size(),
                         "each spring has something to show for it");
        }
    }
}

} // namespace
} // namespace coilbook

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    using namespace coilbook;
    const QString path = fuzz::writeInput("input.coilbook", data, size);
    {
        const Result<LogbookStore> store = LogbookStore::open(path, OpenMode::ReadOnly);
        expectPlainIfFailed(store);
        if (store) {
            readAll(*store);
        }
    }
    const QByteArray input(reinterpret_cast<const char*>(data), static_cast<qsizetype>(size));
    fuzz::expect(fuzz::contentOfFile(path) == input, "reading a file leaves it as it was");
    return 0;
}
