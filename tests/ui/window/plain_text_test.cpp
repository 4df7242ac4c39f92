// Text from a logbook is only ever shown as text. Where Qt guesses, it takes what looks like HTML
// for HTML and would load the pictures that it names.

#include "core/exchange/import.h"
#include "tests/support/printers.h"
#include "tests/ui/window/logbook_fixture.h"
#include "ui/main_window.h"
#include "ui/pages/bench_message.h"

#include <QAction>
#include <QApplication>
#include <QFile>
#include <QLabel>
#include <QTextEdit>
#include <QToolTip>

namespace coilbook {
namespace {

const QString kMarkup = QStringLiteral("<b>x</b><img src='http://127.0.0.1:9/x.png'>");

class PlainTextTest : public testing::LogbookFixture {
protected:
    /// A logbook in which every text that a file can bring looks like HTML.
    [[nodiscard]] QString hostileLogbook() const {
        const QString csv = file(QStringLiteral("readings.csv"));
        QFile out(csv);
        EXPECT_TRUE(out.open(QIODevice::WriteOnly));
        out.write("engine,inspected_on,engine_races,cylinder,valve,spring,reading_lbf,tester,"
                  "inspector,note\n");
        const QByteArray m = kMarkup.toUtf8();
        for (int races = 0; races < 4; ++races) {
            const QByteArray day = "2026-03-0" + QByteArray::number(races + 1);
            const QByteArray reading = QByteArray::number(120 - 3 * races);
            for (const char* valve : {"I", "E"}) {
                out.write(m + ',' + day + ',' + QByteArray::number(races) + ",1," + valve + ',' +
                          m + valve + ',' + reading + ',' + m + ',' + m + ',' + m + '\n');
            }
        }
        out.close();
        const QString path = file(QStringLiteral("<b>hostile<b>.coilbook"));
        Result<LogbookStore> store = LogbookStore::create(path);
        EXPECT_TRUE(store && importFiles(*store, {csv}, clock));
        return path;
    }

    /// Looks at all that is there now, shown or not. Returns how many labels held the markup.
    static int expectAllLabelsPlain() {
        int found = 0;
        const QWidgetList widgets = QApplication::allWidgets();
        for (QWidget* widget : widgets) {
            if (const auto* label = qobject_cast<QLabel*>(widget)) {
                const bool escapes = qobject_cast<BenchMessage*>(widget) != nullptr;
                widget->ensurePolished();
                EXPECT_EQ(label->textFormat(), escapes ? Qt::RichText : Qt::PlainText)
                    << label->text().toStdString();
                found += !escapes && label->text().contains(kMarkup) ? 1 : 0;
            }
            if (const auto* edit = qobject_cast<QTextEdit*>(widget)) {
                EXPECT_FALSE(edit->acceptRichText());
            }
        }
        return found;
    }
};

TEST_F(PlainTextTest, NoLabelOfTheWindowTakesTextOfTheLogbookForMarkup) {
    const QString path = hostileLogbook();
    MainWindow window(session, preferences);
    window.show();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
    window.openLogbook(path);
    ASSERT_TRUE(waitFor([this] { return session.log() && session.assessment(); }));
    int found = 0;
    for (const WorkPlace place : {WorkPlace::Bench, WorkPlace::Review, WorkPlace::Sheet}) {
        window.showPlace(place);
        QTest::qWait(50);
        found += expectAllLabelsPlain();
    }
    EXPECT_GT(found, 0) << "the names of the logbook are shown somewhere";
}

TEST_F(PlainTextTest, ATooltipShowsMarkupAsItStands) {
    const MainWindow window(session, preferences);
    QToolTip::showText(QPoint(20, 20), kMarkup);
    const QLabel* tip = nullptr;
    const QWidgetList widgets = QApplication::topLevelWidgets();
    for (const QWidget* widget : widgets) {
        if (widget->inherits("QTipLabel")) {
            tip = qobject_cast<const QLabel*>(widget);
        }
    }
    ASSERT_NE(tip, nullptr);
    EXPECT_EQ(tip->text(), kMarkup);
    EXPECT_EQ(tip->textFormat(), Qt::PlainText);
    QToolTip::hideText();
}

TEST_F(PlainTextTest, TheMessageAtTheBenchEscapesItsSentence) {
    BenchMessage message(nullptr);
    message.say(BenchMessage::Kind::Saved, kMarkup);
    EXPECT_TRUE(message.text().contains(kMarkup.toHtmlEscaped()));
    EXPECT_FALSE(message.text().contains(kMarkup));
}

} // namespace
} // namespace coilbook
