// What a file brings reaches the terminal without its control characters: they are escape codes
// there.

#include "tests/app/program.h"

#include <algorithm>

namespace coilbook::testing {

namespace {

const QString kLogbook = QStringLiteral("season.coilbook");
const QString kCsv = QStringLiteral("readings.csv");

/// Turns the screen red, rings the bell, names the window, and turns the writing round.
const QByteArray kCodes = "\x1b[31m\x07\x1b]0;x\x07\xe2\x80\xae";

class EscapeCodesTest : public ProgramTest {
protected:
    void SetUp() override {
        ProgramTest::SetUp();
        write(kCsv, rows("120"));
        ASSERT_TRUE(succeeds(run({QStringLiteral("import"), kLogbook, kCsv})));
    }

    static QByteArray rows(const QByteArray& last) {
        QByteArray csv = "engine,inspected_on,engine_races,cylinder,valve,spring,reading_lbf,"
                         "tester,inspector,note\n";
        for (const QByteArray& row :
             {QByteArray("2026-03-01,0,1,I,S-01"), QByteArray("2026-03-08,3,1,I,S-01"),
              QByteArray("2026-03-15,6,1,I,S-01")}) {
            csv += "Blue" + kCodes + ',' + row + kCodes + ',' + last + ',' + kCodes + "t," +
                   kCodes + "i," + kCodes + "n\n";
        }
        return csv;
    }

    static void expectNoCodes(const ProgramRun& run) {
        for (const QByteArray& stream : {run.out, run.err}) {
            EXPECT_TRUE(std::none_of(stream.begin(), stream.end(), [](char byte) {
                return (byte >= 0 && byte < ' ' && byte != '\n') || byte == '\x7f';
            })) << ::testing::PrintToString(run);
            EXPECT_FALSE(stream.contains("\xe2\x80\xae")) << ::testing::PrintToString(run);
        }
    }
};

TEST_F(EscapeCodesTest, TheTableOfAnAssessmentHasNone) {
    const ProgramRun table = run({QStringLiteral("assess"), kLogbook});
    ASSERT_TRUE(succeeds(table));
    EXPECT_TRUE(table.out.contains("Blue\\u{1B}[31m")) << table.out.constData();
    expectNoCodes(table);
}

TEST_F(EscapeCodesTest, AsJsonTheyAreEscapedAsJsonHasIt) {
    const ProgramRun json = run({QStringLiteral("assess"), kLogbook, QStringLiteral("--json")});
    ASSERT_TRUE(succeeds(json));
    EXPECT_FALSE(json.out.contains('\x1b'));
    EXPECT_FALSE(json.out.contains('\x07'));
}

TEST_F(EscapeCodesTest, NeitherImportNorItsFaultsHaveAny) {
    expectNoCodes(run({QStringLiteral("import"), kLogbook, kCsv}));
    write(kCsv, rows("119"));
    const ProgramRun contradiction = run({QStringLiteral("import"), kLogbook, kCsv});
    EXPECT_EQ(contradiction.exitCode, 1);
    expectNoCodes(contradiction);
}

TEST_F(EscapeCodesTest, NeitherVerifyNorAnUnknownEngineHasAny) {
    ASSERT_TRUE(succeeds(tool(QStringLiteral("sqlite3"),
                              {kLogbook, QStringLiteral("UPDATE engine SET name = name || 'y'")})));
    const ProgramRun damaged = run({QStringLiteral("verify"), kLogbook});
    EXPECT_EQ(damaged.exitCode, 1);
    expectNoCodes(damaged);
    const ProgramRun unknown = run({QStringLiteral("assess"), kLogbook, QStringLiteral("--engine"),
                                    QString::fromUtf8(kCodes)});
    EXPECT_EQ(unknown.exitCode, 1);
    expectNoCodes(unknown);
}

} // namespace

} // namespace coilbook::testing
