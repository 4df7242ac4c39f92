#include "core/demo/demo.h"

#include "core/demo/demo_writer.h"
#include "core/storage/logbook_store.h"

#include <QFile>

namespace coilbook {

namespace {

Result<void> fill(LogbookStore& store, const Clock& clock) {
    const std::vector<Tester> testers = demo::teamTesters();
    std::vector<Change> changes;
    for (const Tester& tester : testers) {
        changes.emplace_back(AddTester{tester});
    }
    for (const demo::DemoSeason& season : {demo::heron(), demo::plover()}) {
        const std::vector<Change> entered = demo::changesOf(season, testers);
        changes.insert(changes.end(), entered.begin(), entered.end());
    }
    return store.applyAll(changes, clock);
}

} // namespace

Result<void> writeDemo(const QString& path, const Clock& clock) {
    Result<void> filled;
    {
        Result<LogbookStore> store = LogbookStore::create(path);
        if (!store) {
            return tl::unexpected(store.error());
        }
        filled = fill(*store, clock);
    }
    if (!filled) {
        QFile::remove(path); // ours, made a moment ago and closed again
    }
    return filled;
}

} // namespace coilbook
