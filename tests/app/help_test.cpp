#include "tests/app/program.h"

namespace coilbook::testing {

namespace {

struct CommandWords {
    const char* name;
    QByteArrayList named; ///< what its help must tell of (contract, section 2)
};

void PrintTo(const CommandWords& command, std::ostream* stream) {
    *stream << command.name;
}

class HelpTest : public ProgramTest, public ::testing::WithParamInterface<CommandWords> {};

TEST_P(HelpTest, TellsWhatTheCommandTakes) {
    const ProgramRun help = run({QString::fromLatin1(GetParam().name), QStringLiteral("--help")});
    ASSERT_TRUE(succeeds(help));
    EXPECT_TRUE(help.out.startsWith(QByteArray("coilbook ") + GetParam().name));
    for (const QByteArray& word : GetParam().named) {
        EXPECT_TRUE(help.out.contains(word)) << word.constData() << "\n" << help.out.constData();
    }
    EXPECT_EQ(files(), QStringList());
}

INSTANTIATE_TEST_SUITE_P(
    Commands, HelpTest,
    ::testing::Values(CommandWords{"demo", {"FILE"}}, CommandWords{"import", {"FILE", "CSV"}},
                      CommandWords{"export",
                                   {"FILE", "FOLDER", "races.csv", "readings.csv", "logbook.json"}},
                      CommandWords{"assess",
                                   {"FILE", "--engine NAME", "--as-of YYYY-MM-DD", "--limit LBF",
                                    "--ahead N", "--json"}},
                      CommandWords{"sheet",
                                   {"FILE", "--engine NAME", "--out FILE.pdf", "--paper a4|letter",
                                    "--as-of YYYY-MM-DD"}},
                      CommandWords{"verify", {"FILE"}}, CommandWords{"backup", {"FILE", "DEST"}}),
    [](const auto& one) { return one.param.name; });

class ProgramHelpTest : public ProgramTest {};

TEST_F(ProgramHelpTest, ListsEveryCommand) {
    const ProgramRun help = run({QStringLiteral("--help")});
    ASSERT_TRUE(succeeds(help));
    for (const char* name : {"demo", "import", "export", "assess", "sheet", "verify", "backup"}) {
        EXPECT_TRUE(help.out.contains(QByteArray("\n  ") + name + " ")) << name;
    }
}

TEST_F(ProgramHelpTest, NamesTheVersion) {
    const ProgramRun version = run({QStringLiteral("--version")});
    ASSERT_TRUE(succeeds(version));
    EXPECT_TRUE(version.out.startsWith("coilbook "));
    EXPECT_TRUE(version.out.endsWith("\n"));
}

TEST_F(ProgramHelpTest, HelpGoesBeforeWhatIsMissingOrWrong) {
    EXPECT_TRUE(succeeds(run({QStringLiteral("sheet"), QStringLiteral("--paper"),
                              QStringLiteral("a5"), QStringLiteral("--help")})));
}

} // namespace

} // namespace coilbook::testing
