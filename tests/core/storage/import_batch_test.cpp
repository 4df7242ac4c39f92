#include "tests/core/storage/logbook_fixture.h"

namespace coilbook {
namespace {

using testing::failedWith;
using testing::succeeded;

/// More than two of the blocks in which readings are handed to the other thread, and a rest.
constexpr int kMany = 12017;

class ImportBatchTest : public testing::LogbookTest {
protected:
    [[nodiscard]] std::unique_ptr<LogbookStore::Batch> begin() {
        Result<std::unique_ptr<LogbookStore::Batch>> batch = store().beginBatch();
        EXPECT_TRUE(succeeded(batch));
        return batch ? std::move(*batch) : nullptr;
    }

    /// What readings refer to.
    void addFrame(LogbookStore::Batch& batch) {
        ASSERT_TRUE(succeeded(batch.add(m_engine)));
        ASSERT_TRUE(succeeded(batch.add(m_spring)));
        ASSERT_TRUE(succeeded(batch.add(m_inspection)));
        ASSERT_TRUE(succeeded(batch.add(m_sitting)));
    }

    [[nodiscard]] std::vector<Reading> manyReadings() const {
        std::vector<Reading> readings;
        for (int hit = 1; hit <= kMany; ++hit) {
            readings.push_back(reading(hit, 1000 + hit % 300));
        }
        readings.push_back(amendmentOf(readings.front(), ReadingKind::Correction, 1175));
        return readings;
    }
};

TEST_F(ImportBatchTest, ManyRowsComeBackInTheirOrderAndVerify) {
    const std::vector<Reading> readings = manyReadings();
    const Tester tester{TesterId::make(), QStringLiteral("Bench"), {}, {}, {}, {}};
    const Race race{RaceId::make(), m_engine.id, 1, QDate(2026, 3, 7), {}, {}, {}, {}, {}};
    const Fitting fitting{FittingId::make(), m_engine.id, m_spring.id, {Cylinder(1), Valve::Intake},
                          QDate(2026, 3, 1), 0,           {},          false};
    {
        const auto batch = begin();
        addFrame(*batch);
        ASSERT_TRUE(succeeded(batch->add(tester)));
        ASSERT_TRUE(succeeded(batch->add(race)));
        ASSERT_TRUE(succeeded(batch->add(fitting)));
        for (const Reading& row : readings) {
            ASSERT_TRUE(succeeded(batch->add(row)));
        }
        ASSERT_TRUE(succeeded(batch->commit()));
    }
    const EngineLog stored = log();
    EXPECT_TRUE(stored.readings == readings);
    EXPECT_EQ(stored.races, std::vector<Race>{race});
    EXPECT_EQ(stored.fittings, std::vector<Fitting>{fitting});
    EXPECT_EQ(stored.testers, std::vector<Tester>{tester});
    EXPECT_TRUE(store().verify()->findings.empty());
}

TEST_F(ImportBatchTest, NothingIsStoredWithoutCommit) {
    {
        const auto batch = begin();
        addFrame(*batch);
        for (const Reading& row : manyReadings()) {
            ASSERT_TRUE(succeeded(batch->add(row)));
        }
    }
    EXPECT_TRUE(store().engines()->empty());
    addEngine();
    EXPECT_TRUE(log().readings.empty());
}

TEST_F(ImportBatchTest, ARowThatRefersToNothingFailsAndNothingIsStored) {
    {
        const auto batch = begin();
        addFrame(*batch);
        Reading orphan = reading(1, 1215);
        orphan.spring = SpringId::make();
        EXPECT_TRUE(failedWith(StorageFault::Conflict, batch->add(orphan)));
        orphan = reading(1, 1215);
        orphan.sitting = SittingId::make();
        EXPECT_TRUE(failedWith(StorageFault::Conflict, batch->add(orphan)));
    }
    EXPECT_TRUE(store().engines()->empty());
    {
        const auto batch = begin();
        addFrame(*batch);
        Sitting orphan = m_sitting;
        orphan.id = SittingId::make();
        orphan.inspection = InspectionId::make();
        ASSERT_TRUE(succeeded(batch->add(orphan)));
        EXPECT_TRUE(failedWith(StorageFault::Conflict, batch->commit()));
    }
    EXPECT_TRUE(store().engines()->empty());
    {
        const auto batch = begin();
        addFrame(*batch);
        Reading orphan = reading(1, 1215);
        orphan.amends = ReadingId::make();
        orphan.kind = ReadingKind::Correction;
        orphan.author = author();
        ASSERT_TRUE(succeeded(batch->add(orphan)));
        EXPECT_TRUE(failedWith(StorageFault::Conflict, batch->commit()));
    }
    EXPECT_TRUE(store().engines()->empty());
}

TEST_F(ImportBatchTest, ForeignKeysAreBackInForceAfterABatch) {
    addEngine();
    {
        const auto batch = begin();
        ASSERT_TRUE(succeeded(batch->commit()));
    }
    m_sitting.tester = TesterId::make(); // that there is such a tester only the schema says
    EXPECT_TRUE(
        failedWith(StorageFault::Conflict, apply(StartInspection{m_inspection, m_sitting})));
}

TEST_F(ImportBatchTest, RowsThatAreThereAlreadyAreLeftAlone) {
    addEngine();
    startInspection();
    const Reading there = reading(1, 1215);
    ASSERT_TRUE(succeeded(apply(RecordReadings{{there}, {}})));
    const EngineLog before = log();
    {
        const auto batch = begin();
        addFrame(*batch);
        ASSERT_TRUE(succeeded(batch->add(there)));
        ASSERT_TRUE(succeeded(batch->commit()));
    }
    EXPECT_EQ(log(), before);
}

TEST_F(ImportBatchTest, TheStoreWorksOnAfterABatch) {
    {
        const auto batch = begin();
        addFrame(*batch);
        ASSERT_TRUE(succeeded(batch->commit()));
    }
    EXPECT_TRUE(succeeded(apply(RecordReadings{{reading(1, 1215)}, {}})));
    const auto second = begin();
    ASSERT_NE(second, nullptr);
    EXPECT_TRUE(succeeded(second->commit()));
}

} // namespace
} // namespace coilbook
