#include "core/storage/row_checksum.h"
#include "core/storage/table.h"
#include "tests/core/storage/logbook_fixture.h"

#include <algorithm>

namespace coilbook {
namespace {

using testing::succeeded;

/// What somebody could do to the file with another program: every row keeps a fitting checksum.
class TamperingTest : public testing::LogbookTest {
protected:
    void SetUp() override {
        LogbookTest::SetUp();
        addEngine();
        startInspection();
        m_reading = reading(1, 1300);
        ASSERT_TRUE(succeeded(apply(RecordReadings{{m_reading, reading(2, 1310)}, {}})));
    }

    void importReadings(int first, int last) {
        auto batch = store().beginBatch();
        ASSERT_TRUE(succeeded(batch));
        for (int hit = first; hit <= last; ++hit) {
            ASSERT_TRUE(succeeded((*batch)->add(reading(hit, 1300 + hit % 10))));
        }
        ASSERT_TRUE(succeeded((*batch)->commit()));
    }

    [[nodiscard]] std::vector<FindingKind> kinds() {
        const Result<VerifyReport> report = store().verify();
        EXPECT_TRUE(succeeded(report));
        std::vector<FindingKind> found;
        for (const Finding& finding : report->findings) {
            found.push_back(finding.kind);
        }
        return found;
    }

    [[nodiscard]] bool finds(FindingKind kind) {
        const std::vector<FindingKind> found = kinds();
        return std::find(found.begin(), found.end(), kind) != found.end();
    }

    void runAll(const QStringList& statements) const {
        for (const QString& statement : statements) {
            ASSERT_TRUE(succeeded(runBeside(statement))) << statement.toStdString();
        }
    }

    void dropReadingTriggers() const {
        runAll({QStringLiteral("DROP TRIGGER reading_is_never_changed"),
                QStringLiteral("DROP TRIGGER reading_is_never_deleted")});
    }

    void dropSealTriggers() const {
        runAll({QStringLiteral("DROP TRIGGER seal_is_never_changed"),
                QStringLiteral("DROP TRIGGER seal_is_never_deleted")});
    }

    [[nodiscard]] static QString checksumText(const Reading& row) {
        return QString::number(
            storage::rowChecksum(QStringLiteral("reading"), storage::Rows<Reading>::values(row)));
    }

    /// A row as the program would have written it, past the program.
    template <class Record>
    void putBeside(const Record& record, const QString& seal) const {
        const storage::TableShape& shape = storage::Rows<Record>::shape();
        const QVariantList values = storage::Rows<Record>::values(record);
        QStringList texts;
        for (const QVariant& value : values) {
            const bool isText = value.userType() == QMetaType::QString;
            texts << (value.isNull() ? QStringLiteral("NULL")
                      : isText       ? QLatin1Char('\'') + value.toString() + QLatin1Char('\'')
                                     : value.toString());
        }
        texts << QString::number(storage::rowChecksum(shape.name, values)) << seal;
        runAll({QStringLiteral("INSERT INTO %1 (%2, checksum, seal) VALUES (%3)")
                    .arg(shape.name, shape.columns.join(QStringLiteral(", ")),
                         texts.join(QStringLiteral(", ")))});
    }

