#include "tests/core/exchange/import_fixture.h"

namespace coilbook {
namespace {

using testing::readings;
using testing::unnumbered;

const std::string kFile = readings({
    "Blue,2026-04-04,0,1,I,A,120,1",
    "Blue,2026-04-04,0,1,I,A,102,2",
    "Blue,2026-04-18,2,1,I,A,119,1",
});

/// A season that was imported and then amended by hand.
class ImportAmendedTest : public testing::ImportFixture {
protected:
    void SetUp() override { imported(m_store, {kFile}); }

    EngineLog log() { return logOf(m_store, QStringLiteral("Blue")); }

    Authorship author() const {
        return {QStringLiteral("Kim"), m_clock.now(), QStringLiteral("slip")};
    }

    void apply(const Change& change) {
        const Result<void> applied = m_store.apply(change, m_clock);
        ASSERT_TRUE(applied.has_value()) << ::testing::PrintToString(applied.error());
    }

    /// Corrects or withdraws the hit of 102, a slip for 120.
    void amendTheSlip(ReadingKind kind) {
        const std::vector<Reading> rows = log().readings;
        const auto slip = std::find_if(rows.begin(), rows.end(), [](const Reading& reading) {
            return reading.value.digits() == 102;
        });
        ASSERT_NE(slip, rows.end());
        Reading amendment = *slip;
        amendment.id = ReadingId::make();
        amendment.amends = slip->id;
        amendment.kind = kind;
        amendment.author = author();
        if (kind == ReadingKind::Correction) {
            amendment.value = TypedForce(120, 0, ForceUnit::PoundForce);
        }
        apply(AmendReading{amendment});
    }

    LogbookStore m_store = newLogbook();
};

TEST_F(ImportAmendedTest, TakesTheOriginalOfACorrectedReadingForKnownAndKeepsTheCorrection) {
    amendTheSlip(ReadingKind::Correction);
    const EngineLog before = log();
    const ImportReport report = imported(m_store, {kFile});
    EXPECT_TRUE(report.changedNothing());
    EXPECT_EQ(report.readingsKnown, 3);
    EXPECT_EQ(report.amendedOriginals, 1);
    EXPECT_EQ(log(), before);
}

TEST_F(ImportAmendedTest, TakesTheOriginalForKnownInAFileWithoutHitNumbersToo) {
    amendTheSlip(ReadingKind::Correction);
    const ImportReport report =
        imported(m_store, {unnumbered({"Blue,2026-04-04,0,1,I,A,120", "Blue,2026-04-04,0,1,I,A,102",
                                       "Blue,2026-04-04,0,1,I,A,118"})});
    EXPECT_EQ(report.readingsKnown, 2);
    EXPECT_EQ(report.amendedOriginals, 1);
    EXPECT_EQ(report.readingsAdded, 1);
}

TEST_F(ImportAmendedTest, TakesTheCorrectedReadingForKnown) {
    amendTheSlip(ReadingKind::Correction);
    const ImportReport report = imported(m_store, {readings({"Blue,2026-04-04,0,1,I,A,120,2"})});
    EXPECT_EQ(report.readingsKnown, 1);
    EXPECT_EQ(report.amendedOriginals, 0);
}

TEST_F(ImportAmendedTest, RefusesAReadingThatIsNeitherTheOriginalNorTheCorrection) {
    amendTheSlip(ReadingKind::Correction);
    EXPECT_FALSE(import(m_store, {readings({"Blue,2026-04-04,0,1,I,A,121,2"})}).has_value());
}

TEST_F(ImportAmendedTest, DoesNotBringBackAReadingThatWasWithdrawn) {
    amendTheSlip(ReadingKind::Withdrawal);
    const ImportReport report = imported(m_store, {kFile});
    EXPECT_TRUE(report.changedNothing());
    EXPECT_EQ(report.amendedOriginals, 1);
    const ImportReport unnumberedToo = imported(
        m_store, {unnumbered({"Blue,2026-04-04,0,1,I,A,120", "Blue,2026-04-04,0,1,I,A,102"})});
    EXPECT_TRUE(unnumberedToo.changedNothing());
}

TEST_F(ImportAmendedTest, ExportsWhatIsInForceAndKnowsItAgain) {
    amendTheSlip(ReadingKind::Correction);
    const auto files = exported(m_store);
    EXPECT_NE(files.second.find("A,120,,2"), std::string::npos);
    EXPECT_EQ(files.second.find("102"), std::string::npos);
    const ImportReport report = imported(m_store, {files.first, files.second});
    EXPECT_TRUE(report.changedNothing());
    EXPECT_EQ(report.amendedOriginals, 0);

    LogbookStore fresh = newLogbook(QStringLiteral("fresh.coilbook"));
    imported(fresh, {files.first, files.second});
    EXPECT_EQ(exported(fresh), files);
}

TEST_F(ImportAmendedTest, DoesNotExportAReadingThatWasWithdrawn) {
    amendTheSlip(ReadingKind::Withdrawal);
    EXPECT_EQ(exported(m_store).second.find("102"), std::string::npos);
}

TEST_F(ImportAmendedTest, KnowsAnInspectionUnderTheDateItHadBefore) {
    Inspection inspection = log().inspections.back();
    inspection.inspectedOn = QDate(2026, 4, 19);
    apply(AmendInspection{inspection, author()});
    const ImportReport report = imported(m_store, {kFile});
    EXPECT_TRUE(report.changedNothing());
    EXPECT_EQ(log().inspections.size(), 2U);
    const auto files = exported(m_store);
    EXPECT_NE(files.second.find("Blue,2026-04-19,2"), std::string::npos);
    EXPECT_TRUE(imported(m_store, {files.second}).changedNothing());
}

TEST_F(ImportAmendedTest, KnowsASpringUnderTheLabelItHadBefore) {
    Spring spring = log().springs.front();
    spring.label = QStringLiteral("A-new");
    apply(AmendSpring{spring, author()});
    EXPECT_TRUE(imported(m_store, {kFile}).changedNothing());
    EXPECT_EQ(log().springs.size(), 1U);
}

TEST_F(ImportAmendedTest, KnowsARaceInTheFormItHadBefore) {
    const std::string raceFile = testing::races({"Blue,1,2026-04-11,Hill Oval,100,9000,0,wet"});
    imported(m_store, {raceFile});
    Race race = log().races.front();
    race.peakRpm = 9400;
    race.overRev = true;
    apply(AmendRace{race, author()});
    const ImportReport report = imported(m_store, {raceFile});
    EXPECT_TRUE(report.changedNothing());
    EXPECT_EQ(report.racesKnown, 1);
    EXPECT_EQ(report.amendedOriginals, 1);
    EXPECT_EQ(log().races.front(), race);
}

} // namespace
} // namespace coilbook
