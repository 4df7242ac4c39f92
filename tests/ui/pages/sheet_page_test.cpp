#include "core/services/logbook_session.h"
#include "tests/support/printers.h"
#include "tests/ui/printing/pdf_tools.h"
#include "ui/pages/sheet_page.h"
#include "ui/printing/page_preview.h"

#include <QAction>
#include <QDir>
#include <QPrinter>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <QtTest>
#include <gtest/gtest.h>

namespace coilbook {

namespace {

constexpr int kPatience = 10000; // milliseconds

class AnsweringDialogs final : public SheetDialogs {
public:
    explicit AnsweringDialogs(QString folder)
        : m_folder(std::move(folder)) {}

    std::optional<QString> askPdfPath(QWidget* /*parent*/, const QString& suggestion) override {
        suggested = suggestion;
        return answer;
    }

    bool setUp(QWidget* /*parent*/, QPrinter& printer) override {
        printer.setOutputFormat(QPrinter::PdfFormat);
        printer.setOutputFileName(QDir(m_folder).filePath(QStringLiteral("printed.pdf")));
        return accept;
    }

    QString suggested;
    std::optional<QString> answer;
    bool accept = true;

private:
    QString m_folder;
};

class SheetPageTest : public ::testing::Test {
protected:
    SheetPageTest()
        : m_settings(file("settings.ini"), QSettings::IniFormat)
        , m_preferences(m_settings)
        , m_session(m_clock)
        , m_page(m_session, m_preferences) {
        m_preferences.setPaper(Paper::A4);
        auto dialogs = std::make_unique<AnsweringDialogs>(m_folder.path());
        m_dialogs = dialogs.get();
        m_page.setDialogs(std::move(dialogs));
        m_page.resize(1000, 700);
        m_page.show();
    }

    [[nodiscard]] QString file(const char* name) const {
        return m_folder.filePath(QString::fromLatin1(name));
    }

    void openDemo() {
        QSignalSpy opened(&m_session, &LogbookSession::opened);
        m_session.createDemo(file("demo.coilbook"));
        ASSERT_TRUE(opened.wait(kPatience));
        m_session.selectEngine(m_session.engines().front().id);
        ASSERT_TRUE(
            QTest::qWaitFor([this] { return m_page.printAction()->isEnabled(); }, kPatience));
    }

    QTemporaryDir m_folder;
    QSettings m_settings;
    Preferences m_preferences;
    SystemClock m_clock;
    LogbookSession m_session;
    SheetPage m_page;
    AnsweringDialogs* m_dialogs = nullptr;
};

} // namespace

TEST_F(SheetPageTest, SaysWhatToDoWhileNoLogbookIsOpen) {
    EXPECT_TRUE(m_page.emptyText().contains(QStringLiteral("No logbook is open")));
    EXPECT_FALSE(m_page.printAction()->isEnabled());
    EXPECT_FALSE(m_page.savePdfAction()->isEnabled());
}

TEST_F(SheetPageTest, SavesTheSelectedEnginesSheetAsPdf) {
    openDemo();
    EXPECT_EQ(m_page.emptyText(), QString());
    m_dialogs->answer = file("out.pdf");
    m_page.savePdf();
    EXPECT_TRUE(m_page.message().contains(QStringLiteral("out.pdf")));
    EXPECT_TRUE(m_dialogs->suggested.endsWith(QStringLiteral(".pdf")));
    const QString text = testing::pdfText(*m_dialogs->answer);
    EXPECT_TRUE(text.contains(m_session.log()->engine.name));
    EXPECT_TRUE(text.contains(QStringLiteral("Valve spring sheet")));
}

TEST_F(SheetPageTest, PrintsTheRoundFormOnTheChosenPaperByKey) {
    openDemo();
    m_page.choose(SheetPage::Document::RoundForm);
    m_preferences.setPaper(Paper::Letter);
    QTest::keyClick(&m_page, Qt::Key_P, Qt::ControlModifier);
    const QString printed = file("printed.pdf");
    ASSERT_TRUE(QFile::exists(printed)) << m_page.message().toStdString();
    EXPECT_TRUE(testing::pdfText(printed).contains(QStringLiteral("Round form")));
    EXPECT_TRUE(testing::pdfInfo(printed).simplified().contains(QStringLiteral("612 x 792")));
}

TEST_F(SheetPageTest, DoesNothingWhenTheDialogIsLeft) {
    openDemo();
    m_dialogs->accept = false;
    m_page.print();
    m_page.savePdf();
    EXPECT_FALSE(QFile::exists(file("printed.pdf")));
    EXPECT_EQ(m_page.message(), QString());
}

TEST_F(SheetPageTest, SaysInOneLineWhyTheFileCouldNotBeWritten) {
    openDemo();
    m_dialogs->answer = file("no such folder/out.pdf");
    m_page.savePdf();
    EXPECT_TRUE(m_page.message().startsWith(*m_dialogs->answer));
    EXPECT_FALSE(m_page.message().contains(QLatin1Char('\n')));
}

TEST_F(SheetPageTest, ZoomsAndShowsTheWholePageAgain) {
    openDemo();
    const double whole = m_page.preview().pageWidth();
    m_page.preview().zoomIn();
    EXPECT_GT(m_page.preview().pageWidth(), 1.2 * whole);
    m_page.preview().showWholePage();
    EXPECT_NEAR(m_page.preview().pageWidth(), whole, 1.0);
}

TEST_F(SheetPageTest, ThePlanIsSavedOnOnePageWithItsRacesSpringsAndSpares) {
    openDemo();
    m_page.choose(SheetPage::Document::Plan);
    ASSERT_TRUE(QTest::qWaitFor([this] { return m_page.printAction()->isEnabled(); }, kPatience));
    EXPECT_EQ(m_page.document(), SheetPage::Document::Plan);
    m_dialogs->answer = file("plan.pdf");
    m_page.savePdf();
    EXPECT_TRUE(m_dialogs->suggested.contains(QStringLiteral("Swap plan Heron")));
    EXPECT_TRUE(testing::pdfInfo(file("plan.pdf")).contains(QStringLiteral("Pages:           1")));
    const QString text = testing::pdfText(file("plan.pdf"));
    for (const char* piece : {"Swap plan", "Low Fen", "H-01", "Spares to have until then",
                              "not running out", "There are 3 on the shelf"}) {
        EXPECT_TRUE(text.contains(QString::fromLatin1(piece))) << piece;
    }
    EXPECT_FALSE(text.contains(QChar(0x2026))) << "nothing is cut off";
}

} // namespace coilbook
