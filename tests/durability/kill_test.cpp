#include "tests/core/storage/logbook_fixture.h"
#include "tests/durability/content.h"
#include "tests/durability/scripted_session.h"
#include "tests/durability/sweep.h"

#include <QElapsedTimer>
#include <QFile>
#include <QHash>
#include <QProcess>
#include <QSet>

#include <algorithm>
#include <cstdio>
#include <random>

namespace coilbook::testing {
namespace {

constexpr int kNotHanging = 30000; // ms

/// Kills programs at random moments and holds what is on the disk against a record kept here.
class KillTest : public ::testing::Test {
protected:
    /// Starts a program and kills it after so many ms; what it said until then.
    /// What a program had said when it was killed, that long after its start or its first output.
    enum class Since { Start, FirstOutput };

    static QByteArray outputUntilKilled(const QString& program, const QStringList& words,
                                        int milliseconds, Since since = Since::Start) {
        QProcess process;
        process.start(program, words);
        EXPECT_TRUE(process.waitForStarted(kNotHanging));
        if (since == Since::FirstOutput) {
            EXPECT_TRUE(process.waitForReadyRead(kNotHanging));
        }
        process.waitForFinished(milliseconds);
        process.kill(); // SIGKILL
        EXPECT_TRUE(process.state() == QProcess::NotRunning ||
                    process.waitForFinished(kNotHanging));
        EXPECT_EQ(process.readAllStandardError(), QByteArray());
        return process.readAllStandardOutput();
    }

    static void expectSound(const LogbookStore& store) {
        const Result<VerifyReport> report = store.verify();
        ASSERT_TRUE(succeeded(report));
        EXPECT_EQ(report->findings, std::vector<Finding>());
    }

    [[nodiscard]] QString path(const char* name) const {
        return m_folder.filePath(QString::fromLatin1(name));
    }

    int m_kills = repetitions("COILBOOK_KILLS", 25);
    std::mt19937 m_random{20260502};
    QTemporaryDir m_folder;
};

/// What the entry driver has acknowledged, over all of its lives.
class EntryKillTest : public KillTest {
protected:
    void SetUp() override {
        Result<LogbookStore> store = LogbookStore::create(path("shop.coilbook"));
        ASSERT_TRUE(succeeded(store));
        Engine engine;
        engine.id = EngineId::make();
        engine.name = QStringLiteral("Blue");
        const Spring spring{SpringId::make(), QStringLiteral("S-1"), {}, {}, {}};
        const Fitting fitting{FittingId::make(), engine.id, spring.id, {Cylinder(1), Valve::Intake},
                              QDate(2026, 3, 1), 0,         {},        false};
        ASSERT_TRUE(succeeded(store->apply(AddEngine{engine, {spring}, {fitting}}, SystemClock())));
        m_engine = engine.id;
    }

    void record(const QByteArray& output) {
        QList<QByteArray> lines = output.split('\n');
        lines.removeLast(); // empty, or a line that was cut short
        for (const QByteArray& line : std::as_const(lines)) {
            const QList<QByteArray> words = line.split(' ');
            if (words.value(0) == "swap") {
                m_swaps.insert(QString::fromLatin1(words.value(1)));
                continue;
            }
            m_acknowledged.insert(QString::fromLatin1(words.value(0)), words.value(1).toLongLong());
        }
    }

