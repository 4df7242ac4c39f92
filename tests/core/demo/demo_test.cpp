#include "core/assessment/assessment.h"
#include "core/demo/demo.h"
#include "core/domain/shelf.h"
#include "core/storage/logbook_store.h"
#include "tests/support/session_fixture.h"

#include <algorithm>
#include <map>

namespace coilbook {
namespace {

class DemoTest : public ::testing::Test {
protected:
    void SetUp() override {
        const QString path = m_folder.filePath(QStringLiteral("demo.coilbook"));
        const Result<void> written = writeDemo(path, m_clock);
        ASSERT_TRUE(written.has_value()) << ::testing::PrintToString(written.error());
        Result<LogbookStore> store = LogbookStore::open(path, OpenMode::ReadOnly);
        ASSERT_TRUE(store.has_value());
        const Result<std::vector<EngineSummary>> engines = store->engines();
        ASSERT_TRUE(engines.has_value());
        for (const EngineSummary& engine : *engines) {
            Result<EngineLog> log = store->engineLog(engine.id);
            ASSERT_TRUE(log.has_value());
            m_logs.emplace(engine.name, *log);
        }
    }

    Assessment assessed(const char* engine) const {
        const EngineLog& log = m_logs.at(QString::fromUtf8(engine));
        return assess(historyOf(log), log.engine.rules);
    }

    testing::FixedClock m_clock{QDate(2026, 11, 20)};
    QTemporaryDir m_folder;
    std::map<QString, EngineLog> m_logs;
};

bool has(const Assessment& assessment, Standing standing) {
    return std::any_of(assessment.springs.begin(), assessment.springs.end(),
                       [&](const SpringAssessment& spring) { return spring.standing == standing; });
}

TEST_F(DemoTest, HoldsTwoEnginesWithSixteenSpringsEach) {
    ASSERT_EQ(m_logs.size(), 2U);
    for (const auto& [name, log] : m_logs) {
        EXPECT_EQ(assess(historyOf(log), log.engine.rules).springs.size(), 16U);
    }
}

TEST_F(DemoTest, HoldsACauseForEveryStanding) {
    const Assessment heron = assessed("Heron");
    for (const Standing standing :
         {Standing::PastLimit, Standing::Due, Standing::NoTrend, Standing::Sound}) {
        EXPECT_TRUE(has(heron, standing)) << static_cast<int>(standing);
    }
}

TEST_F(DemoTest, HoldsASpringPastTheLimitByEachKindOfEvidence) {
    const Assessment heron = assessed("Heron");
    for (const PastBy evidence : {PastBy::Measured, PastBy::Estimate, PastBy::Both}) {
        EXPECT_TRUE(
            std::any_of(heron.springs.begin(), heron.springs.end(),
                        [&](const SpringAssessment& spring) { return spring.pastBy == evidence; }))
            << static_cast<int>(evidence);
    }
}

TEST_F(DemoTest, OnlyTheCrackedSpringFellOffItsTrendAndMayHaveDropped) {
    for (const char* engine : {"Heron", "Plover"}) {
        for (const SpringAssessment& spring : assessed(engine).springs) {
            const bool cracked = spring.label == QStringLiteral("H-10");
            const bool pending = std::any_of(
                spring.events.begin(), spring.events.end(), [](const EventFinding& event) {
                    return event.kind == EventFinding::Kind::PendingDrop;
                });
            EXPECT_EQ(spring.offTrend, cracked) << spring.label.toStdString();
            EXPECT_EQ(pending, cracked) << spring.label.toStdString();
        }
    }
}

TEST_F(DemoTest, AnEarlierInspectionOfHeronAndTheNewestOfPloverAreShifted) {
    for (const InspectionAssessment& inspection : assessed("Heron").inspections) {
        EXPECT_EQ(inspection.shifted, inspection.races == 4) << inspection.races;
    }
    for (const InspectionAssessment& inspection : assessed("Plover").inspections) {
        EXPECT_EQ(inspection.shifted, inspection.races == 6) << inspection.races;
    }
}

TEST_F(DemoTest, ASpringSwappedInNotLongAgoHasAProvisionalEstimate) {
    for (const SpringAssessment& spring : assessed("Heron").springs) {
        EXPECT_EQ(spring.provisional,
                  spring.label == QStringLiteral("H-17") || spring.label == QStringLiteral("H-18"))
            << spring.label.toStdString();
    }
}

TEST_F(DemoTest, HoldsAnOverRevASlipOfThePenAndTwoSwaps) {
    const EngineLog& log = m_logs.at(QStringLiteral("Heron"));
    EXPECT_TRUE(std::any_of(log.races.begin(), log.races.end(), [&](const Race& race) {
        return isOverRev(race, log.engine.rpmCeiling);
    }));
    EXPECT_TRUE(std::any_of(log.readings.begin(), log.readings.end(), [](const Reading& reading) {
        return reading.kind == ReadingKind::Correction;
    }));
    EXPECT_EQ(log.springs.size(), 21U) << "sixteen, two swapped in, three spares";
}

TEST_F(DemoTest, HoldsACalendarSparesAndSpringsThatWereThrownOut) {
    const EngineLog& log = m_logs.at(QStringLiteral("Heron"));
    EXPECT_EQ(comingRaces(log, newestDay(log)).size(), 6U);
    int spares = 0;
    int scrap = 0;
    for (const ShelvedSpring& spring : shelfOf(log, historyOf(log))) {
        ++(spring.where == Storage::Scrap ? scrap : spares);
    }
    EXPECT_EQ(spares, 3);
    EXPECT_EQ(scrap, 2);
}

// The people who invented it enter nothing after the day on which they did.
TEST_F(DemoTest, AllItsDatesLieInTheSeasonThatIsOver) {
    for (const auto& [name, log] : m_logs) {
        EXPECT_LE(newestDay(log), QDate(2026, 11, 1));
    }
}

TEST_F(DemoTest, IsNotWrittenOverAnotherFile) {
    const QString path = m_folder.filePath(QStringLiteral("demo.coilbook"));
    const Result<void> again = writeDemo(path, m_clock);
    ASSERT_FALSE(again.has_value());
    EXPECT_EQ(std::get<StorageFault>(again.error().fault), StorageFault::AlreadyExists);
}

} // namespace
} // namespace coilbook
