#include "core/wording/wording.h"
#include "tests/support/printers.h"

#include <gtest/gtest.h>

namespace coilbook {
namespace {

Error errorOf(std::variant<StorageFault, InputFault, LogbookFault> fault,
              const QStringList& arguments = {}) {
    Error error;
    error.fault = fault;
    error.arguments = arguments;
    return error;
}

/// Each fault of the kind, from the first to `last`, given some arguments.
template <class Fault>
std::vector<Error> all(Fault last) {
    std::vector<Error> errors;
    for (int i = 0; i <= static_cast<int>(last); ++i) {
        errors.push_back(errorOf(static_cast<Fault>(i),
                                 {QStringLiteral("7"), QStringLiteral("8"), QStringLiteral("9")}));
    }
    return errors;
}

void expectWholeSentences(const std::vector<Error>& errors) {
    for (const Error& error : errors) {
        const QString text = wording::sentence(error);
        SCOPED_TRACE(text.toStdString());
        ASSERT_FALSE(text.isEmpty());
        EXPECT_TRUE(text.endsWith(QLatin1Char('.')));
        EXPECT_TRUE(text.front().isUpper() || !text.front().isLetter());
        EXPECT_FALSE(text.contains(QLatin1Char('!')));
        EXPECT_FALSE(text.contains(QLatin1Char('%'))) << "an argument was left open";
        EXPECT_FALSE(text.contains(QLatin1Char('\n')));
    }
}

TEST(ErrorSentencesTest, EveryFaultIsAWholeSentenceWithoutBlame) {
    expectWholeSentences(all(StorageFault::Internal));
    expectWholeSentences(all(InputFault::Cancelled));
    expectWholeSentences(all(LogbookFault::SwapBeforeReading));
}

TEST(ErrorSentencesTest, AnUnknownEngineIsAnsweredWithTheOnesThereAre) {
    const QStringList names{QStringLiteral("Blau"), QStringLiteral("Blue"), QStringLiteral("Red")};
    EXPECT_EQ(wording::sentence(errorOf(LogbookFault::UnknownEngine, names)),
              QStringLiteral("This logbook has no engine “Blau”. Choose one of: Blue, Red."));
    EXPECT_EQ(wording::sentence(errorOf(LogbookFault::UnknownEngine, names.mid(0, 1))),
              QStringLiteral("This logbook has no engine “Blau”; it has none yet. Add one first."));
}

TEST(ErrorSentencesTest, TextFromFilesIsEscapedAndNeverTakenForAPlaceToFill) {
    const QString text = wording::sentence(errorOf(
        LogbookFault::NameDiffersInCaseOnly, {QStringLiteral("a%2\n"), QStringLiteral("\x1b[0m")}));
    EXPECT_TRUE(text.contains(QStringLiteral("“a%2\\n” differs from “\\u{1B}[0m”")))
        << text.toStdString();
}

TEST(ErrorSentencesTest, TheLineNamesFileLineAndColumnThenTheSentenceThenHowManyMore) {
    Error error = errorOf(LogbookFault::NotAReading, {QStringLiteral("12o")});
    EXPECT_EQ(wording::line(error), wording::sentence(error));
    error.file = QStringLiteral("readings.csv");
    EXPECT_EQ(wording::line(error), QStringLiteral("readings.csv: ") + wording::sentence(error));
    error.line = 4;
    error.column = QStringLiteral("reading_lbf");
    error.more = 2;
    EXPECT_EQ(wording::line(error), QStringLiteral("readings.csv: line 4, column reading_lbf: ") +
                                        wording::sentence(error) + QStringLiteral(" (and 2 more)"));
}

TEST(ErrorSentencesTest, ALongPathIsShownWhole) {
    Error error = errorOf(StorageFault::Missing);
    error.file = QStringLiteral("season/").repeated(40) + QStringLiteral("log\n.coilbook");
    EXPECT_TRUE(wording::line(error).startsWith(QStringLiteral("season/").repeated(40) +
                                                QStringLiteral("log\\n.coilbook: ")));
}

} // namespace
} // namespace coilbook
