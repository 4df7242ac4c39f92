#include "tests/durability/sweep.h"

#include "tests/core/storage/logbook_fixture.h"
#include "tests/durability/content.h"

#include <QDir>

namespace coilbook::testing {

int repetitions(const char* variable, int usually) {
    bool isNumber = false;
    const int number = qEnvironmentVariableIntValue(variable, &isNumber);
    return isNumber ? number : usually;
}

void SweepTest::SetUp() {
    const QDir folder(m_folder.path());
    ASSERT_TRUE(folder.mkdir(QStringLiteral("disk")));
    const QString diskPath = folder.filePath(QStringLiteral("disk"));
    m_disk = std::make_unique<PowerCutDisk>(diskPath);
    for (const ScriptedSession& session : scriptedSessions(folder.path(), diskPath)) {
        m_rehearsed.push_back(rehearse(session));
        ASSERT_FALSE(HasFatalFailure()) << session.name;
    }
}

QString SweepTest::logbook() const {
    return QDir(m_folder.path()).filePath(QStringLiteral("disk/shop.coilbook"));
}

SweepTest::Rehearsed SweepTest::rehearse(const ScriptedSession& session) {
    Rehearsed result;
    result.session = session;
    if (!session.before.empty()) {
        result.before.emplace(logbook(), session.before);
    }
    m_disk->setContents(result.before);
    {
        Result<LogbookStore> store = openScripted(logbook());
        EXPECT_TRUE(succeeded(store)) << session.name;
        result.contents.push_back(contentOf(*store).value());
        for (const ScriptedSession::Step& step : session.steps) {
            EXPECT_TRUE(succeeded(step(*store))) << session.name;
            result.contents.push_back(contentOf(*store).value());
        }
    }
    // Looking at the contents wrote nothing, so a run without looking has as many operations.
    result.operations = m_disk->operations();
    return result;
}

SweepTest::Progress SweepTest::run(const ScriptedSession& session, std::size_t from) const {
    Progress progress;
    progress.done = from;
    Result<LogbookStore> store = openScripted(logbook());
    if (!store) {
        progress.error = store.error();
        return progress;
    }
    progress.opened = true;
    for (std::size_t i = from; i < session.steps.size(); ++i) {
        if (const Result<void> done = session.steps[i](*store); !done) {
            progress.error = done.error();
            return progress;
        }
        ++progress.done;
    }
    return progress;
}

void SweepTest::expectWhole(const Rehearsed& rehearsed, const Progress& progress) {
    const QStringList names = m_disk->names();
    for (const QString& name : names) {
        if (!name.endsWith(QStringLiteral(".coilbook"))) {
            continue; // journals, and temporary files that nobody takes for a logbook
        }
        const Result<LogbookStore> store =
            LogbookStore::open(name, name == logbook() ? OpenMode::ReadWrite : OpenMode::ReadOnly);
        ASSERT_TRUE(succeeded(store)) << qPrintable(name);
        const Result<VerifyReport> report = store->verify();
        ASSERT_TRUE(succeeded(report)) << qPrintable(name);
        EXPECT_EQ(report->findings, std::vector<Finding>()) << qPrintable(name);
        const Result<QByteArray> content = contentOf(*store);
        ASSERT_TRUE(succeeded(content)) << qPrintable(name);
        const auto& expected = rehearsed.contents;
        if (name == logbook()) {
            const std::size_t next = std::min(progress.done + 1, expected.size() - 1);
            EXPECT_TRUE(*content == expected[progress.done] || *content == expected[next])
                << progress.done << " steps were acknowledged; the logbook holds\n"
                << content->constData();
        } else {
            EXPECT_NE(std::find(expected.begin(), expected.end(), *content), expected.end())
                << qPrintable(name);
        }
    }
    EXPECT_TRUE(names.contains(logbook()) || !progress.opened);
}

void SweepTest::expectToEndAsRehearsed(const Rehearsed& rehearsed, const Progress& progress) {
    const Progress rest = run(rehearsed.session, progress.done);
    EXPECT_EQ(rest.error, std::nullopt);
    const Result<LogbookStore> store = LogbookStore::open(logbook(), OpenMode::ReadOnly);
    ASSERT_TRUE(succeeded(store));
    EXPECT_EQ(store->verify()->findings, std::vector<Finding>());
    EXPECT_EQ(contentOf(*store).value(), rehearsed.contents.back());
}

} // namespace coilbook::testing
