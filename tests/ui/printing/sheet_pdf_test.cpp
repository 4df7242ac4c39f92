#include "tests/support/printers.h"
#include "tests/ui/printing/pdf_tools.h"
#include "tests/ui/printing/sample_sheet.h"
#include "ui/printing/sheet_pdf.h"

#include <QDir>
#include <QFile>
#include <QTemporaryDir>
#include <gtest/gtest.h>

namespace coilbook {

namespace {

using testing::overlongSheet;
using testing::pdfInfo;
using testing::pdfText;
using testing::sampleForm;
using testing::sampleSheet;

struct NamedPaper {
    const char* name;
    Paper paper;
    /// Points of 1/72 in as the PDF's MediaBox counts them: ISO 216 A4 is 210 mm × 297 mm,
    /// ANSI/ASME Y14.1 size A is 8.5 in × 11 in.
    const char* size;
};

void PrintTo(const NamedPaper& paper, std::ostream* stream) {
    *stream << paper.name;
}

class SheetPdfTest : public ::testing::TestWithParam<NamedPaper> {
protected:
    [[nodiscard]] QString path(const char* name = "sheet.pdf") const {
        return m_folder.filePath(QString::fromLatin1(name));
    }

    [[nodiscard]] QStringList files() const {
        return QDir(m_folder.path()).entryList(QDir::Files | QDir::Hidden);
    }

    QTemporaryDir m_folder;
};

void expectHolds(const QString& text, const QString& part) {
    EXPECT_TRUE(text.contains(part)) << "missing: " << part.toStdString();
}

void expectOnePage(const QString& info, const NamedPaper& paper) {
    expectHolds(info.simplified(), QStringLiteral("Pages: 1 "));
    expectHolds(info.simplified(), QStringLiteral("Page size: ") + QString::fromLatin1(paper.size));
}

} // namespace

TEST_P(SheetPdfTest, IsOnePageOfThatPaperAndHoldsWhatTheSheetSays) {
    const SheetContent content = sampleSheet();
    ASSERT_TRUE(writeSheetPdf(content, path(), GetParam().paper));
    expectOnePage(pdfInfo(path()), GetParam());

    const QString text = pdfText(path());
    for (const QString& part :
         {content.engine, content.serial, content.inspectedOn, content.racesRun, content.limit,
          content.testers.front().name, content.testers.front().range,
          content.testers.front().calibratedOn, content.inspectors.front(), content.amendedSince,
          content.printedAt, content.seal, QStringLiteral("Page 1 of 1"),
          QStringLiteral("Tech inspector"), QStringLiteral("Tested by"),
          QStringLiteral("Responsible for the engine")}) {
        expectHolds(text, part);
    }
    for (const SheetSpring& spring : content.springs) {
        expectHolds(text, placeText(spring.place));
        expectHolds(text, spring.label);
        expectHolds(text, spring.baseline);
        expectHolds(text, spring.latest);
        expectHolds(text, spring.loss);
        expectHolds(text, spring.standingWords);
    }
    for (const SheetAmendment& amendment : content.amendments) {
        for (const QString& part : {amendment.on, amendment.what, amendment.oldValue,
                                    amendment.newValue, amendment.who, amendment.why}) {
            expectHolds(text, part);
        }
    }
}

TEST_P(SheetPdfTest, HoldsEveryWordOfTheCautions) {
    const SheetContent content = sampleSheet();
    ASSERT_TRUE(writeSheetPdf(content, path(), GetParam().paper));
    const QString text = pdfText(path());
    for (const QString& caution : content.cautions) {
        for (const QString& word : caution.split(QLatin1Char(' '))) {
            expectHolds(text, word);
        }
    }
}

TEST_P(SheetPdfTest, SaysTheSameEachTime) {
    ASSERT_TRUE(writeSheetPdf(sampleSheet(), path("one.pdf"), GetParam().paper));
    ASSERT_TRUE(writeSheetPdf(sampleSheet(), path("two.pdf"), GetParam().paper));
    EXPECT_EQ(pdfText(path("one.pdf")), pdfText(path("two.pdf")));
}

TEST_P(SheetPdfTest, StaysOnOnePageAndCountsTheAmendmentsThatHaveNoRoom) {
    ASSERT_TRUE(writeSheetPdf(overlongSheet(), path(), GetParam().paper));
    expectOnePage(pdfInfo(path()), GetParam());
    const QString text = pdfText(path());
    const qsizetype listed = text.count(QStringLiteral("2026-05-01"));
    EXPECT_GE(listed, 1);
    expectHolds(text, QStringLiteral("and %1 more, see the logbook").arg(40 - listed));
    expectHolds(text, QStringLiteral("Page 1 of 1"));
}

TEST_P(SheetPdfTest, RoundFormIsOnePageWithAPlaceForEachSpring) {
    const RoundFormContent content = sampleForm();
    ASSERT_TRUE(writeRoundFormPdf(content, path(), GetParam().paper));
    expectOnePage(pdfInfo(path()), GetParam());
    const QString text = pdfText(path());
    for (const RoundFormPlace& entry : content.places) {
        expectHolds(text, placeText(entry.place));
        expectHolds(text, entry.label);
        expectHolds(text, entry.latest);
    }
    for (const char* caption :
         {"Hit 1", "Hit 2", "Hit 3", "Note", "Tester", "Engine temperature"}) {
        expectHolds(text, QString::fromLatin1(caption));
    }
}

TEST_P(SheetPdfTest, ReplacesWhatWasThereAndLeavesNothingBeside) {
    QFile old(path());
    ASSERT_TRUE(old.open(QIODevice::WriteOnly));
    old.write("something else");
    old.close();
    ASSERT_TRUE(writeSheetPdf(sampleSheet(), path(), GetParam().paper));
    EXPECT_EQ(files(), QStringList{QStringLiteral("sheet.pdf")});
    expectOnePage(pdfInfo(path()), GetParam());
}

TEST_P(SheetPdfTest, SaysWhichFileCouldNotBeWritten) {
    const QString nowhere = path("no such folder") + QStringLiteral("/sheet.pdf");
    const Result<void> result = writeSheetPdf(sampleSheet(), nowhere, GetParam().paper);
    ASSERT_FALSE(result);
    EXPECT_EQ(std::get<StorageFault>(result.error().fault), StorageFault::CannotWriteOutput);
    EXPECT_EQ(result.error().file, nowhere);
    EXPECT_FALSE(result.error().arguments.value(0).isEmpty());
    EXPECT_TRUE(files().isEmpty());
}

TEST_P(SheetPdfTest, DoesNotReplaceAFolder) {
    ASSERT_TRUE(QDir(m_folder.path()).mkdir(QStringLiteral("sheet.pdf")));
    EXPECT_FALSE(writeSheetPdf(sampleSheet(), path(), GetParam().paper));
    EXPECT_TRUE(QDir(path()).exists());
}

INSTANTIATE_TEST_SUITE_P(Papers, SheetPdfTest,
                         ::testing::Values(NamedPaper{"A4", Paper::A4, "595 x 842 pts"},
                                           NamedPaper{"Letter", Paper::Letter, "612 x 792 pts"}),
                         [](const auto& named) { return named.param.name; });

} // namespace coilbook
