#include "core/storage/salvage.h"
#include "tests/core/storage/logbook_fixture.h"

#include <QFile>

#include <set>

namespace coilbook {
namespace {

using testing::succeeded;

class SalvageTest : public testing::LogbookTest {
protected:
    void SetUp() override {
        LogbookTest::SetUp();
        addEngine();
        startInspection();
        std::vector<Reading> readings;
        for (int hit = 1; hit <= 400; ++hit) {
            readings.push_back(reading(hit, 5000 + hit));
            m_written.insert(readings.back().value.text());
        }
        ASSERT_TRUE(succeeded(apply(RecordReadings{readings, {}})));
        closeStore();
        QFile file(path());
        ASSERT_TRUE(file.open(QIODevice::ReadOnly));
        m_bytes = file.readAll();
    }

    void writeBack(const QByteArray& bytes) {
        QFile file(path());
        ASSERT_TRUE(file.open(QIODevice::WriteOnly));
        ASSERT_EQ(file.write(bytes), bytes.size());
        m_bytes = bytes;
    }

    /// The values of the readings in what could be read; each of them was written once.
    std::set<QString> readable(const Salvaged& salvaged) {
        std::set<QString> values;
        const Result<LogbookStore> store = LogbookStore::open(salvaged.path, OpenMode::ReadOnly);
        EXPECT_TRUE(succeeded(store));
        EXPECT_TRUE(succeeded(store->verify()));
        const Result<EngineLog> log = store->engineLog(m_engine.id);
        EXPECT_TRUE(succeeded(log));
        for (const Reading& each : log->readings) {
            EXPECT_TRUE(m_written.contains(each.value.text()));
            values.insert(each.value.text());
        }
        EXPECT_EQ(values.size(), log->readings.size());
        QFile file(path());
        EXPECT_TRUE(file.open(QIODevice::ReadOnly));
        EXPECT_EQ(file.readAll(), m_bytes) << "the damaged file has been changed";
        return values;
    }

    std::set<QString> m_written;
    QByteArray m_bytes;
};

TEST_F(SalvageTest, OfASoundLogbookEverythingIsThere) {
    const Result<Salvaged> salvaged = salvage(path());
    ASSERT_TRUE(succeeded(salvaged));
    EXPECT_EQ(salvaged->left, 0);
    EXPECT_EQ(salvaged->altered, 0);
    EXPECT_FALSE(salvaged->hasGaps);
    EXPECT_EQ(readable(*salvaged), m_written);
}

TEST_F(SalvageTest, AnUnreadablePageCostsWhatIsOnItAndBetweenButNotBothEnds) {
    // A page full of readings; leaf pages of a table without row ids begin with 10.
    constexpr qsizetype kPage = 4096;
    QByteArray bytes = m_bytes;
    std::vector<qsizetype> leaves;
    for (qsizetype page = kPage; page < bytes.size(); page += kPage) {
        if (bytes[page] == 10 && bytes.mid(page, kPage).contains(m_sitting.id.text().toUtf8())) {
            leaves.push_back(page);
        }
    }
    ASSERT_GT(leaves.size(), 4U);
    const qsizetype hit = leaves[leaves.size() / 2];
    bytes.replace(hit, kPage, QByteArray(kPage, '\xff'));
    writeBack(bytes);
    const Result<Salvaged> salvaged = salvage(path());
    ASSERT_TRUE(succeeded(salvaged));
    EXPECT_TRUE(salvaged->hasGaps);
    const std::set<QString> values = readable(*salvaged);
    EXPECT_LT(values.size(), m_written.size());
    EXPECT_GT(values.size(), m_written.size() * 3 / 4);
}

TEST_F(SalvageTest, AChangedReadingIsLeftOutAndAChangedEngineIsKeptForWhatHangsOnIt) {
    ASSERT_TRUE(succeeded(runBeside(QStringLiteral("DROP TRIGGER reading_is_never_changed"))));
    ASSERT_TRUE(
        succeeded(runBeside(QStringLiteral("UPDATE reading SET digits = 99999 WHERE hit = 17"))));
    ASSERT_TRUE(succeeded(runBeside(QStringLiteral("UPDATE engine SET serial = 'changed'"))));
    QFile file(path());
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    m_bytes = file.readAll();
    file.close();
    const Result<Salvaged> salvaged = salvage(path());
    ASSERT_TRUE(succeeded(salvaged));
    EXPECT_EQ(salvaged->left, 1);
    EXPECT_EQ(salvaged->altered, 1);
    EXPECT_EQ(readable(*salvaged).size(), m_written.size() - 1);
}

TEST_F(SalvageTest, WhatIsNoLogbookStaysNone) {
    writeBack(QByteArray(9000, 'x'));
    EXPECT_FALSE(salvage(path()));
}

} // namespace
} // namespace coilbook
