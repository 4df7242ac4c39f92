#include "tests/app/program.h"
#include "tests/app/season.h"

#include <QFile>
#include <QJsonObject>
#include <QRegularExpression>

#include <algorithm>

namespace coilbook::testing {

namespace {

const QString kLogbook = QStringLiteral("season.coilbook");

class AssessTest : public ProgramTest {
protected:
    void SetUp() override {
        ProgramTest::SetUp();
        import(kLogbook, kSeason);
    }

    [[nodiscard]] ProgramRun assess(const QStringList& options) const {
        return run(QStringList{QStringLiteral("assess"), kLogbook} + options);
    }

    [[nodiscard]] QJsonObject blue(const QStringList& options = {}) const {
        const QJsonArray engines =
            assess(options + QStringList{QStringLiteral("--engine"), QStringLiteral("Blue"),
                                         QStringLiteral("--json")})
                .json();
        EXPECT_EQ(engines.size(), 1);
        return engines.first().toObject();
    }
};

QJsonValue member(const QJsonValue& value, const char* name) {
    return value[QLatin1String(name)];
}

QByteArray dataFile(const char* name) {
    QFile file(QStringLiteral(COILBOOK_TEST_DATA "/") + QLatin1String(name));
    EXPECT_TRUE(file.open(QIODevice::ReadOnly)) << name;
    return file.readAll();
}

// The contract's members in its order (section 4); the figures are counted by hand from kSeason.
TEST_F(AssessTest, GivesAnObjectPerEngineByName) {
    const QJsonArray engines = assess({QStringLiteral("--json")}).json();
    ASSERT_EQ(engines.size(), 2);
    EXPECT_EQ(member(engines[0], "format"), QStringLiteral("coilbook-assessment/1"));
    EXPECT_EQ(member(engines[0], "engine"), QStringLiteral("Blue"));
    EXPECT_EQ(member(engines[0], "as_of"), QStringLiteral("2026-04-02"));
    EXPECT_EQ(member(engines[0], "engine_races"), 6);
    EXPECT_EQ(member(engines[1], "engine"), QStringLiteral("Red"));
    EXPECT_EQ(member(engines[1], "engine_races"), 2);
}

TEST_F(AssessTest, GivesTheMeasuredLossOfEachSpring) {
    const QJsonArray springs = blue().value(QLatin1String("springs")).toArray();
    ASSERT_EQ(springs.size(), 2);
    EXPECT_EQ(member(springs[0], "valve"), QStringLiteral("I"));
    EXPECT_EQ(member(springs[0], "baseline_lbf"), 121.5);
    EXPECT_EQ(member(springs[0], "latest_lbf"), 117.5);
    EXPECT_EQ(member(springs[0], "measured_loss_lbf"), 4.0);
    EXPECT_EQ(member(springs[1], "valve"), QStringLiteral("E"));
    EXPECT_EQ(member(springs[1], "measured_loss_lbf"), 6.0);
    EXPECT_EQ(member(springs[1], "status"), QStringLiteral("past-limit"));
}

TEST_F(AssessTest, JudgesByTheLimitAndTheRacesAheadThatWereAskedFor) {
    const QJsonObject engine =
        blue({QStringLiteral("--limit"), QStringLiteral("4"), QStringLiteral("--ahead=0")});
    EXPECT_EQ(engine.value(QLatin1String("limit_lbf")), 4.0);
    EXPECT_EQ(engine.value(QLatin1String("races_ahead")), 0);
    for (const QJsonValue& spring : engine.value(QLatin1String("springs")).toArray()) {
        EXPECT_EQ(member(spring, "status"), QStringLiteral("past-limit"));
    }
}

TEST_F(AssessTest, LeavesOutWhatWasRecordedAfterTheDay) {
    const QJsonObject engine = blue({QStringLiteral("--as-of"), QStringLiteral("2026-03-20")});
    EXPECT_EQ(engine.value(QLatin1String("as_of")), QStringLiteral("2026-03-20"));
    EXPECT_EQ(engine.value(QLatin1String("engine_races")), 3);
    EXPECT_EQ(engine.value(QLatin1String("inspections")).toArray().size(), 2);
    const QJsonValue spring = engine.value(QLatin1String("springs")).toArray().first();
    EXPECT_EQ(member(spring, "latest_on"), QStringLiteral("2026-03-15"));
    EXPECT_EQ(member(spring, "measured_loss_lbf"), 2.0);
}

TEST_F(AssessTest, AllowsALaterDayThanTheNewestRecorded) {
    const QJsonObject engine = blue({QStringLiteral("--as-of"), QStringLiteral("2030-01-01")});
    EXPECT_EQ(engine.value(QLatin1String("as_of")), QStringLiteral("2030-01-01"));
    EXPECT_EQ(engine.value(QLatin1String("engine_races")), 6);
}

TEST_F(AssessTest, HasEmptyListsForADayBeforeAllData) {
    const QJsonObject engine = blue({QStringLiteral("--as-of"), QStringLiteral("2025-12-31")});
    EXPECT_TRUE(engine.value(QLatin1String("inspections")).isArray());
    EXPECT_TRUE(engine.value(QLatin1String("inspections")).toArray().isEmpty());
    EXPECT_TRUE(engine.value(QLatin1String("springs")).toArray().isEmpty());
}

TEST_F(AssessTest, PrintsFourDecimalsAndNeverAnExponent) {
    const QByteArray text = assess({QStringLiteral("--json")}).out;
    EXPECT_TRUE(text.contains("\"baseline_lbf\": 121.5000") ||
                text.contains("\"baseline_lbf\":121.5000"))
        << text.constData();
    const QRegularExpression exponent(QStringLiteral("[0-9][eE][+-]?[0-9]|nan|inf"));
    EXPECT_FALSE(exponent.match(QString::fromUtf8(text)).hasMatch());
}

TEST_F(AssessTest, IsTheSameOnEveryRun) {
    EXPECT_EQ(assess({QStringLiteral("--json")}).out, assess({QStringLiteral("--json")}).out);
}

// The season is one of those with reference results (tests/data/wear/SOURCE).
TEST_F(AssessTest, IsTheSameHoweverTheReadingsWereSpreadOverFilesAndRows) {
    QList<QByteArray> rows = dataFile("wear/engine09_readings.csv").replace('\r', "").split('\n');
    const QByteArray header = rows.takeFirst() + '\n';
    rows.removeAll(QByteArray());
    const QByteArray whole = header + rows.join('\n');
    QByteArray firstHits = header;
    QByteArray otherHits = header;
    std::reverse(rows.begin(), rows.end());
    for (const QByteArray& row : rows) {
        (row.split(',').at(6) == "1" ? firstHits : otherHits) += row + '\n';
    }
    ASSERT_GT(firstHits.size(), header.size());
    ASSERT_GT(otherHits.size(), header.size());
    import(QStringLiteral("whole.coilbook"), whole);
    import(QStringLiteral("parts.coilbook"), otherHits);
    import(QStringLiteral("parts.coilbook"), firstHits);
    const QString json = QStringLiteral("--json");
    const ProgramRun expected =
        run({QStringLiteral("assess"), QStringLiteral("whole.coilbook"), json});
    ASSERT_EQ(expected.json().size(), 1);
    EXPECT_EQ(run({QStringLiteral("assess"), QStringLiteral("parts.coilbook"), json}).out,
              expected.out);
}

TEST_F(AssessTest, PrintsATableForPeople) {
    const ProgramRun table = assess({});
    ASSERT_TRUE(succeeds(table));
    for (const char* word :
         {"Blue", "Red", "1 I", "1 E", "S-01", "121.5", "117.5", "past the limit"}) {
        EXPECT_TRUE(table.out.contains(word)) << word << "\n" << table.out.constData();
    }
    EXPECT_TRUE(assess({QStringLiteral("--engine=Red")}).out.contains("Red"));
    EXPECT_FALSE(assess({QStringLiteral("--engine=Red")}).out.contains("Blue"));
}

TEST_F(AssessTest, NamesTheEnginesThereAreWhenItDoesNotKnowOne) {
    const ProgramRun unknown = assess({QStringLiteral("--engine"), QStringLiteral("Green")});
    EXPECT_TRUE(failsWith(unknown, 1, "Green"));
    EXPECT_TRUE(failsWith(unknown, 1, "Blue"));
    EXPECT_TRUE(failsWith(unknown, 1, "Red"));
}

TEST_F(AssessTest, LeavesTheLogbookAndItsFolderAsTheyWere) {
    const QByteArray before = read(kLogbook);
    ASSERT_TRUE(succeeds(assess({})));
    EXPECT_EQ(read(kLogbook), before);
    EXPECT_EQ(files(), QStringList{kLogbook});
}

TEST_F(AssessTest, NeedsNoWritablePlace) {
    ASSERT_TRUE(QFile::setPermissions(path(kLogbook), QFile::ReadOwner));
    ASSERT_TRUE(
        QFile::setPermissions(path(QStringLiteral(".")), QFile::ReadOwner | QFile::ExeOwner));
    EXPECT_TRUE(succeeds(assess({})));
    EXPECT_TRUE(succeeds(run({QStringLiteral("verify"), kLogbook})));
    ASSERT_TRUE(QFile::setPermissions(path(QStringLiteral(".")),
                                      QFile::ReadOwner | QFile::WriteOwner | QFile::ExeOwner));
}

TEST_F(AssessTest, SaysWhatIsWrongWithAFileThatIsNoLogbook) {
    write(QStringLiteral("text.coilbook"), QByteArray(5000, 'x'));
    write(QStringLiteral("empty.coilbook"), "");
    for (const char* name : {"text.coilbook", "empty.coilbook", "missing.coilbook"}) {
        EXPECT_TRUE(failsWith(run({QStringLiteral("assess"), QString::fromLatin1(name)}), 1, name));
    }
    EXPECT_EQ(read(QStringLiteral("text.coilbook")), QByteArray(5000, 'x'));
    EXPECT_EQ(read(QStringLiteral("empty.coilbook")), QByteArray());
    EXPECT_FALSE(files().contains(QStringLiteral("missing.coilbook")));
}

} // namespace

} // namespace coilbook::testing