    Reading m_reading;
};

TEST_F(TamperingTest, NothingIsFoundWhereNobodyDidAnything) {
    importReadings(3, 4300);
    m_engine.serial = QStringLiteral("17");
    ASSERT_TRUE(succeeded(apply(AmendEngine{m_engine, author()})));
    EXPECT_EQ(kinds(), std::vector<FindingKind>());
}

TEST_F(TamperingTest, AReadingChangedWithItsChecksumIsFound) {
    dropReadingTriggers();
    Reading better = m_reading;
    better.value = TypedForce(1400, 1, ForceUnit::PoundForce);
    runAll({QStringLiteral("UPDATE reading SET digits = 1400, checksum = %1 WHERE id = '%2'")
                .arg(checksumText(better), m_reading.id.text())});
    EXPECT_EQ(kinds(), std::vector{FindingKind::NotAsSealed});
}

TEST_F(TamperingTest, AReadingRemovedIsFound) {
    dropReadingTriggers();
    runAll({QStringLiteral("DELETE FROM reading WHERE id = '%1'").arg(m_reading.id.text())});
    EXPECT_EQ(kinds(), std::vector{FindingKind::SealedRowGone});
}

TEST_F(TamperingTest, AReadingAddedIsFoundWhateverSealItNames) {
    putBeside(reading(3, 1290), QStringLiteral("NULL"));
    EXPECT_EQ(kinds(), std::vector{FindingKind::NotSealed});
    putBeside(reading(4, 1290), QStringLiteral("6"));
    EXPECT_TRUE(finds(FindingKind::NotAsSealed));
    putBeside(reading(5, 1290), QStringLiteral("600"));
    EXPECT_EQ(kinds().size(), 3U);
}

TEST_F(TamperingTest, ImportedRowsChangedAddedOrRemovedAreFound) {
    importReadings(3, 50);
    const Result<std::optional<NotedSeal>> seal = store().newestSeal(m_engine.id);
    ASSERT_TRUE(succeeded(seal));
    const QString block = QString::number((*seal)->number);
    putBeside(reading(51, 1290), block);
    EXPECT_EQ(kinds(), std::vector{FindingKind::BlockNotAsSealed});
    dropReadingTriggers();
    runAll({QStringLiteral("DELETE FROM reading WHERE hit = 51")});
    EXPECT_EQ(kinds(), std::vector<FindingKind>());
    runAll({QStringLiteral("DELETE FROM reading WHERE hit = 50")});
    EXPECT_EQ(kinds(), std::vector{FindingKind::BlockNotAsSealed});
}

TEST_F(TamperingTest, AFactSetBackToItsOldValueIsFound) {
    const Engine before = m_engine;
    m_engine.serial = QStringLiteral("17");
    ASSERT_TRUE(succeeded(apply(AmendEngine{m_engine, author()})));
    const qint64 checksum =
        storage::rowChecksum(QStringLiteral("engine"), storage::Rows<Engine>::values(before));
    runAll(
        {QStringLiteral("UPDATE engine SET serial = '', checksum = %1, seal = 2").arg(checksum)});
    EXPECT_TRUE(finds(FindingKind::NotAsSealed));
}

TEST_F(TamperingTest, AFactOfAnImportedRecordIsAmendedWithoutDisturbingItsBlock) {
    Engine red = m_engine;
    red.id = EngineId::make();
    red.name = QStringLiteral("Red");
    auto batch = store().beginBatch();
    ASSERT_TRUE(succeeded((*batch)->add(red)));
    ASSERT_TRUE(succeeded((*batch)->commit()));
    batch->reset();
    for (const char* serial : {"17", "18"}) {
        red.serial = QString::fromLatin1(serial);
        ASSERT_TRUE(succeeded(apply(AmendEngine{red, author()})));
    }
    EXPECT_EQ(kinds(), std::vector<FindingKind>());
}

TEST_F(TamperingTest, AChangedOrMissingSealIsFound) {
    dropSealTriggers();
    runAll({QStringLiteral("UPDATE seal SET row_count = 2 WHERE number = 4")});
    EXPECT_TRUE(finds(FindingKind::BrokenChain));
    runAll({QStringLiteral("UPDATE seal SET row_count = 1 WHERE number = 4")});
    EXPECT_EQ(kinds(), std::vector<FindingKind>());
    runAll({QStringLiteral("DELETE FROM seal WHERE number = 4")});
    EXPECT_TRUE(finds(FindingKind::BrokenChain));
    EXPECT_TRUE(finds(FindingKind::NotSealed));
}

TEST_F(TamperingTest, CuttingTheEndOfTheChainOffIsFoundByItsRowsOrByANotedSeal) {
    const Result<std::optional<NotedSeal>> noted = store().newestSeal(m_engine.id);
    ASSERT_TRUE(succeeded(noted));
    EXPECT_EQ(*store().askSeal(**noted), SealAnswer::PassedThrough);
    dropSealTriggers();
    dropReadingTriggers();
    runAll({QStringLiteral("DELETE FROM seal WHERE number > 5")});
    EXPECT_TRUE(finds(FindingKind::NotSealed));
    runAll({QStringLiteral("DELETE FROM reading")});
    EXPECT_EQ(kinds(), std::vector<FindingKind>()) << "the file alone cannot tell";
    EXPECT_EQ(*store().askSeal(**noted), SealAnswer::NotThere);
    ASSERT_TRUE(succeeded(apply(RecordReadings{{reading(1, 1400), reading(2, 1400)}, {}})));
    EXPECT_EQ(kinds(), std::vector<FindingKind>());
    EXPECT_EQ(*store().askSeal(**noted), SealAnswer::Differs);
}

TEST_F(TamperingTest, SealedAnewALogbookIsSoundAndGoesOn) {
    importReadings(3, 40);
    ASSERT_TRUE(succeeded(store().sealAnew(SealBeginning::Restored)));
    m_engine.serial = QStringLiteral("17");
    ASSERT_TRUE(succeeded(apply(AmendEngine{m_engine, author()})));
    ASSERT_TRUE(succeeded(store().sealAnew(SealBeginning::Restored)));
    m_engine.serial = QStringLiteral("18");
    ASSERT_TRUE(succeeded(apply(AmendEngine{m_engine, author()})));
    importReadings(41, 60);
    const Result<VerifyReport> report = store().verify();
    ASSERT_TRUE(succeeded(report));
    EXPECT_EQ(report->findings, std::vector<Finding>());
    ASSERT_EQ(report->beginnings.size(), 3U);
    EXPECT_EQ(report->beginnings.front().kind, SealBeginning::Created);
    EXPECT_EQ(report->beginnings.back().kind, SealBeginning::Restored);
    dropReadingTriggers();
    runAll({QStringLiteral("DELETE FROM reading WHERE hit = 40")});
    EXPECT_TRUE(finds(FindingKind::AllNotAsSealed));
}

TEST_F(TamperingTest, ASealCannotClaimToReplaceAnotherRow) {
    // Removes a reading and lets the seal of a new one say that it replaced it.
    const int number = 8;
    Reading other = reading(3, 1290);
    storage::SealContent seal;
    seal.subject = QStringLiteral("reading");
    seal.record = other.id.text();
    seal.content =
        storage::rowDigest(QStringLiteral("reading"), storage::Rows<Reading>::values(other));
    seal.replaced =
        storage::rowDigest(QStringLiteral("reading"), storage::Rows<Reading>::values(m_reading));
    seal.replaces = 6;
    const auto connection =
        storage::Connection::open(path(), storage::Connection::Access::ReadWrite);
    ASSERT_TRUE(succeeded(connection));
    Result<storage::ChainEnd> end = storage::chainEnd(**connection);
    ASSERT_TRUE(succeeded(end));
    ASSERT_EQ(end->number, number - 1);
    ASSERT_TRUE(succeeded(storage::addSeal(**connection, *end, seal)));
    dropReadingTriggers();
    runAll({QStringLiteral("DELETE FROM reading WHERE id = '%1'").arg(m_reading.id.text())});
    putBeside(other, QString::number(number));
    EXPECT_TRUE(finds(FindingKind::BrokenChain));
    EXPECT_TRUE(finds(FindingKind::SealedRowGone));
}

TEST_F(TamperingTest, CountsThatGoBackAreFound) {
    const Inspection later{InspectionId::make(), m_engine.id, QDate(2026, 4, 18), 2, true};
    putBeside(later, QStringLiteral("NULL"));
    EXPECT_TRUE(finds(FindingKind::BreaksRule));
}

TEST_F(TamperingTest, AHitNumberTwiceAndASpringAtTwoPlacesAreFound) {
    putBeside(reading(2, 1290), QStringLiteral("NULL"));
    EXPECT_TRUE(finds(FindingKind::BreaksRule));
    Reading elsewhere = reading(3, 1290);
    elsewhere.place = {Cylinder(2), Valve::Intake};
    putBeside(elsewhere, QStringLiteral("NULL"));
    EXPECT_TRUE(finds(FindingKind::BreaksRule));
}

TEST_F(TamperingTest, ALifeThatEndsBeforeItBeganIsFound) {
    const Spring other{SpringId::make(), QStringLiteral("S-2"), {}, {}, {}};
    putBeside(other, QStringLiteral("NULL"));
    putBeside(Fitting{FittingId::make(),
                      m_engine.id,
                      other.id,
                      {Cylinder(1), Valve::Intake},
                      QDate(2026, 4, 20),
                      1,
                      {},
                      false},
              QStringLiteral("NULL"));
    EXPECT_TRUE(finds(FindingKind::LivesOverlap));
}

TEST_F(TamperingTest, CorrectionsThatLeadRoundInACircleAreFound) {
    Reading one = amendmentOf(m_reading, ReadingKind::Correction, 1290);
    Reading two = amendmentOf(one, ReadingKind::Correction, 1280);
    one.amends = two.id;
    runAll({QStringLiteral("PRAGMA foreign_keys=OFF")});
    putBeside(one, QStringLiteral("NULL"));
    putBeside(two, QStringLiteral("NULL"));
    const std::vector<FindingKind> found = kinds();
    EXPECT_EQ(std::count(found.begin(), found.end(), FindingKind::NoOriginal), 2);
}

TEST_F(TamperingTest, AReadingOfASittingThatIsNotThereIsFound) {
    Reading lost = reading(3, 1290);
    lost.sitting = SittingId::make();
    lost.spring = SpringId::make();
    putBeside(lost, QStringLiteral("NULL"));
    const std::vector<FindingKind> found = kinds();
    EXPECT_EQ(std::count(found.begin(), found.end(), FindingKind::NoSuchRow), 2);
}

TEST_F(TamperingTest, OfAFileRewrittenAsAWholeSomeFindingsAreListedAndAllAreCounted) {
    importReadings(3, 4000);
    dropReadingTriggers();
    runAll({QStringLiteral("UPDATE reading SET digits = digits + 1")});
    const Result<VerifyReport> report = store().verify();
    ASSERT_TRUE(succeeded(report));
    EXPECT_EQ(report->findings.size(), VerifyReport::kMostListed);
    EXPECT_GT(report->more, 2000);
}

} // namespace
} // namespace coilbook
