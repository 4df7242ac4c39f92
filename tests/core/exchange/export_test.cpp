#include "tests/core/exchange/import_fixture.h"

#include <QFileInfo>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>

#include <unistd.h>

namespace coilbook {
namespace {

class ExportTest : public testing::ImportFixture {
protected:
    void SetUp() override {
        imported(m_store,
                 {"engine,inspected_on,engine_races,cylinder,valve,spring,reading_n,tester\n"
                  "Blue,2026-04-04,0,1,I,A,520.50,Bench\n"});
    }

    QStringList filesIn(const QString& folder) {
        return QDir(folder).entryList(QDir::Files | QDir::Hidden, QDir::Name);
    }

    LogbookStore m_store = newLogbook();
    QString m_folder = pathOf(QStringLiteral("out"));
    const QStringList m_names{QStringLiteral("logbook.json"), QStringLiteral("races.csv"),
                              QStringLiteral("readings.csv")};
};

TEST_F(ExportTest, WritesThreeFilesIntoAFolderThatItMakes) {
    ASSERT_TRUE(exportLogbook(m_store, m_folder).has_value());
    EXPECT_EQ(filesIn(m_folder), m_names);
}

TEST_F(ExportTest, ReplacesFilesOfItsNamesAndGivesTheSameBytesAgain) {
    ASSERT_TRUE(QDir().mkdir(m_folder));
    write(QStringLiteral("out/races.csv"), "old");
    ASSERT_TRUE(exportLogbook(m_store, m_folder).has_value());
    const std::string json = testing::bytesOf(m_folder + QStringLiteral("/logbook.json"));
    ASSERT_TRUE(exportLogbook(m_store, m_folder).has_value());
    EXPECT_EQ(testing::bytesOf(m_folder + QStringLiteral("/logbook.json")), json);
    EXPECT_EQ(filesIn(m_folder), m_names);
    EXPECT_NE(testing::bytesOf(m_folder + QStringLiteral("/races.csv")), "old");
}

TEST_F(ExportTest, LeavesAllOldFilesWhenOneCannotBeReplaced) {
    ASSERT_TRUE(QDir().mkpath(m_folder + QStringLiteral("/readings.csv")));
    write(QStringLiteral("out/races.csv"), "old");
    const Result<void> done = exportLogbook(m_store, m_folder);
    ASSERT_FALSE(done.has_value());
    EXPECT_EQ(done.error().fault, decltype(Error::fault)(StorageFault::CannotWriteOutput));
    EXPECT_TRUE(done.error().file.endsWith(QStringLiteral("readings.csv")));
    EXPECT_EQ(testing::bytesOf(m_folder + QStringLiteral("/races.csv")), "old");
    EXPECT_EQ(filesIn(m_folder), QStringList(QStringLiteral("races.csv")));
}

TEST_F(ExportTest, FailsWhereTheFolderCannotBeMadeOrWritten) {
    EXPECT_FALSE(exportLogbook(m_store, pathOf(QStringLiteral("no/such/folder"))).has_value());
    EXPECT_FALSE(QFileInfo::exists(pathOf(QStringLiteral("no"))));
    EXPECT_FALSE(exportLogbook(m_store, write(QStringLiteral("file"), "text")).has_value());
    if (geteuid() == 0) {
        GTEST_SKIP() << "permissions mean nothing to root";
    }
    ASSERT_TRUE(QDir().mkdir(m_folder));
    QFile::setPermissions(m_folder, QFile::ReadOwner | QFile::ExeOwner);
    EXPECT_FALSE(exportLogbook(m_store, m_folder).has_value());
    QFile::setPermissions(m_folder, QFile::ReadOwner | QFile::WriteOwner | QFile::ExeOwner);
}

TEST_F(ExportTest, PutsEveryRecordWithItsIdIntoTheWholeLogbook) {
    ASSERT_TRUE(exportLogbook(m_store, m_folder).has_value());
    QJsonParseError parsed;
    const QJsonDocument document = QJsonDocument::fromJson(
        QByteArray::fromStdString(testing::bytesOf(m_folder + QStringLiteral("/logbook.json"))),
        &parsed);
    ASSERT_EQ(parsed.error, QJsonParseError::NoError);
    const EngineLog log = logOf(m_store, QStringLiteral("Blue"));
    EXPECT_EQ(document[QStringLiteral("format")].toString(), QStringLiteral("coilbook-logbook/1"));
    const QJsonValue tester = document[QStringLiteral("testers")][0];
    EXPECT_EQ(tester[QStringLiteral("id")].toString(), log.testers.front().id.text());
    const QJsonValue engine = document[QStringLiteral("engines")][0];
    EXPECT_EQ(engine[QStringLiteral("id")].toString(), log.engine.id.text());
    EXPECT_EQ(engine[QStringLiteral("limit_lbf")].toDouble(), 5.0);
    const QJsonValue sitting = engine[QStringLiteral("sittings")][0];
    EXPECT_EQ(sitting[QStringLiteral("tester")].toString(), log.testers.front().id.text());
    const QJsonValue reading = engine[QStringLiteral("readings")][0];
    EXPECT_EQ(reading[QStringLiteral("id")].toString(), log.readings.front().id.text());
    EXPECT_EQ(reading[QStringLiteral("spring")].toString(), log.springs.front().id.text());
    EXPECT_EQ(reading[QStringLiteral("value")][QStringLiteral("digits")].toString(),
              QStringLiteral("520.50"));
    EXPECT_EQ(reading[QStringLiteral("value")][QStringLiteral("unit")].toString(),
              QStringLiteral("N"));
}

TEST_F(ExportTest, TheJsonFileHoldsTheUsersSay) {
    const EngineId engine = m_store.engines()->front().id;
    const EngineLog log = m_store.engineLog(engine).value();
    const SpringId spring = log.springs.front().id;
    Engine judged = log.engine;
    judged.springsRunIn = true;
    judged.exposureUnit = ExposureUnit::Laps;
    Running running;
    running.id = RunningId::make();
    running.engine = engine;
    running.ranOn = QDate(2026, 4, 9);
    running.raceThousandths = 250;
    const Authorship author{QStringLiteral("Kim"), m_clock.now(), QStringLiteral("tested again")};
    const LevelChange change{LevelChangeId::make(), engine, spring, LevelChangeKind::ValveSeatWork,
                             QDate(2026, 4, 8),     0,      {},     true};
    const Decision decision{DecisionId::make(), log.inspections.front().id, spring,
                            ReadingJudgement::DropDenied, author};
    ASSERT_TRUE(m_store
                    .applyAll({AmendEngine{judged, author}, AddRunning{running},
                               AddLevelChange{change}, DecideReading{decision}},
                              m_clock)
                    .has_value());
    ASSERT_TRUE(exportLogbook(m_store, m_folder).has_value());
    const QJsonObject written =
        QJsonDocument::fromJson(
            QByteArray::fromStdString(testing::bytesOf(m_folder + QStringLiteral("/logbook.json"))))
            .object()[QStringLiteral("engines")]
            .toArray()
            .first()
            .toObject();
    const auto first = [&](const char* list, const char* key) -> QJsonValue {
        return written[QLatin1String(list)].toArray().first().toObject()[QLatin1String(key)];
    };
    EXPECT_TRUE(written[QStringLiteral("springs_run_in")].toBool());
    EXPECT_EQ(written[QStringLiteral("exposure_unit")].toString(), QStringLiteral("laps"));
    EXPECT_EQ(first("running", "ran_on").toString(), QStringLiteral("2026-04-09"));
    EXPECT_TRUE(first("running", "laps").isNull());
    EXPECT_EQ(first("running", "part_of_race").toDouble(), 0.25);
    EXPECT_EQ(first("level_changes", "kind").toString(), QStringLiteral("valve_seat_work"));
    EXPECT_EQ(first("level_changes", "spring").toString(), spring.text());
    EXPECT_TRUE(first("level_changes", "withdrawn").toBool());
    EXPECT_EQ(first("decisions", "judgement").toString(), QStringLiteral("drop_denied"));
    EXPECT_EQ(first("decisions", "who").toString(), QStringLiteral("Kim"));
    EXPECT_EQ(written[QStringLiteral("amendments")].toArray().size(), 2);
}

} // namespace
} // namespace coilbook
