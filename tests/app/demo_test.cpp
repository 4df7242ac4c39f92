#include "tests/app/program.h"

#include <QJsonObject>
#include <QSet>

namespace coilbook::testing {

namespace {

const QString kDemo = QStringLiteral("demo.coilbook");

class DemoTest : public ProgramTest {};

TEST_F(DemoTest, WritesALogbookAndNothingElse) {
    makeDemo();
    EXPECT_EQ(files(), QStringList{kDemo});
    EXPECT_TRUE(read(kDemo).startsWith("SQLite format 3"));
    EXPECT_TRUE(succeeds(run({QStringLiteral("verify"), kDemo})));
}

TEST_F(DemoTest, RefusesATargetThatExistsAndLeavesIt) {
    write(kDemo, "something else");
    EXPECT_TRUE(failsWith(run({QStringLiteral("demo"), kDemo}), 1, "demo.coilbook"));
    EXPECT_EQ(read(kDemo), "something else");
    EXPECT_EQ(files(), QStringList{kDemo});
}

TEST_F(DemoTest, NeedsAFolderThatExists) {
    EXPECT_TRUE(failsWith(run({QStringLiteral("demo"), QStringLiteral("no/demo.coilbook")}), 1,
                          "no/demo.coilbook"));
    EXPECT_EQ(files(), QStringList());
}

// Issue: two engines, and the data hold a cause for every flag.
TEST_F(DemoTest, HoldsTwoEnginesASwapAndAReasonForEveryFlag) {
    makeDemo();
    const QJsonArray engines =
        run({QStringLiteral("assess"), kDemo, QStringLiteral("--json")}).json();
    ASSERT_EQ(engines.size(), 2);
    QSet<QString> standings;
    bool offTrend = false;
    for (const QJsonValue& engine : engines) {
        for (const QJsonValue& spring : engine[QLatin1String("springs")].toArray()) {
            standings.insert(spring[QLatin1String("status")].toString());
            offTrend = offTrend || spring[QLatin1String("off_trend")].toBool();
        }
    }
    EXPECT_TRUE(standings.contains(QStringLiteral("past-limit")));
    EXPECT_TRUE(standings.contains(QStringLiteral("sound")));
    EXPECT_TRUE(offTrend);
}

} // namespace

} // namespace coilbook::testing
