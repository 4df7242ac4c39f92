#include "core/domain/current_readings.h"
#include "tests/core/storage/logbook_fixture.h"
#include "tests/support/heartbeat.h"
#include "tests/support/session_fixture.h"

#include <QDir>
#include <QElapsedTimer>
#include <QFile>
#include <QProcess>

namespace coilbook {
namespace {

using testing::succeeded;
using testing::waitFor;

/// A session on a logbook whose file is taken away in all the ways that happen in a shop.
class WaitingTest : public testing::SessionTest {
protected:
    void SetUp() override {
        SessionTest::SetUp();
        m_session.keepWaiting(spool());
        m_engine.id = EngineId::make();
        m_engine.name = QStringLiteral("Heron");
        ASSERT_TRUE(succeeded(apply(AddEngine{m_engine, {}, {}})));
        select(m_engine.id);
        m_inspection = {InspectionId::make(), m_engine.id, QDate(2026, 5, 2), 3, false};
        m_sitting = {SittingId::make(), m_inspection.id, {}, {}, {}};
        ASSERT_TRUE(succeeded(apply(StartInspection{m_inspection, m_sitting})));
        ASSERT_TRUE(succeeded(apply(RecordReadings{{hit(1215)}, {m_spring}})));
    }

    [[nodiscard]] QString spool() const {
        return m_folder.filePath(QStringLiteral("own/waiting.sqlite"));
    }

    [[nodiscard]] QString away() const { return m_folder.filePath(QStringLiteral("elsewhere")); }

    Reading hit(qint64 tenths) {
        Reading reading;
        reading.id = ReadingId::make();
        reading.sitting = m_sitting.id;
        reading.spring = m_spring.id;
        reading.place = {Cylinder(3), Valve::Exhaust};
        reading.hit = ++m_hits;
        reading.value = TypedForce(tenths, 1, ForceUnit::PoundForce);
        return reading;
    }

    /// The values in force, as the window sees them.
    [[nodiscard]] QStringList seen() const { return inForce(*m_session.log()); }

    static QStringList inForce(const EngineLog& log) {
        QStringList values;
        for (const CurrentHit& current : currentHits(log)) {
            values.append(log.readings[current.row].value.text());
        }
        return values;
    }

    /// The values on the disk, read by somebody else; each of them once.
    [[nodiscard]] QStringList stored(const QString& file) const {
        const Result<LogbookStore> store = LogbookStore::open(file, OpenMode::ReadOnly);
        EXPECT_TRUE(succeeded(store));
        EXPECT_TRUE(store->verify()->findings.empty());
        const Result<EngineLog> log = store->engineLog(m_engine.id);
        EXPECT_TRUE(succeeded(log));
        return log ? inForce(*log) : QStringList();
    }

    void waitUntilNothingWaits() {
        waitFor([&] { return m_session.waiting().isEmpty(); });
    }

    void expectWaiting(StorageFault why, int readings) const {
        EXPECT_EQ(m_session.waiting().readings, readings);
        ASSERT_TRUE(m_session.waiting().why.has_value());
        EXPECT_EQ(m_session.waiting().why->fault, decltype(Error::fault)(why));
    }

