#include "core/domain/current_readings.h"
#include "tests/ui/pages/bench_fixture.h"

#include <QComboBox>
#include <QDateEdit>
#include <QLabel>
#include <QLineEdit>
#include <QSpinBox>

namespace coilbook::testing {
namespace {

class BenchStartTest : public BenchPageTest {
protected:
    template <class Field>
    [[nodiscard]] Field& field() const {
        return *page->form().findChild<Field*>();
    }

    [[nodiscard]] QLineEdit& inspector() const {
        for (QLineEdit* edit : page->form().findChildren<QLineEdit*>()) {
            if (edit->text() == preferences.personName()) {
                return *edit;
            }
        }
        throw std::logic_error("no inspector field");
    }

    [[nodiscard]] QLabel* sentence(const char* part) const {
        for (QLabel* label : page->form().findChildren<QLabel*>()) {
            if (label->text().contains(QString::fromLatin1(part))) {
                return label;
            }
        }
        return nullptr;
    }
};

TEST_F(BenchStartTest, WithoutALogbookItSaysWhatToDo) {
    session = std::make_unique<LogbookSession>(clock);
    showPage();
    EXPECT_FALSE(page->showsForm());
    EXPECT_TRUE(page->emptyText().contains(QStringLiteral("Open a logbook")));
}

TEST_F(BenchStartTest, PrefillsDateRacesTesterAndInspector) {
    makeLogbook();
    Tester tester;
    tester.id = TesterId::make();
    tester.name = QStringLiteral("Gauge 160");
    apply(AddTester{tester});
    const RoundFacts facts{QDate::currentDate().addDays(-7), 4, tester.id, {}, {}};
    apply(startOf(engine.id, facts, false));
    showPage();
    ASSERT_TRUE(page->showsForm());
    EXPECT_EQ(field<QDateEdit>().date(), QDate::currentDate());
    EXPECT_EQ(field<QSpinBox>().value(), 4);
    EXPECT_EQ(field<QComboBox>().currentText(), QStringLiteral("Gauge 160"));
    EXPECT_EQ(inspector().text(), QStringLiteral("Pat Miller"));
}

TEST_F(BenchStartTest, ANewTesterNameMakesATester) {
    makeLogbook();
    showPage();
    field<QComboBox>().setCurrentText(QStringLiteral("Gauge 600"));
    startRound();
    ASSERT_EQ(session->testers().size(), 1U);
    EXPECT_EQ(session->testers()[0].name, QStringLiteral("Gauge 600"));
    EXPECT_EQ(session->log()->sittings.at(0).tester, session->testers()[0].id);
}

TEST_F(BenchStartTest, ADateInTheFutureIsRefusedBesideTheFieldAndNothingIsLost) {
    makeLogbook();
    showPage();
    field<QDateEdit>().setDate(QDate::currentDate().addDays(2));
    field<QSpinBox>().setValue(3);
    click("Start the round");
    until([&] { return sentence("lies in the future") != nullptr; });
    EXPECT_EQ(sentence("lies in the future")->mapTo(page.get(), QPoint()).y() /
                  field<QDateEdit>().height(),
              field<QDateEdit>().mapTo(page.get(), QPoint()).y() / field<QDateEdit>().height());
    EXPECT_TRUE(page->showsForm());
    EXPECT_EQ(field<QSpinBox>().value(), 3);
    EXPECT_TRUE(session->log()->inspections.empty());
}

TEST_F(BenchStartTest, ACountOfRacesThatGoesBackIsRefused) {
    makeLogbook();
    inspect(10, 5, 120);
    showPage();
    field<QSpinBox>().setValue(4);
    click("Start the round");
    until([&] { return sentence("races never become fewer") != nullptr; });
    EXPECT_EQ(session->log()->inspections.size(), 1U);
}

TEST_F(BenchStartTest, AnImpossibleTemperatureIsRefused) {
    makeLogbook();
    showPage();
    for (QLineEdit* edit : page->form().findChildren<QLineEdit*>()) {
        if (edit->placeholderText().contains(QStringLiteral("°C"))) {
            edit->setText(QStringLiteral("300"));
        }
    }
    click("Start the round");
    EXPECT_NE(sentence("to 250"), nullptr);
    EXPECT_TRUE(page->showsForm());
}

TEST_F(BenchStartTest, AnInspectionOfThatDayAndCountIsOfferedToGoOnWith) {
    makeLogbook();
    inspect(0, 2, 120);
    showPage();
    click("Start the round");
    ASSERT_NE(sentence("Go on with that one"), nullptr);
    click("Go on with that inspection");
    until([&] { return page->showsRound(); });
    EXPECT_EQ(session->log()->inspections.size(), 1U);
    EXPECT_FALSE(session->log()->inspections[0].closed);
}

TEST_F(BenchStartTest, AQuickTestGoesToOneSpringAndNeedsNoClosing) {
    makeLogbook();
    showPage();
    for (QComboBox* box : page->form().findChildren<QComboBox*>()) {
        const int index = box->findText(QStringLiteral("3 E"), Qt::MatchStartsWith);
        if (index >= 0) {
            box->setCurrentIndex(index);
        }
    }
    click("Test this one only");
    until([&] { return page->showsRound(); });
    EXPECT_EQ(panel().placeText(), QStringLiteral("3 E"));
    type("119.75");
    press(Qt::Key_Enter);
    waitForSaved();
    EXPECT_EQ(panel().placeText(), QStringLiteral("3 E"));
    press(Qt::Key_Escape);
    ASSERT_TRUE(page->showsForm());
    EXPECT_TRUE(session->log()->inspections.at(0).closed);
    EXPECT_EQ(hitsAt(at(3, Valve::Exhaust)), QStringList(QStringLiteral("119.75")));
}

TEST_F(BenchStartTest, EverythingFitsASmallScreenWithLargeText) {
    const QFont ordinary = QApplication::font();
    QFont large = ordinary;
    large.setPointSizeF(ordinary.pointSizeF() * 1.5);
    QApplication::setFont(large);
    makeLogbook();
    inspect(20, 0, 120);
    showPage();
    const QSize form = page->minimumSizeHint();
    startRound();
    const QSize round = page->round().minimumSizeHint();
    QApplication::setFont(ordinary);
    // 1366 x 768 less the window's own title, menu and engine bar.
    for (const QSize& size : {form, round}) {
        EXPECT_LE(size.width(), 1366);
        EXPECT_LE(size.height(), 768 - 160);
    }
}

} // namespace
} // namespace coilbook::testing
