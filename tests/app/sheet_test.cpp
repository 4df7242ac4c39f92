#include "tests/app/program.h"
#include "tests/app/season.h"

#include <QFile>
#include <QRegularExpression>

namespace coilbook::testing {

namespace {

const QString kLogbook = QStringLiteral("season.coilbook");
const QString kSheet = QStringLiteral("sheet.pdf");

class SheetTest : public ProgramTest {
protected:
    void SetUp() override {
        ProgramTest::SetUp();
        import(kLogbook, kSeason);
    }

    [[nodiscard]] ProgramRun sheet(const QStringList& options = {}) const {
        return run(QStringList{QStringLiteral("sheet"), kLogbook, QStringLiteral("--engine"),
                               QStringLiteral("Blue"), QStringLiteral("--out"), kSheet} +
                   options);
    }

    [[nodiscard]] QByteArray info() const { return tool(QStringLiteral("pdfinfo"), {kSheet}).out; }

    [[nodiscard]] QByteArray text() const {
        return tool(QStringLiteral("pdftotext"),
                    {QStringLiteral("-layout"), kSheet, QStringLiteral("-")})
            .out;
    }
};

TEST_F(SheetTest, IsOnePageOfA4UnlessLetterIsAskedFor) {
    ASSERT_TRUE(succeeds(sheet()));
    EXPECT_TRUE(info().contains("Pages:           1\n")) << info().constData();
    EXPECT_TRUE(info().contains("(A4)")) << info().constData();
    ASSERT_TRUE(succeeds(sheet({QStringLiteral("--paper"), QStringLiteral("letter")})));
    EXPECT_TRUE(info().contains("Pages:           1\n")) << info().constData();
    EXPECT_TRUE(info().contains("(letter)")) << info().constData();
}

TEST_F(SheetTest, CarriesTheEngineItsSpringsAndTheirReadings) {
    ASSERT_TRUE(succeeds(sheet()));
    const QByteArray page = text();
    for (const char* word : {"Blue", "S-01", "S-02", "121.5", "117.5", "2026-04-02"}) {
        EXPECT_TRUE(page.contains(word)) << word << "\n" << page.constData();
    }
}

TEST_F(SheetTest, CarriesASealThatTheLogbookIsLaterFoundToHavePassedThrough) {
    ASSERT_TRUE(succeeds(sheet()));
    const QRegularExpression printed(QStringLiteral("Seal of the logbook (\\d+:[0-9a-f]{16})"));
    const QRegularExpressionMatch seal = printed.match(QString::fromUtf8(text()));
    ASSERT_TRUE(seal.hasMatch()) << text().constData();
    const QStringList asked{QStringLiteral("verify"), kLogbook, QStringLiteral("--seal"),
                            seal.captured(1)};
    EXPECT_TRUE(succeeds(run(asked)));
    import(kLogbook, QByteArray(kSeason).replace("Blue", "Green"));
    ASSERT_TRUE(succeeds(sheet()));
    EXPECT_EQ(printed.match(QString::fromUtf8(text())).captured(1), seal.captured(1))
        << "another engine's data";
    EXPECT_TRUE(succeeds(run(asked)));
}

TEST_F(SheetTest, LeavesOutWhatWasRecordedAfterTheDay) {
    ASSERT_TRUE(succeeds(sheet({QStringLiteral("--as-of"), QStringLiteral("2026-03-20")})));
    EXPECT_TRUE(text().contains("119.5"));
    EXPECT_FALSE(text().contains("117.5"));
}

TEST_F(SheetTest, ReplacesAnOlderSheetAndLeavesNothingElse) {
    write(kSheet, "old");
    ASSERT_TRUE(succeeds(sheet()));
    EXPECT_TRUE(read(kSheet).startsWith("%PDF-"));
    EXPECT_EQ(files(), QStringList({kLogbook, kSheet}));
}

TEST_F(SheetTest, LeavesTheOlderSheetWhenItFails) {
    write(kSheet, "old");
    EXPECT_TRUE(failsWith(run({QStringLiteral("sheet"), kLogbook, QStringLiteral("--engine=Green"),
                               QStringLiteral("--out"), kSheet}),
                          1, "Green"));
    EXPECT_EQ(read(kSheet), "old");
}

TEST_F(SheetTest, LeavesNothingInTheTemporaryFolder) {
    const ProgramRun left = shell(QStringLiteral(
        "mkdir tmp; TMPDIR=$PWD/tmp \"$coilbook\" sheet season.coilbook --engine Blue --out s.pdf;"
        "ls -A tmp"));
    ASSERT_TRUE(succeeds(left));
    EXPECT_EQ(left.out, QByteArray());
}

TEST_F(SheetTest, SaysWhenItsFolderIsNotThere) {
    EXPECT_TRUE(failsWith(run({QStringLiteral("sheet"), kLogbook, QStringLiteral("--engine=Blue"),
                               QStringLiteral("--out=no/sheet.pdf")}),
                          1, "no/sheet.pdf"));
    EXPECT_EQ(files(), QStringList{kLogbook});
}

} // namespace

} // namespace coilbook::testing