    Engine m_engine;
    Inspection m_inspection;
    Sitting m_sitting;
    Spring m_spring{SpringId::make(), QStringLiteral("S-27"), {}, {}, {}};
    int m_hits = 0;
};

const QStringList kBoth{QStringLiteral("121.5"), QStringLiteral("120.5")};

TEST_F(WaitingTest, AReadingForARemovedFileWaitsAndGoesInWhenTheFileIsBack) {
    ASSERT_TRUE(QFile::rename(path(), away()));
    ASSERT_TRUE(succeeded(apply(RecordReadings{{hit(1205)}, {}})));
    expectWaiting(StorageFault::Vanished, 1);
    EXPECT_EQ(seen(), kBoth);
    EXPECT_EQ(stored(away()), QStringList{QStringLiteral("121.5")});
    EXPECT_FALSE(QFile::exists(path())) << "no file is made in the place of the lost one";
    ASSERT_TRUE(QFile::rename(away(), path()));
    waitUntilNothingWaits();
    EXPECT_EQ(stored(path()), kBoth);
    EXPECT_EQ(seen(), kBoth);
}

TEST_F(WaitingTest, WhatWaitsIsThereAfterARestartAndGoesInByItself) {
    ASSERT_TRUE(QFile::rename(path(), away()));
    ASSERT_TRUE(succeeded(apply(RecordReadings{{hit(1205)}, {}})));
    const Draft draft{
        m_engine.id, m_inspection.id, {Cylinder(4), Valve::Intake}, QStringLiteral("11")};
    m_session.saveDraft(draft);
    m_session.closeLogbook();
    waitFor([&] { return !m_session.isOpen(); });

    LogbookSession again(m_clock);
    again.keepWaiting(spool());
    std::optional<Error> refused;
    QObject::connect(&again, &LogbookSession::openFailed, &again,
                     [&](const Error& error) { refused = error; });
    again.openLogbook(path());
    waitFor([&] { return refused.has_value(); });
    EXPECT_EQ(refused->fault, decltype(Error::fault)(StorageFault::Missing));
    EXPECT_EQ(again.waitingForRefused().readings, 1);

    ASSERT_TRUE(QFile::rename(away(), path()));
    again.openLogbook(path());
    waitFor([&] { return again.isOpen(); });
    again.selectEngine(m_engine.id);
    waitFor([&] { return again.log() != nullptr; });
    EXPECT_TRUE(again.waiting().isEmpty());
    EXPECT_EQ(inForce(*again.log()), kBoth);
    EXPECT_EQ(again.draft(), draft);
    EXPECT_EQ(stored(path()), kBoth);
}

TEST_F(WaitingTest, NothingGoesIntoAnotherLogbookThatLiesInThePlace) {
    ASSERT_TRUE(QFile::rename(path(), away()));
    ASSERT_TRUE(succeeded(LogbookStore::create(path())));
    ASSERT_TRUE(succeeded(apply(RecordReadings{{hit(1205)}, {}})));
    QElapsedTimer timer;
    timer.start();
    waitFor([&] { return timer.elapsed() > 1500; }); // it has been tried by now
    expectWaiting(StorageFault::Vanished, 1);
    EXPECT_TRUE(LogbookStore::open(path(), OpenMode::ReadOnly)->engines()->empty());
    ASSERT_TRUE(QFile::remove(path()));
    ASSERT_TRUE(QFile::rename(away(), path()));
    waitUntilNothingWaits();
    EXPECT_EQ(stored(path()), kBoth);
}

TEST_F(WaitingTest, ALogbookThatIsLockedGetsItLaterAndTheWindowNeverStandsStill) {
    QProcess other;
    other.start(QStringLiteral("sqlite3"), {path()});
    other.write("BEGIN EXCLUSIVE; SELECT 'held';\n");
    ASSERT_TRUE(other.waitForReadyRead(10000));
    const testing::Heartbeat heart;
    ASSERT_TRUE(succeeded(apply(RecordReadings{{hit(1205)}, {}})));
    expectWaiting(StorageFault::Locked, 1);
    ASSERT_TRUE(succeeded(apply(RecordReadings{{hit(1195)}, {}})));
    EXPECT_EQ(m_session.waiting().readings, 2);
    m_session.saveDraft({m_engine.id, m_inspection.id, {Cylinder(3), Valve::Exhaust}, {}});
    QElapsedTimer timer;
    timer.start();
    waitFor([&] { return timer.elapsed() > 1500; });
    EXPECT_LT(heart.longestFreeze(), 200) << "milliseconds";
    other.write("COMMIT;\n");
    other.closeWriteChannel();
    ASSERT_TRUE(other.waitForFinished(10000));
    waitUntilNothingWaits();
    EXPECT_EQ(stored(path()), QStringList({QStringLiteral("121.5"), QStringLiteral("120.5"),
                                           QStringLiteral("119.5")}));
}

TEST_F(WaitingTest, AWholeRoundGoesOnWhileTheStickIsOut) {
    ASSERT_TRUE(QFile::rename(path(), away()));
    const Inspection next{InspectionId::make(), m_engine.id, QDate(2026, 5, 9), 4, false};
    m_sitting = {SittingId::make(), next.id, {}, {}, {}};
    m_hits = 0;
    ASSERT_TRUE(succeeded(apply(StartInspection{next, m_sitting})));
    const Reading first = hit(1205);
    ASSERT_TRUE(succeeded(apply(RecordReadings{{first}, {}})));
    Reading correction = first;
    correction.id = ReadingId::make();
    correction.kind = ReadingKind::Correction;
    correction.amends = first.id;
    correction.value = TypedForce(1195, 1, ForceUnit::PoundForce);
    correction.author = {QStringLiteral("Kim"), m_clock.now(), QStringLiteral("slip")};
    ASSERT_TRUE(succeeded(apply(AmendReading{correction})));
    m_session.undo();
    waitFor([&] { return m_session.waiting().others == 3; });
    Inspection closed = next;
    closed.closed = true;
    ASSERT_TRUE(succeeded(apply(AmendInspection{closed, {}})));
    EXPECT_EQ(m_session.log()->inspections.size(), 2U);
    ASSERT_TRUE(QFile::rename(away(), path()));
    waitUntilNothingWaits();
    EXPECT_EQ(stored(path()), kBoth);
    EXPECT_EQ(m_session.log()->readings.size(), 4U);
    EXPECT_TRUE(m_session.log()->inspections.back().closed);
}

TEST_F(WaitingTest, WhatBreaksARuleIsRefusedAtOnceAndDoesNotWait) {
    ASSERT_TRUE(QFile::rename(path(), away()));
    ASSERT_TRUE(succeeded(apply(RecordReadings{{hit(1205)}, {}})));
    --m_hits;
    const Result<void> twice = apply(RecordReadings{{hit(1195)}, {}});
    ASSERT_FALSE(twice.has_value());
    EXPECT_EQ(twice.error().fault, decltype(Error::fault)(LogbookFault::HitExists));
    EXPECT_EQ(m_session.waiting().readings, 1);
}

TEST_F(WaitingTest, WhatTheLogbookWouldNotTakeIsKeptAndTold) {
    ASSERT_TRUE(QFile::rename(path(), away()));
    const Reading mine = hit(1205);
    ASSERT_TRUE(succeeded(apply(RecordReadings{{mine}, {}})));
    {
        Result<LogbookStore> store = LogbookStore::open(away(), OpenMode::ReadWrite);
        --m_hits;
        ASSERT_TRUE(succeeded(store->apply(RecordReadings{{hit(1185)}, {}}, m_clock)));
    }
    ASSERT_TRUE(QFile::rename(away(), path()));
    waitUntilNothingWaits();
    EXPECT_EQ(m_session.waiting().refused, 1);
    EXPECT_FALSE(m_session.waiting().refusal.isEmpty());
    EXPECT_EQ(seen(), QStringList({QStringLiteral("121.5"), QStringLiteral("118.5")}));
    m_session.forgetRefused();
    waitFor([&] { return m_session.waiting().refused == 0; });
}

TEST_F(WaitingTest, CanBeSavedElsewhereAsATableThatAnImportTakes) {
    ASSERT_TRUE(QFile::rename(path(), away()));
    ASSERT_TRUE(succeeded(apply(RecordReadings{{hit(1205)}, {}})));
    const QString csv = m_folder.filePath(QStringLiteral("waiting.csv"));
    std::optional<Result<void>> saved;
    m_session.saveWaiting(path(), csv, &m_session, [&](const Result<void>& r) { saved = r; });
    waitFor([&] { return saved.has_value(); });
    ASSERT_TRUE(succeeded(*saved));
    QFile file(csv);
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    const QList<QByteArray> lines = file.readAll().split('\n');
    ASSERT_GE(lines.size(), 2);
    EXPECT_EQ(lines[1], QByteArray("Heron,2026-05-02,3,3,E,S-27,120.5,,2,,,,,\r"));
    EXPECT_EQ(m_session.waiting().readings, 1);
    saved.reset();
    m_session.saveWaiting(path(), csv, &m_session, [&](const Result<void>& r) { saved = r; });
    waitFor([&] { return saved.has_value(); });
    EXPECT_FALSE(saved->has_value()) << "nothing is overwritten";
}

TEST_F(WaitingTest, WithoutAPlaceToWaitTheReadingIsNotSavedAndSaysSo) {
    LogbookSession& session = m_session;
    session.keepWaiting(QStringLiteral("/proc/no such place/waiting"));
    session.closeLogbook();
    waitFor([&] { return !session.isOpen(); });
    LogbookSession bare(m_clock);
    bare.openLogbook(path());
    waitFor([&] { return bare.isOpen(); });
    bare.selectEngine(m_engine.id);
    waitFor([&] { return bare.log() != nullptr; });
    ASSERT_TRUE(QFile::rename(path(), away()));
    std::optional<Result<void>> answer;
    bare.apply(RecordReadings{{hit(1205)}, {}}, &bare, [&](const Result<void>& r) { answer = r; });
    waitFor([&] { return answer.has_value(); });
    ASSERT_FALSE(answer->has_value());
    EXPECT_EQ(answer->error().fault, decltype(Error::fault)(StorageFault::Vanished));
    EXPECT_TRUE(bare.waiting().isEmpty());
}

TEST_F(WaitingTest, TheSecondWindowFollowsTheFirstAndTakesOverWhenThatIsClosed) {
    LogbookSession second(m_clock);
    bool isFree = false;
    QObject::connect(&second, &LogbookSession::canTakeOver, &second, [&] { isFree = true; });
    second.openLogbook(path());
    waitFor([&] { return second.isOpen(); });
    ASSERT_TRUE(second.isReadOnly());
    ASSERT_EQ(second.readOnlyWhy()->fault, decltype(Error::fault)(StorageFault::HeldByWindow));
    second.selectEngine(m_engine.id);
    waitFor([&] { return second.log() != nullptr; });
    ASSERT_TRUE(succeeded(apply(RecordReadings{{hit(1205)}, {}})));
    waitFor([&] { return inForce(*second.log()) == kBoth; });
    EXPECT_FALSE(isFree);
    m_session.closeLogbook();
    waitFor([&] { return isFree; });
    second.takeOver();
    waitFor([&] { return !second.isReadOnly(); });
    EXPECT_TRUE(second.isOpen());
}

} // namespace
} // namespace coilbook
