#include "core/storage/schema.h"
#include "tests/core/storage/logbook_fixture.h"

#include <QDir>
#include <QFile>

namespace coilbook {
namespace {

using testing::succeeded;

/// Each released schema version is there as a file (tests/data/logbooks/SOURCE says what is in it).
class OldFilesTest : public ::testing::TestWithParam<int> {
protected:
    void SetUp() override {
        const QString kept = QStringLiteral(COILBOOK_TEST_DATA "/logbooks/bench_%1.coilbook");
        ASSERT_TRUE(QFile::copy(kept.arg(GetParam()), path()));
        ASSERT_TRUE(QFile::setPermissions(path(), QFile::ReadOwner | QFile::WriteOwner));
    }

    [[nodiscard]] QString path() const { return m_folder.filePath(QStringLiteral("old.coilbook")); }

    void expectWhatWasWritten(OpenMode mode) const {
        const Result<LogbookStore> store = LogbookStore::open(path(), mode);
        ASSERT_TRUE(succeeded(store));
        const Result<VerifyReport> report = store->verify();
        ASSERT_TRUE(succeeded(report));
        EXPECT_EQ(report->findings, std::vector<Finding>());
        const Result<std::vector<EngineSummary>> engines = store->engines();
        ASSERT_TRUE(succeeded(engines));
        ASSERT_EQ(engines->size(), 1U);
        EXPECT_EQ(engines->front().name, QStringLiteral("Blue"));
        const Result<EngineLog> log = store->engineLog(engines->front().id);
        ASSERT_TRUE(succeeded(log));
        EXPECT_EQ(log->engine.rules.limit, Force::poundsForce(6.0));
        QStringList readings;
        for (const Reading& reading : log->readings) {
            readings.append(reading.value.text());
        }
        EXPECT_EQ(readings.join(QLatin1Char(' ')),
                  QStringLiteral("130.0 130.1 130.2 130.3 117.5 117.5"));
        EXPECT_EQ(log->readings.back().kind, ReadingKind::Withdrawal);
        EXPECT_EQ(log->amendments.size(), 3U);
        const Result<std::optional<Draft>> draft = store->draft(engines->front().id);
        ASSERT_TRUE(succeeded(draft));
        ASSERT_TRUE(draft->has_value());
        EXPECT_EQ((*draft)->typed, QStringLiteral("11"));
    }

    [[nodiscard]] static QByteArray bytesOf(const QString& path) {
        QFile file(path);
        EXPECT_TRUE(file.open(QIODevice::ReadOnly)) << path.toStdString();
        return file.readAll();
    }

    QTemporaryDir m_folder;
};

TEST_P(OldFilesTest, IsReadWithoutBeingChanged) {
    const auto bytes = [this] {
        QFile file(path());
        EXPECT_TRUE(file.open(QIODevice::ReadOnly));
        return file.readAll();
    };
    const QByteArray before = bytes();
    expectWhatWasWritten(OpenMode::ReadOnly);
    EXPECT_EQ(bytes(), before);
}

TEST_P(OldFilesTest, IsBroughtUpToDateWithEverythingInIt) {
    expectWhatWasWritten(OpenMode::ReadWrite);
    expectWhatWasWritten(OpenMode::ReadOnly);
}

TEST_P(OldFilesTest, IsKeptAsItWasBesideTheNewOneBeforeItIsBroughtUpToDate) {
    const QString kept =
        m_folder.filePath(QStringLiteral("old.version-%1.coilbook").arg(GetParam()));
    const bool isOld = GetParam() < storage::newestVersion(storage::sqliteMigrations());
    expectWhatWasWritten(OpenMode::ReadOnly);
    EXPECT_FALSE(QFileInfo::exists(kept)) << "nothing is kept where nothing is changed";
    expectWhatWasWritten(OpenMode::ReadWrite);
    ASSERT_EQ(QFileInfo::exists(kept), isOld);
    if (!isOld) {
        return;
    }
    const auto connection = storage::Connection::open(kept, storage::Connection::Access::ReadOnly);
    ASSERT_TRUE(succeeded(connection));
    EXPECT_EQ(storage::readIdentity(**connection)->schemaVersion, GetParam());
    ASSERT_TRUE(QFile::remove(path()));
    ASSERT_TRUE(QFile::copy(kept, path()));
    const QByteArray before = bytesOf(kept);
    expectWhatWasWritten(OpenMode::ReadWrite);
    EXPECT_EQ(bytesOf(kept), before) << "one that is there already stays";
}

INSTANTIATE_TEST_SUITE_P(Versions, OldFilesTest, ::testing::Values(1, 5));

} // namespace
} // namespace coilbook