    void expectAllThere() {
        const Result<LogbookStore> store =
            LogbookStore::open(path("shop.coilbook"), OpenMode::ReadWrite);
        ASSERT_TRUE(succeeded(store));
        expectSound(*store);
        const Result<EngineLog> log = store->engineLog(m_engine);
        ASSERT_TRUE(succeeded(log));
        qsizetype found = 0;
        qint64 newest = 100000;
        for (const Reading& reading : log->readings) {
            // Each reading tells its number, so none is there twice and none is left out.
            EXPECT_EQ(reading.value.digits(), ++newest);
            const auto known = m_acknowledged.constFind(reading.id.text());
            if (known != m_acknowledged.constEnd()) {
                EXPECT_EQ(reading.value.digits(), *known);
                ++found;
            }
        }
        EXPECT_EQ(found, m_acknowledged.size()) << "acknowledged readings are lost";
        qsizetype swaps = 0;
        for (const Fitting& fitting : log->fittings) {
            swaps += m_swaps.contains(fitting.id.text()) ? 1 : 0;
            EXPECT_TRUE(
                std::any_of(log->springs.begin(), log->springs.end(),
                            [&](const Spring& spring) { return spring.id == fitting.spring; }))
                << "half a swap";
        }
        EXPECT_EQ(swaps, m_swaps.size()) << "acknowledged swaps are lost";
        const Result<std::optional<Draft>> draft = store->draft(m_engine);
        ASSERT_TRUE(succeeded(draft));
        if (newest > 100000) {
            // What was being typed: nothing any more, or the reading after the newest.
            const TypedForce next(newest + 1, 3, ForceUnit::PoundForce);
            ASSERT_TRUE(draft->has_value());
            EXPECT_TRUE((*draft)->typed.isEmpty() || (*draft)->typed == next.text())
                << qPrintable((*draft)->typed);
        }
    }

    EngineId m_engine;
    QHash<QString, qint64> m_acknowledged;
    QSet<QString> m_swaps;
};

TEST_F(EntryKillTest, EveryReadingThatWasShownAsSavedIsThere) {
    std::uniform_int_distribution<int> moments(0, 250);
    const auto hasSeenEnough = [&] {
        return m_acknowledged.size() > m_kills && m_swaps.size() > m_kills / 5;
    };
    for (int i = 0; (i < m_kills || (!hasSeenEnough() && i < 4 * m_kills)) && !HasFailure(); ++i) {
        // Some while it opens the logbook, most while it writes, however slow the machine is.
        const Since since = i % 5 == 0 ? Since::Start : Since::FirstOutput;
        record(outputUntilKilled(QStringLiteral(COILBOOK_ENTRY_DRIVER), {path("shop.coilbook")},
                                 moments(m_random), since));
        expectAllThere();
    }
    EXPECT_GT(m_acknowledged.size(), m_kills) << "too early to tell";
    EXPECT_GT(m_swaps.size(), m_kills / 5) << "too early to tell";
    std::printf("%d kills, %lld readings and %lld swaps acknowledged before them, 0 lost\n",
                m_kills, static_cast<long long>(m_acknowledged.size()),
                static_cast<long long>(m_swaps.size()));
}

class ImportKillTest : public KillTest {
protected:
    [[nodiscard]] QByteArray contentNow(const char* name) const {
        const Result<LogbookStore> store = LogbookStore::open(path(name), OpenMode::ReadWrite);
        EXPECT_TRUE(succeeded(store));
        if (!store) {
            return {};
        }
        expectSound(*store);
        const Result<QByteArray> content = contentOf(*store);
        EXPECT_TRUE(succeeded(content));
        return content.value_or(QByteArray());
    }

