#include "tests/app/program.h"

namespace coilbook::testing {

namespace {

struct Misuse {
    const char* what;
    QStringList words;
    QByteArray said;
};

void PrintTo(const Misuse& misuse, std::ostream* stream) {
    *stream << misuse.what;
}

QStringList words(const char* line) {
    return QString::fromUtf8(line).split(QLatin1Char(' '));
}

class MisuseTest : public ProgramTest, public ::testing::WithParamInterface<Misuse> {};

TEST_P(MisuseTest, EndsWithTwoAndOneLineAndMakesNothing) {
    EXPECT_TRUE(failsWith(run(GetParam().words), 2, GetParam().said));
    EXPECT_EQ(files(), QStringList());
}

INSTANTIATE_TEST_SUITE_P(
    Usage, MisuseTest,
    ::testing::Values(
        Misuse{"AnUnknownCommand", words("frobnicate"), "'frobnicate'"},
        Misuse{"AnUnknownCommandWithAFile", words("evaluate a.coilbook"), "'evaluate'"},
        Misuse{"AnUnknownOptionAlone", words("--wrong"), "'--wrong'"},
        Misuse{"AnUnknownOption", words("assess a.coilbook --yaml"), "'--yaml'"},
        Misuse{"AnUnknownShortOption", words("assess a.coilbook -j"), "'-j'"},
        Misuse{"AnOptionOfAnotherCommand", words("verify a.coilbook --json"), "'--json'"},
        Misuse{"NoFile", words("assess"), "FILE"}, Misuse{"NoDemoFile", words("demo"), "FILE"},
        Misuse{"NoCsv", words("import a.coilbook"), "CSV"},
        Misuse{"NoFolder", words("export a.coilbook"), "FOLDER"},
        Misuse{"NoDestination", words("backup a.coilbook"), "DEST"},
        Misuse{"NoEngineForTheSheet", words("sheet a.coilbook --out b.pdf"), "--engine"},
        Misuse{"NoOutForTheSheet", words("sheet a.coilbook --engine Blue"), "--out"},
        Misuse{"AFileTooMany", words("verify a.coilbook b.coilbook"), "'b.coilbook'"},
        Misuse{"AnOptionWithoutItsValue", words("assess a.coilbook --limit"), "--limit"},
        Misuse{"AnOptionInPlaceOfAValue", words("assess a.coilbook --engine --json"), "--engine"},
        Misuse{"AValueForASwitch", words("assess a.coilbook --json=yes"), "--json"},
        Misuse{"AnOptionTwice", words("assess a.coilbook --limit 5 --limit 6"), "twice"},
        Misuse{"AnImpossibleDate", words("assess a.coilbook --as-of 2026-02-30"), "'2026-02-30'"},
        Misuse{"ADateWithoutZeros", words("assess a.coilbook --as-of 2026-2-3"), "'2026-2-3'"},
        Misuse{"ADateTheOtherWayRound", words("assess a.coilbook --as-of 02-05-2026"), "date"},
        Misuse{"ADateWithATime", words("assess a.coilbook --as-of 2026-02-03T10:00"), "date"},
        Misuse{"AnImpossibleDateForTheSheet",
               words("sheet a.coilbook --engine Blue --out b.pdf --as-of yesterday"),
               "'yesterday'"},
        Misuse{"ALimitOfZero", words("assess a.coilbook --limit 0"), "'0'"},
        Misuse{"ALimitBelowZero", words("assess a.coilbook --limit -3"), "'-3'"},
        Misuse{"ALimitThatIsNoNumber", words("assess a.coilbook --limit five"), "'five'"},
        Misuse{"ALimitThatIsNotANumber", words("assess a.coilbook --limit nan"), "'nan'"},
        Misuse{"ALimitWithoutEnd", words("assess a.coilbook --limit inf"), "'inf'"},
        Misuse{"ALimitWithAComma", words("assess a.coilbook --limit 4,5"), "'4,5'"},
        Misuse{"RacesAheadBelowZero", words("assess a.coilbook --ahead -1"), "'-1'"},
        Misuse{"RacesAheadAboveSixty", words("assess a.coilbook --ahead 61"), "'61'"},
        Misuse{"HalfARaceAhead", words("assess a.coilbook --ahead 1.5"), "'1.5'"},
        Misuse{"RacesAheadBeyondAnyInteger", words("assess a.coilbook --ahead 99999999999"), "60"},
        Misuse{"AnUnknownPaper", words("sheet a.coilbook --engine Blue --out b.pdf --paper a5"),
               "'a5'"},
        Misuse{"AnEmptyLimit", words("assess a.coilbook --limit="), "limit"}),
    [](const auto& one) { return one.param.what; });

class UsageTest : public ProgramTest {};

TEST_F(UsageTest, ShowsControlCharactersOfAWordEscaped) {
    EXPECT_TRUE(failsWith(run({QStringLiteral("ass\ness\x1b[31m")}), 2, "ass\\ness\\u{1B}[31m"));
}

TEST_F(UsageTest, JudgesTheCommandLineBeforeItLooksAtTheFile) {
    EXPECT_TRUE(failsWith(run(words("assess missing.coilbook --limit 0")), 2, "limit"));
    EXPECT_TRUE(failsWith(run(words("assess missing.coilbook")), 1, "missing.coilbook"));
}

TEST_F(UsageTest, TakesWordsBehindTwoDashesAsFiles) {
    EXPECT_TRUE(failsWith(run(words("verify -- --odd.coilbook")), 1, "--odd.coilbook"));
}

TEST_F(UsageTest, TakesAWordThatLooksLikeAFileForTheWindowAndSaysThatThereIsNoDisplay) {
    EXPECT_TRUE(failsWith(run({QStringLiteral("season.coilbook")}), 1, "display"));
    EXPECT_TRUE(failsWith(run({}), 1, "display"));
}

} // namespace

} // namespace coilbook::testing
