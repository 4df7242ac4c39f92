#include "tests/app/program.h"
#include "tests/app/season.h"

namespace coilbook::testing {

namespace {

const QString kLogbook = QStringLiteral("season.coilbook");

class StreamsTest : public ProgramTest {
protected:
    void SetUp() override {
        ProgramTest::SetUp();
        import(kLogbook, kSeason);
    }
};

TEST_F(StreamsTest, EndsWithOneWhenTheOutputIsFull) {
    EXPECT_TRUE(failsWith(shell(QStringLiteral("\"$coilbook\" assess season.coilbook >/dev/full")),
                          1, "standard output"));
    EXPECT_TRUE(
        failsWith(shell(QStringLiteral("\"$coilbook\" --help >/dev/full")), 1, "standard output"));
}

TEST_F(StreamsTest, EndsWithOneWhenTheOutputIsClosed) {
    EXPECT_TRUE(failsWith(shell(QStringLiteral("\"$coilbook\" assess season.coilbook >&-")), 1,
                          "standard output"));
}

TEST_F(StreamsTest, EndsWithOneWhenNobodyReadsTheOutput) {
    // The reader of the pipe has gone before the program starts to write.
    const ProgramRun broken = shell(QStringLiteral(
        "{ sleep 0.3; \"$coilbook\" assess season.coilbook; echo $? >code; } | true; sleep 1"));
    EXPECT_EQ(read(QStringLiteral("code")), "1\n");
    EXPECT_EQ(broken.err.count("coilbook: "), 1);
}

TEST_F(StreamsTest, ChangesNoLogbookWhenAnImportCannotSaySo) {
    const QByteArray before = read(kLogbook);
    write(QStringLiteral("more.csv"), "engine,race,raced_on\nBlue,1,2026-03-05\n");
    EXPECT_TRUE(
        failsWith(shell(QStringLiteral("\"$coilbook\" import season.coilbook more.csv >/dev/full")),
                  1, "standard output"));
    EXPECT_EQ(read(kLogbook), before);
    EXPECT_TRUE(
        failsWith(shell(QStringLiteral("\"$coilbook\" import new.coilbook more.csv >/dev/full")), 1,
                  "standard output"));
    EXPECT_EQ(files(), QStringList({QStringLiteral("more.csv"), kLogbook}));
}

} // namespace

} // namespace coilbook::testing
