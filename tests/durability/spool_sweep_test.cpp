#include "core/services/disk_side.h"
#include "tests/core/storage/logbook_fixture.h"
#include "tests/durability/power_cut_disk.h"
#include "tests/durability/sweep.h"
#include "tests/support/fixed_clock.h"

#include <QDir>
#include <QTemporaryDir>

#include <algorithm>
#include <cstdio>
#include <set>
#include <sqlite3.h>
#include <utility>

namespace coilbook::testing {
namespace {

/// Readings are entered while writes fail and the power goes, on a disk that holds the logbook and
/// the place where entries wait. What was acknowledged, as saved or as waiting, is in the logbook
/// in the end, once.
class SpoolSweepTest : public ::testing::Test {
protected:
    static constexpr int kReadings = 6;

    void SetUp() override {
        ASSERT_TRUE(QDir(m_folder.path()).mkdir(QStringLiteral("disk")));
        m_disk = std::make_unique<PowerCutDisk>(m_folder.filePath(QStringLiteral("disk")));
        Result<LogbookStore> store = LogbookStore::create(logbook());
        ASSERT_TRUE(succeeded(store));
        AddEngine engine;
        engine.engine.id = m_engine;
        engine.engine.name = QStringLiteral("Blue");
        const Inspection inspection{InspectionId::make(), m_engine, QDate(2026, 3, 1), 0, false};
        const Sitting sitting{SittingId::make(), inspection.id, {}, QStringLiteral("Kim"), {}};
        ASSERT_TRUE(
            succeeded(store->applyAll({engine, StartInspection{inspection, sitting}}, m_clock)));
        const Spring spring{SpringId::make(), QStringLiteral("S-1"), {}, {}, {}};
        for (int hit = 1; hit <= kReadings; ++hit) {
            Reading reading;
            reading.id = ReadingId::make();
            reading.sitting = sitting.id;
            reading.spring = spring.id;
            reading.place = {Cylinder(1), Valve::Intake};
            reading.hit = hit;
            reading.value = TypedForce(1300 - hit, 1, ForceUnit::PoundForce);
            m_entries.push_back(
                RecordReadings{{reading}, hit == 1 ? std::vector{spring} : std::vector<Spring>()});
        }
        {
            Result<Spool> spool = Spool::open(waiting());
            ASSERT_TRUE(succeeded(spool));
        }
        store = fail(StorageFault::Missing); // closed
        m_begin = m_disk->contents();
    }

    [[nodiscard]] QString logbook() const {
        return m_folder.filePath(QStringLiteral("disk/shop.coilbook"));
    }

    [[nodiscard]] QString waiting() const {
        return m_folder.filePath(QStringLiteral("disk/waiting.sqlite"));
    }

    /// Enters all readings and looks around between them, as the session does. The readings that
    /// were acknowledged.
    [[nodiscard]] std::set<ReadingId> enter() {
        std::set<ReadingId> acknowledged;
        DiskSide side(m_clock);
        side.room().useSpool(waiting());
        if (!side.open(logbook()) || !side.select(m_engine)) {
            return acknowledged;
        }
        for (const RecordReadings& entry : m_entries) {
            const Result<LogbookSnapshot> applied = side.apply({entry});
            if (!applied) {
                continue; // shown as not saved; stays typed
            }
            acknowledged.insert(entry.readings.front().id);
            waited += applied->waiting.isEmpty() ? 0 : 1;
            if (entry.readings.front().hit % 2 == 0) {
                [[maybe_unused]] const DiskNews news = side.lookAround();
            }
        }
        return acknowledged;
    }

