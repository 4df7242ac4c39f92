#include "core/storage/row_checksum.h"
#include "core/storage/seals.h"
#include "tests/core/storage/logbook_fixture.h"

#include <QCryptographicHash>

namespace coilbook {
namespace {

using testing::failedWith;
using testing::succeeded;

class SealsTest : public testing::LogbookTest {
protected:
    void SetUp() override {
        LogbookTest::SetUp();
        addEngine();
        startInspection();
    }

    [[nodiscard]] QVariant ask(const QString& sql) const {
        const auto connection =
            storage::Connection::open(path(), storage::Connection::Access::ReadOnly);
        EXPECT_TRUE(succeeded(connection));
        const Result<QVariant> answer = (*connection)->scalar(sql);
        EXPECT_TRUE(succeeded(answer));
        return answer ? *answer : QVariant();
    }

    [[nodiscard]] int seals() const {
        return ask(QStringLiteral("SELECT max(number) FROM seal")).toInt();
    }

    [[nodiscard]] qint64 newest(const EngineId& engine) {
        const Result<std::optional<NotedSeal>> seal = store().newestSeal(engine);
        EXPECT_TRUE(succeeded(seal));
        return seal && *seal ? (*seal)->number : 0;
    }
};

TEST_F(SealsTest, TheDigestIsThatOfTheDocumentedForm) {
    // The form is written out here and hashed by Qt; nothing of ours takes part.
    const QByteArray content(64, 'b');
    const QByteArray canonical =
        "t4:sealt64:" + QByteArray(64, 'a') + "i8;t4:racet2:r1i1;t64:" + content + "nn";
    storage::SealContent seal;
    seal.subject = QStringLiteral("race");
    seal.record = QStringLiteral("r1");
    seal.content = QByteArray::fromHex(content);
    EXPECT_EQ(storage::sealDigest({7, QString(64, QLatin1Char('a'))}, seal).toLatin1(),
              QCryptographicHash::hash(canonical, QCryptographicHash::Sha256).toHex());
}

TEST_F(SealsTest, ANewLogbookBeginsWithASealAndEachRowGetsOne) {
    // The beginning; engine, spring, inspection, sitting.
    EXPECT_EQ(seals(), 1 + 4);
    EXPECT_EQ(ask(QStringLiteral("SELECT subject FROM seal WHERE number = 1")).toString(),
              QStringLiteral("created"));
    const Reading row = reading(1, 1300);
    ASSERT_TRUE(succeeded(apply(RecordReadings{{row}, {}})));
    EXPECT_EQ(seals(), 6);
    EXPECT_EQ(ask(QStringLiteral("SELECT record_id FROM seal WHERE number = 6")).toString(),
              row.id.text());
    EXPECT_EQ(ask(QStringLiteral("SELECT seal FROM reading")).toInt(), 6);
}

TEST_F(SealsTest, TheSameChangeOnceMoreIsNotSealedAgain) {
    const RecordReadings change{{reading(1, 1300)}, {}};
    ASSERT_TRUE(succeeded(apply(change)));
    const int before = seals();
    ASSERT_TRUE(succeeded(apply(change)));
    EXPECT_EQ(seals(), before);
}

TEST_F(SealsTest, AnAmendedFactIsSealedWithTheStateThatItReplaces) {
    const int first = ask(QStringLiteral("SELECT seal FROM engine")).toInt();
    const QString before =
        ask(QStringLiteral("SELECT content FROM seal WHERE number = %1").arg(first)).toString();
    m_engine.serial = QStringLiteral("17");
    ASSERT_TRUE(succeeded(apply(AmendEngine{m_engine, author()})));
    // The amendment and the engine.
    EXPECT_EQ(seals(), 5 + 2);
    EXPECT_EQ(ask(QStringLiteral("SELECT replaces FROM seal WHERE number = 7")).toInt(), first);
    EXPECT_EQ(ask(QStringLiteral("SELECT replaced FROM seal WHERE number = 7")).toString(), before);
    EXPECT_EQ(ask(QStringLiteral("SELECT seal FROM engine")).toInt(), 7);
}

TEST_F(SealsTest, AnImportSealsTheRowsOfATableTogether) {
    const int before = seals();
    auto batch = store().beginBatch();
    ASSERT_TRUE(succeeded(batch));
    ASSERT_TRUE(succeeded((*batch)->add(m_spring))); // is there
    for (int hit = 1; hit <= 4500; ++hit) {
        ASSERT_TRUE(succeeded((*batch)->add(reading(hit, 1300))));
    }
    ASSERT_TRUE(succeeded((*batch)->commit()));
    EXPECT_EQ(seals(), before + 1 + 3);
    EXPECT_EQ(
        ask(QStringLiteral("SELECT sum(row_count) FROM seal WHERE subject = 'reading'")).toInt(),
        4500);
    EXPECT_EQ(ask(QStringLiteral("SELECT count(*) FROM reading r JOIN seal s ON s.number = r.seal"
                                 " AND s.subject = 'reading'"))
                  .toInt(),
              4500);
    EXPECT_EQ(ask(QStringLiteral("SELECT sum(row_count) FROM seal WHERE number > %1"
                                 " AND subject = 'spring'")
                      .arg(before))
                  .toInt(),
              0);
}

TEST_F(SealsTest, ARowThatTheImportFindsThereIsNotInItsSeal) {
    const Reading known = reading(1, 1300);
    ASSERT_TRUE(succeeded(apply(RecordReadings{{known}, {}})));
    const Reading fresh = reading(2, 1310);
    auto batch = store().beginBatch();
    ASSERT_TRUE(succeeded(batch));
    for (const Reading& row : {known, fresh, fresh}) {
        ASSERT_TRUE(succeeded((*batch)->add(row)));
    }
    ASSERT_TRUE(succeeded((*batch)->commit()));
    const int block = seals();
    EXPECT_EQ(ask(QStringLiteral("SELECT row_count FROM seal WHERE number = %1").arg(block)), 1);
    const QByteArray digest =
        storage::rowDigest(QStringLiteral("reading"), storage::Rows<Reading>::values(fresh));
    EXPECT_EQ(
        ask(QStringLiteral("SELECT content FROM seal WHERE number = %1").arg(block)).toByteArray(),
        QCryptographicHash::hash(digest, QCryptographicHash::Sha256).toHex());
}

TEST_F(SealsTest, TheNewestSealOfAnEngineMovesWithItsOwnDataOnly) {
    const qint64 first = newest(m_engine.id);
    EXPECT_EQ(first, seals());
    Engine other = m_engine;
    other.id = EngineId::make();
    other.name = QStringLiteral("Red");
    ASSERT_TRUE(succeeded(apply(AddEngine{other, {}, {}})));
    EXPECT_EQ(newest(m_engine.id), first);
    EXPECT_EQ(newest(other.id), seals());
    ASSERT_TRUE(succeeded(apply(RecordReadings{{reading(1, 1300)}, {}})));
    EXPECT_EQ(newest(m_engine.id), seals());
    m_spring.batch = QStringLiteral("B-2");
    ASSERT_TRUE(succeeded(apply(AmendSpring{m_spring, author()})));
    EXPECT_EQ(newest(m_engine.id), seals());
    EXPECT_LT(newest(other.id), seals());
    EXPECT_EQ(newest(EngineId::make()), 0);
}

TEST_F(SealsTest, SealingAnewCoversAllRowsAndSaysWhy) {
    ASSERT_TRUE(succeeded(store().sealAnew(SealBeginning::Restored)));
    const QString last = QStringLiteral(" FROM seal ORDER BY number DESC LIMIT 1");
    EXPECT_EQ(ask(QStringLiteral("SELECT subject") + last).toString(), QStringLiteral("restored"));
    EXPECT_EQ(ask(QStringLiteral("SELECT row_count") + last).toInt(), 4);
    EXPECT_EQ(newest(m_engine.id), seals());
}

TEST_F(SealsTest, SealsAreNeitherChangedNorDeleted) {
    for (const char* sql : {"UPDATE seal SET row_count = 2", "DELETE FROM seal"}) {
        EXPECT_TRUE(failedWith(StorageFault::Conflict, runBeside(QString::fromLatin1(sql)))) << sql;
    }
}

TEST_F(SealsTest, AChangeThatFailsLeavesNoSeal) {
    const int before = seals();
    EXPECT_FALSE(apply(RecordReadings{{reading(1, 1300), reading(1, 1310)}, {}}));
    EXPECT_EQ(seals(), before);
}

} // namespace
} // namespace coilbook