    static void importToTheEnd(const QStringList& words) {
        QProcess process;
        process.start(QStringLiteral(COILBOOK_PROGRAM), words);
        EXPECT_TRUE(process.waitForFinished(kNotHanging));
        EXPECT_EQ(process.exitCode(), 0) << process.readAllStandardError().constData();
    }
};

TEST_F(ImportKillTest, ABackupIsWhollyThereOrNotAtAllAndTheLogbookIsAsItWas) {
    {
        Result<LogbookStore> store = LogbookStore::create(path("shop.coilbook"));
        ASSERT_TRUE(succeeded(store));
        const ScriptedSession::Step season = importing(writeSeason(path("season.csv"), 200));
        ASSERT_TRUE(succeeded(season(*store)));
    }
    const QByteArray content = contentNow("shop.coilbook");
    const QStringList words{QStringLiteral("backup"), path("shop.coilbook"), path("copy.coilbook")};
    QElapsedTimer timer;
    timer.start();
    importToTheEnd(words);
    std::uniform_int_distribution<int> moments(0, static_cast<int>(timer.elapsed()) + 10);
    int done = 0;
    for (int i = 0; i < m_kills / 5 && !HasFailure(); ++i) {
        QFile::remove(path("copy.coilbook"));
        outputUntilKilled(QStringLiteral(COILBOOK_PROGRAM), words, moments(m_random));
        if (QFile::exists(path("copy.coilbook"))) {
            ++done;
            EXPECT_EQ(contentNow("copy.coilbook"), content);
        }
        EXPECT_EQ(contentNow("shop.coilbook"), content);
    }
    std::printf("%d kills, %d after the backup was done, 0 half-done\n", m_kills / 5, done);
}

TEST_F(ImportKillTest, AnOldLogbookIsWhollyBroughtUpToDateOrNotAtAll) {
    const QString old = QStringLiteral(COILBOOK_TEST_DATA "/logbooks/bench_1.coilbook");
    ASSERT_TRUE(QFile::copy(old, path("whole.coilbook")));
    ASSERT_TRUE(
        QFile::setPermissions(path("whole.coilbook"), QFile::ReadOwner | QFile::WriteOwner));
    // An import of nothing opens it for writing, which brings it up to date.
    QFile nothing(path("nothing.csv"));
    ASSERT_TRUE(nothing.open(QIODevice::WriteOnly));
    nothing.write("engine,race,raced_on\r\n");
    nothing.close();
    const QStringList words{QStringLiteral("import"), path("old.coilbook"), nothing.fileName()};
    const QByteArray content = contentNow("whole.coilbook");
    std::uniform_int_distribution<int> moments(0, 120);
    for (int i = 0; i < m_kills / 5 && !HasFailure(); ++i) {
        QFile::remove(path("old.coilbook"));
        ASSERT_TRUE(QFile::copy(old, path("old.coilbook")));
        ASSERT_TRUE(
            QFile::setPermissions(path("old.coilbook"), QFile::ReadOwner | QFile::WriteOwner));
        outputUntilKilled(QStringLiteral(COILBOOK_PROGRAM), words, moments(m_random));
        EXPECT_EQ(contentNow("old.coilbook"), content);
    }
}

TEST_F(ImportKillTest, AnImportIsWhollyThereOrNotAtAll) {
    const QString csv = writeSeason(path("season.csv"), 200);
    const QStringList intoOld{QStringLiteral("import"), path("shop.coilbook"), csv};
    const QStringList intoNew{QStringLiteral("import"), path("new.coilbook"), csv};
    {
        Result<LogbookStore> store = LogbookStore::create(path("shop.coilbook"));
        ASSERT_TRUE(succeeded(store));
        const ScriptedSession::Step first = importing(writeSeason(path("first.csv"), 3));
        ASSERT_TRUE(succeeded(first(*store)));
    }
    ASSERT_TRUE(QFile::copy(path("shop.coilbook"), path("begin.coilbook")));
    const QByteArray before = contentNow("shop.coilbook");
    QElapsedTimer timer;
    timer.start();
    importToTheEnd(intoOld);
    std::uniform_int_distribution<int> moments(0, static_cast<int>(timer.elapsed()) + 10);
    const QByteArray after = contentNow("shop.coilbook");
    ASSERT_NE(before, after);
    int done = 0;
    for (int i = 0; i < m_kills && !HasFailure(); ++i) {
        // In turn: into a logbook that holds the first of it, and into a new one.
        const bool isNew = i % 2 == 1;
        const char* name = isNew ? "new.coilbook" : "shop.coilbook";
        QFile::remove(path(name));
        if (!isNew) {
            ASSERT_TRUE(QFile::copy(path("begin.coilbook"), path(name)));
        }
        outputUntilKilled(QStringLiteral(COILBOOK_PROGRAM), isNew ? intoNew : intoOld,
                          moments(m_random));
        if (isNew && !QFile::exists(path(name))) {
            continue;
        }
        const QByteArray content = contentNow(name);
        const bool isDone = content == after;
        done += isDone ? 1 : 0;
        EXPECT_TRUE(isDone || (!isNew && content == before)) << "half of an import is there";
        importToTheEnd({QStringLiteral("import"), path(name), csv});
        EXPECT_EQ(contentNow(name), after);
    }
    std::printf("%d kills, %d after the import was done, 0 half-done\n", m_kills, done);
}

} // namespace
} // namespace coilbook::testing
