// Makes the small logbook that is kept of a schema version: `coilbook_old_file FILE`. What is in it
// is the same for each version, see tests/data/logbooks/SOURCE.
#include "tests/durability/scripted_session.h"

#include <QCoreApplication>
#include <QTemporaryDir>

#include <algorithm>
#include <cstdio>

using namespace coilbook;

namespace {

Result<void> write(const QString& path) {
    Result<LogbookStore> store = LogbookStore::create(path);
    if (!store) {
        return tl::unexpected(store.error());
    }
    const QTemporaryDir folder;
    const std::vector<testing::ScriptedSession> sessions =
        testing::scriptedSessions(folder.path(), folder.path());
    const auto corrections =
        std::find_if(sessions.begin(), sessions.end(),
                     [](const auto& session) { return session.name == "corrections"; });
    Result<void> done;
    for (const testing::ScriptedSession::Step& step : corrections->steps) {
        done = done.and_then([&] { return step(*store); });
    }
    if (!done) {
        return done;
    }
    const EngineId engine = store->engines()->front().id;
    const EngineLog log = *store->engineLog(engine);
    return store->saveDraft(
        {engine, log.inspections.back().id, {Cylinder(1), Valve::Intake}, QStringLiteral("11")});
}

} // namespace

int main(int argc, char** argv) {
    const QCoreApplication application(argc, argv);
    const Result<void> written = write(QCoreApplication::arguments().value(1));
    if (!written) {
        std::fprintf(stderr, "could not be written: %s\n", qPrintable(written.error().detail));
    }
    return written ? 0 : 1;
}