    /// The next start of the program: whatever was acknowledged is in the logbook, once.
    void expectAllThere(const std::set<ReadingId>& acknowledged) {
        {
            DiskSide side(m_clock);
            side.room().useSpool(waiting());
            const Result<LogbookSnapshot> opened = side.open(logbook());
            ASSERT_TRUE(succeeded(opened));
            EXPECT_TRUE(opened->waiting.isEmpty());
            EXPECT_EQ(opened->waiting.refused, 0) << qPrintable(opened->waiting.refusal);
        }
        const Result<LogbookStore> store = LogbookStore::open(logbook(), OpenMode::ReadOnly);
        ASSERT_TRUE(succeeded(store));
        EXPECT_EQ(store->verify()->findings, std::vector<Finding>());
        const Result<EngineLog> log = store->engineLog(m_engine);
        ASSERT_TRUE(succeeded(log));
        std::multiset<ReadingId> there;
        for (const Reading& reading : log->readings) {
            there.insert(reading.id);
        }
        for (const ReadingId& id : acknowledged) {
            EXPECT_EQ(there.count(id), 1U) << "lost";
        }
        EXPECT_EQ(std::set<ReadingId>(there.begin(), there.end()).size(), there.size())
            << "doubled";
    }

    [[nodiscard]] qint64 operationsUndisturbed() {
        m_disk->setContents(m_begin);
        EXPECT_EQ(enter().size(), static_cast<std::size_t>(kReadings));
        return m_disk->operations();
    }

    QTemporaryDir m_folder;
    std::unique_ptr<PowerCutDisk> m_disk;
    FixedClock m_clock{QDate(2026, 5, 2)};
    EngineId m_engine = EngineId::make();
    std::vector<RecordReadings> m_entries;
    std::map<QString, std::string> m_begin;
    int waited = 0;
};

TEST_F(SpoolSweepTest, AWriteThatFailsMakesAReadingWaitAndLosesNone) {
    const qint64 operations = operationsUndisturbed();
    const int stride = repetitions("COILBOOK_FAULT_STRIDE", 7);
    int faults = 0;
    for (const int code : {SQLITE_FULL, SQLITE_IOERR}) {
        for (qint64 at = 1; at <= operations && !HasFailure(); at += stride) {
            SCOPED_TRACE(at);
            m_disk->setContents(m_begin);
            m_disk->failAt(at, code, PowerCutDisk::Failing::Once);
            const std::set<ReadingId> acknowledged = enter();
            faults += m_disk->hasFailed() ? 1 : 0;
            m_disk->free();
            expectAllThere(acknowledged);
        }
    }
    EXPECT_GT(waited, 0);
    std::printf("%d refused writes, %d readings waited, 0 lost, 0 doubled\n", faults, waited);
}

TEST_F(SpoolSweepTest, ThePowerMayGoWhileReadingsWait) {
    const qint64 operations = operationsUndisturbed();
    // A write fails, so that entries wait; at each later moment the power goes.
    std::vector<std::pair<qint64, qint64>> moments;
    for (qint64 fault = 3; fault < operations; fault += 11) {
        for (qint64 cut = fault + 1; cut < operations + 60; ++cut) {
            moments.emplace_back(fault, cut);
        }
    }
    const auto wanted = static_cast<std::size_t>(repetitions("COILBOOK_CUTS", 200)) / 4;
    const std::size_t chosen = std::min(wanted, moments.size());
    unsigned seed = 1;
    for (std::size_t i = 0; i < chosen && !HasFailure(); ++i, ++seed) {
        const auto [fault, cut] = moments[i * moments.size() / chosen];
        SCOPED_TRACE(std::to_string(fault) + " fails, cut at " + std::to_string(cut));
        m_disk->setContents(m_begin);
        m_disk->failAt(fault, SQLITE_IOERR, PowerCutDisk::Failing::Once);
        m_disk->cutAt(cut);
        const std::set<ReadingId> acknowledged = enter();
        m_disk->cut();
        m_disk->powerOn(static_cast<PowerCutDisk::Survivors>(seed % 3), seed);
        m_disk->free();
        expectAllThere(acknowledged);
    }
    EXPECT_GT(chosen, 0U);
    std::printf("%zu of %zu power cuts while readings waited, 0 lost, 0 doubled\n", chosen,
                moments.size());
}

} // namespace
} // namespace coilbook::testing
