#include "core/exchange/export.h"
#include "core/storage/salvage.h"
#include "tests/core/storage/logbook_fixture.h"
#include "tests/durability/content.h"
#include "tests/durability/scripted_session.h"
#include "tests/durability/sweep.h"

#include <QDir>
#include <QFile>

#include <cstdio>
#include <random>

namespace coilbook::testing {
namespace {

/// Copies of a sound logbook, each with one byte changed somewhere.
class ByteFlipTest : public ::testing::Test {
protected:
    void SetUp() override {
        const QDir folder(m_folder.path());
        ASSERT_TRUE(folder.mkdir(QStringLiteral("export")));
        {
            Result<LogbookStore> store = LogbookStore::create(path());
            ASSERT_TRUE(succeeded(store));
            for (const ScriptedSession& session : scriptedSessions(folder.path(), folder.path())) {
                if (session.name == "corrections" || session.name == "imports") {
                    for (const ScriptedSession::Step& step : session.steps) {
                        ASSERT_TRUE(succeeded(step(*store)));
                    }
                }
            }
            m_content = contentOf(*store).value();
        }
        QFile file(path());
        ASSERT_TRUE(file.open(QIODevice::ReadOnly));
        m_bytes = file.readAll();
    }

    void writeWithOneByteChanged() {
        QByteArray bytes = m_bytes;
        const qsizetype at =
            std::uniform_int_distribution<qsizetype>(0, bytes.size() - 1)(m_random);
        bytes[at] =
            static_cast<char>(bytes[at] ^ std::uniform_int_distribution<int>(1, 255)(m_random));
        QFile file(path());
        ASSERT_TRUE(file.open(QIODevice::WriteOnly));
        ASSERT_EQ(file.write(bytes), bytes.size());
        m_changed = bytes;
    }

    /// What can be read of it holds no reading that was never written.
    void expectNothingFalseSalvaged() {
        const Result<Salvaged> readable = salvage(path());
        if (!readable) {
            return;
        }
        const Result<LogbookStore> store = LogbookStore::open(readable->path, OpenMode::ReadOnly);
        ASSERT_TRUE(succeeded(store));
        const Result<std::vector<EngineSummary>> engines = store->engines();
        ASSERT_TRUE(succeeded(engines));
        for (const EngineSummary& engine : *engines) {
            const Result<EngineLog> log = store->engineLog(engine.id);
            if (!log) { // the row of the engine itself is damaged: then that is found
                EXPECT_FALSE(store->verify()->findings.empty()) << log.error().detail.toStdString();
                continue;
            }
            for (const Reading& reading : log->readings) {
                EXPECT_TRUE(m_content.contains(reading.value.text().toUtf8()))
                    << qPrintable(reading.value.text());
            }
        }
        m_salvaged += exportLogbook(*store, m_folder.filePath(QStringLiteral("export"))) ? 1 : 0;
    }

    [[nodiscard]] QByteArray bytesNow() const {
        QFile file(path());
        EXPECT_TRUE(file.open(QIODevice::ReadOnly));
        return file.readAll();
    }

    [[nodiscard]] QString path() const {
        return m_folder.filePath(QStringLiteral("shop.coilbook"));
    }

    std::mt19937 m_random{20260503};
    QTemporaryDir m_folder;
    QByteArray m_content;
    QByteArray m_bytes;
    QByteArray m_changed;
    int m_salvaged = 0;
};

TEST_F(ByteFlipTest, IsFoundByVerifyWhereverItChangesWhatIsRead) {
    const int flips = repetitions("COILBOOK_FLIPS", 100);
    int refused = 0;
    int found = 0;
    int exported = 0;
    for (int i = 0; i < flips; ++i) {
        SCOPED_TRACE(i);
        writeWithOneByteChanged();
        expectNothingFalseSalvaged();
        const Result<LogbookStore> store = LogbookStore::open(path(), OpenMode::ReadOnly);
        if (!store) {
            ++refused;
            continue;
        }
        const Result<VerifyReport> report = store->verify();
        const bool isFound = !report || !report->findings.empty();
        found += isFound ? 1 : 0;
        const Result<QByteArray> content = contentOf(*store);
        EXPECT_TRUE(isFound || (content && *content == m_content))
            << "a changed logbook was verified as sound";
        exported += exportLogbook(*store, m_folder.filePath(QStringLiteral("export"))) ? 1 : 0;
        EXPECT_TRUE(bytesNow() == m_changed) << "reading a damaged file has changed it";
    }
    EXPECT_GT(found, 0);
    std::printf("%d bytes changed in a file of %lld: %d not opened, %d found by verify, %d exported"
                " as they are, %d as far as they can be read; 0 changed readings not found\n",
                flips, static_cast<long long>(m_bytes.size()), refused, found, exported,
                m_salvaged);
}

} // namespace
} // namespace coilbook::testing
