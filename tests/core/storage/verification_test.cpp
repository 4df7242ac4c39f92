#include "core/storage/migrations.h"
#include "core/storage/row_checksum.h"
#include "core/storage/schema.h"
#include "tests/core/storage/logbook_fixture.h"

#include <QCryptographicHash>
#include <QDir>
#include <QFile>

namespace coilbook {
namespace {

using testing::failedWith;
using testing::succeeded;

class VerificationTest : public testing::LogbookTest {
protected:
    void SetUp() override {
        LogbookTest::SetUp();
        addEngine();
        startInspection();
        m_reading = reading(1, 1715);
        ASSERT_TRUE(succeeded(apply(RecordReadings{{m_reading}, {}})));
        ASSERT_TRUE(
            succeeded(apply(AmendReading{amendmentOf(m_reading, ReadingKind::Correction, 1175)})));
    }

    [[nodiscard]] QStringList findings() {
        const Result<VerifyReport> report = store().verify();
        EXPECT_TRUE(succeeded(report));
        QStringList where;
        for (const Finding& finding : report->findings) {
            where << finding.where;
        }
        return where;
    }

    Reading m_reading;
};

TEST_F(VerificationTest, AWholeLogbookHasNoFindings) {
    const Result<VerifyReport> report = store().verify();
    ASSERT_TRUE(succeeded(report));
    EXPECT_TRUE(report->findings.empty());
    // Engine, spring, inspection, sitting, reading, correction.
    EXPECT_EQ(report->rowsChecked, 6);
}

TEST_F(VerificationTest, TheChecksumIsThatOfTheDocumentedForm) {
    const QByteArray canonical("t6:springt3:S-1ni-7;t2:\xc3\xa9");
    const QByteArray digest =
        QCryptographicHash::hash(canonical, QCryptographicHash::Sha256).left(8);
    const qint64 checksum = storage::rowChecksum(
        QStringLiteral("spring"), {QStringLiteral("S-1"), QVariant(),
                                   QVariant::fromValue<qlonglong>(-7), QString(QChar(0xe9))});
    EXPECT_EQ(QByteArray::number(static_cast<quint64>(checksum), 16).rightJustified(16, '0'),
              digest.toHex());
}

TEST_F(VerificationTest, ReadingsAndAmendmentsAreNeitherChangedNorDeleted) {
    m_engine.serial = QStringLiteral("17");
    ASSERT_TRUE(succeeded(apply(AmendEngine{m_engine, author()})));
    for (const char* sql : {"UPDATE reading SET digits = 1", "DELETE FROM reading",
                            "UPDATE amendment SET why = 'x'", "DELETE FROM amendment"}) {
        EXPECT_TRUE(failedWith(StorageFault::Conflict, runBeside(QString::fromLatin1(sql)))) << sql;
    }
    EXPECT_TRUE(findings().isEmpty());
}

TEST_F(VerificationTest, AChangedRowIsFoundAndNotLoaded) {
    ASSERT_TRUE(succeeded(runBeside(QStringLiteral("UPDATE sitting SET inspector = 'Kin'"))));
    EXPECT_EQ(findings(), QStringList{QStringLiteral("sitting ") + m_sitting.id.text()});
    EXPECT_TRUE(failedWith(StorageFault::Damaged, store().engineLog(m_engine.id)));
}

TEST_F(VerificationTest, AChangedReadingIsFound) {
    ASSERT_TRUE(succeeded(runBeside(QStringLiteral("DROP TRIGGER reading_is_never_changed"))));
    ASSERT_TRUE(succeeded(
        runBeside(QStringLiteral("UPDATE reading SET digits = 1716 WHERE amends IS NULL"))));
    EXPECT_EQ(findings(), QStringList{QStringLiteral("reading ") + m_reading.id.text()});
}

TEST_F(VerificationTest, ARowThatRefersToNothingIsFound) {
    ASSERT_TRUE(succeeded(runBeside(QStringLiteral("DELETE FROM spring"))));
    EXPECT_EQ(findings().filter(QStringLiteral("reading ")).size(), 2);
}

TEST_F(VerificationTest, AnAmendmentThatDoesNotLeadToTheRecordIsFound) {
    m_spring.part = QStringLiteral("dual");
    ASSERT_TRUE(succeeded(apply(AmendSpring{m_spring, author()})));
    EXPECT_TRUE(findings().isEmpty());
    // Back to the old value with a fitting checksum, as a copied row would have it.
    const qint64 checksum = storage::rowChecksum(
        QStringLiteral("spring"), {m_spring.id.text(), m_spring.label, QStringLiteral(""),
                                   QStringLiteral(""), QStringLiteral("")});
    ASSERT_TRUE(succeeded(
        runBeside(QStringLiteral("UPDATE spring SET part = '', checksum = %1").arg(checksum))));
    // The seal of the spring tells as well.
    EXPECT_EQ(findings().size(), 2);
    EXPECT_EQ(findings().filter(QStringLiteral("amendment ")).size(), 1);
}

TEST_F(VerificationTest, ADamagedPageIsAFindingAndNoError) {
    for (int hit = 2; hit <= 60; ++hit) {
        ASSERT_TRUE(succeeded(apply(RecordReadings{{reading(hit, 1200)}, {}})));
    }
    closeStore();
    {
        QFile file(path());
        ASSERT_TRUE(file.open(QIODevice::ReadWrite));
        ASSERT_TRUE(file.seek(file.size() - 4096));
        ASSERT_EQ(file.write(QByteArray(512, '\0')), 512);
    }
    Result<LogbookStore> opened = LogbookStore::open(path(), OpenMode::ReadOnly);
    ASSERT_TRUE(succeeded(opened));
    const Result<VerifyReport> report = opened->verify();
    ASSERT_TRUE(succeeded(report));
    EXPECT_FALSE(report->findings.empty());
    const QString target = path(QStringLiteral("copy.coilbook"));
    EXPECT_TRUE(failedWith(StorageFault::Damaged, opened->backup(target)));
    EXPECT_FALSE(QFileInfo::exists(target));
}

TEST_F(VerificationTest, ABackupHoldsTheSameWhileTheLogbookIsOpen) {
    const Result<LogbookStore> second = LogbookStore::open(path(), OpenMode::ReadOnly);
    ASSERT_TRUE(succeeded(second));
    const QString target = path(QStringLiteral("it's a copy.coilbook"));
    ASSERT_TRUE(succeeded(second->backup(target)));
    const Result<LogbookStore> copy = LogbookStore::open(target, OpenMode::ReadOnly);
    ASSERT_TRUE(succeeded(copy));
    EXPECT_EQ(copy->engineLog(m_engine.id).value(), log());
    EXPECT_TRUE(failedWith(StorageFault::AlreadyExists, second->backup(target)));
    EXPECT_TRUE(failedWith(StorageFault::Missing,
                           second->backup(path(QStringLiteral("no/such/copy.coilbook")))));
    EXPECT_EQ(QDir(m_folder.path()).entryList(QDir::Files).filter(QStringLiteral("tmp")),
              QStringList());
}

TEST_F(VerificationTest, AMigrationIsTakenWhollyOrNotAtAll) {
    closeStore();
    const auto connection =
        storage::Connection::open(path(), storage::Connection::Access::ReadWrite);
    ASSERT_TRUE(succeeded(connection));
    std::vector<storage::Migration> steps = storage::sqliteMigrations();
    const int now = storage::newestVersion(steps);
    steps.push_back({now + 1,
                     storage::statementsOf(QStringLiteral(
                         "-- a comment\nCREATE TABLE tool (id TEXT) STRICT;\n\nNONSENSE;\n")),
                     {}});
    EXPECT_TRUE(failedWith(StorageFault::Internal, storage::migrate(**connection, now, steps)));
    EXPECT_EQ(storage::readIdentity(**connection)->schemaVersion, now);
    EXPECT_EQ((*connection)
                  ->scalar(QStringLiteral("SELECT count(*) FROM sqlite_master WHERE name='tool'"))
                  ->toInt(),
              0);
    steps.back().statements.removeLast();
    EXPECT_TRUE(succeeded(storage::migrate(**connection, now, steps)));
    EXPECT_EQ(storage::readIdentity(**connection)->schemaVersion, now + 1);
    EXPECT_EQ((*connection)
                  ->scalar(QStringLiteral("SELECT value FROM meta WHERE key='schema_version'"))
                  ->toString(),
              QString::number(now + 1));
}

} // namespace
} // namespace coilbook
