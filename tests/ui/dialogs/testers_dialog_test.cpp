#include "tests/support/printers.h"
#include "tests/ui/window/logbook_fixture.h"
#include "ui/charts/calibration_chart.h"
#include "ui/dialogs/calibrations_panel.h"
#include "ui/dialogs/fault_form.h"
#include "ui/dialogs/studies_panel.h"
#include "ui/dialogs/testers_dialog.h"
#include "ui/dialogs/testers_panel.h"
#include "ui/widgets/date_field.h"
#include "ui/widgets/force_table.h"

#include <QApplication>
#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTest>
#include <gtest/gtest.h>

#include <memory>

namespace coilbook {
namespace {

class TestersDialogTest : public coilbook::testing::LogbookFixture {
protected:
    TestersDialogTest() { preferences.setPersonName(QStringLiteral("Sam")); }

    template <class Panel>
    Panel* open(TestersDialog::Page page) {
        dialog = std::make_unique<TestersDialog>(session, preferences, page);
        dialog->show();
        EXPECT_TRUE(QTest::qWaitForWindowActive(dialog.get()));
        return dialog->findChild<Panel*>();
    }

    static void type(const QWidget* panel, const char* field, const QString& text) {
        auto* line = panel->findChild<QLineEdit*>(QString::fromLatin1(field));
        ASSERT_NE(line, nullptr) << field;
        line->selectAll();
        QTest::keyClicks(line, text);
    }

    static void choose(const QWidget* panel, const char* box, const QVariant& value) {
        auto* combo = panel->findChild<QComboBox*>(QString::fromLatin1(box));
        ASSERT_NE(combo, nullptr) << box;
        const int index = combo->findData(value);
        ASSERT_GE(index, 0) << box;
        combo->setCurrentIndex(index);
    }

    /// Types cell after cell as a person would: digits and Enter, from the first cell on.
    static void fillTable(const QWidget* panel, const char* table, const QStringList& cells) {
        auto* forces = panel->findChild<ForceTable*>(QString::fromLatin1(table));
        ASSERT_NE(forces, nullptr);
        forces->setFocus();
        forces->setCurrentCell(0, 0);
        for (const QString& cell : cells) {
            for (const QChar key : cell) {
                QTest::keyClick(QApplication::focusWidget(), key.toLatin1());
            }
            QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
            QCoreApplication::processEvents(); // Qt takes the cell once it is back in its loop
        }
    }

    /// With plain spaces between number and unit.
    static QString text(const QWidget* panel, const char* label) {
        return panel->findChild<QLabel*>(QString::fromLatin1(label))
            ->text()
            .replace(QChar(QChar::Nbsp), QLatin1Char(' '));
    }

    static void save(const QWidget* panel) {
        QTest::mouseClick(panel->findChild<QPushButton*>(QStringLiteral("save")), Qt::LeftButton);
    }

    static QString faults(const QWidget* panel) { return panel->findChild<FaultForm*>()->faults(); }

    Tester addTester(const QString& name = QStringLiteral("Small dial")) {
        Tester tester;
        tester.id = TesterId::make();
        tester.name = name;
        tester.range = TypedForce(160, 0, ForceUnit::PoundForce);
        put(AddTester{tester});
        return tester;
    }

    std::unique_ptr<TestersDialog> dialog;
};

TEST_F(TestersDialogTest, RegistersATesterWithAllItsFacts) {
    makeLogbook();
    addEngine(QStringLiteral("Blue"));
    const auto* panel = open<TestersPanel>(TestersDialog::Page::Testers);
    type(panel, "name", QStringLiteral("Small dial"));
    type(panel, "range", QStringLiteral("160"));
    type(panel, "graduation", QStringLiteral("0,5"));
    type(panel, "zero", QStringLiteral("-1,5"));
    choose(panel, "accuracyKind", static_cast<int>(GaugeGrade::TwoA));
    panel->findChild<QCheckBox*>(QStringLiteral("calibrated"))->setChecked(true);
    panel->findChild<DateField*>(QStringLiteral("calibratedOn"))->setDate(QDate(2026, 1, 15));
    save(panel);
    ASSERT_TRUE(waitFor([&] { return session.testers().size() == 1; }));
    const Tester& tester = session.testers().front();
    EXPECT_EQ(tester.name, QStringLiteral("Small dial"));
    EXPECT_EQ(tester.range, TypedForce(160, 0, ForceUnit::PoundForce));
    EXPECT_EQ(tester.graduation, TypedForce(5, 1, ForceUnit::PoundForce));
    EXPECT_EQ(tester.accuracy, TesterAccuracy(GaugeGrade::TwoA));
    EXPECT_EQ(tester.zeroOffset, (ZeroOffset{TypedForce(15, 1, ForceUnit::PoundForce), true}));
    EXPECT_EQ(tester.calibratedOn, QDate(2026, 1, 15));
    EXPECT_TRUE(tester.corrects);
}

TEST_F(TestersDialogTest, SaysAtOnceWhetherAGaugeTellsTheLimit) {
    makeLogbook();
    addEngine(QStringLiteral("Blue"));
    const auto* panel = open<TestersPanel>(TestersDialog::Page::Testers);
    type(panel, "range", QStringLiteral("600"));
    type(panel, "graduation", QStringLiteral("5"));
    choose(panel, "accuracyKind", static_cast<int>(GaugeGrade::A));
    EXPECT_TRUE(text(panel, "suitability")
                    .startsWith(QStringLiteral("This gauge can be off by 6.0 lbf at mid-scale: it "
                                               "cannot tell a loss of 5.0 lbf.")))
        << text(panel, "suitability").toStdString();
}

TEST_F(TestersDialogTest, AZeroInTheOtherUnitStaysAsItWasWrittenUntilItIsEdited) {
    makeLogbook();
    addEngine(QStringLiteral("Blue"));
    preferences.setForceUnit(ForceUnit::Newton);
    Tester tester;
    tester.id = TesterId::make();
    tester.name = QStringLiteral("Small dial");
    tester.zeroOffset = ZeroOffset{TypedForce(150, 2, ForceUnit::PoundForce), true};
    put(AddTester{tester});
    const auto* panel = open<TestersPanel>(TestersDialog::Page::Testers);
    EXPECT_EQ(panel->findChild<QLineEdit*>(QStringLiteral("zero"))->text(),
              QStringLiteral("-6.67"));
    type(panel, "name", QStringLiteral("Dial"));
    type(panel, "why", QStringLiteral("shorter"));
    save(panel);
    ASSERT_TRUE(waitFor([&] { return session.testers().front().name == QStringLiteral("Dial"); }))
        << faults(panel).toStdString();
    EXPECT_EQ(session.testers().front().zeroOffset, tester.zeroOffset);
    EXPECT_EQ(session.log()->amendments.size(), 1U);
}

TEST_F(TestersDialogTest, RefusesAnAccuracyWithoutItsFigure) {
    makeLogbook();
    const auto* panel = open<TestersPanel>(TestersDialog::Page::Testers);
    type(panel, "name", QStringLiteral("Small dial"));
    auto* kind = panel->findChild<QComboBox*>(QStringLiteral("accuracyKind"));
    kind->setCurrentIndex(kind->findText(QStringLiteral("in % of span")));
    save(panel);
    EXPECT_TRUE(faults(panel).startsWith(QStringLiteral("Give the figure")));
    type(panel, "accuracyFigure", QStringLiteral("1,5"));
    save(panel);
    ASSERT_TRUE(waitFor([&] { return session.testers().size() == 1; }));
    EXPECT_EQ(session.testers().front().accuracy, TesterAccuracy(PercentOfSpan{{1500}}));
}

TEST_F(TestersDialogTest, TakesTheTableOfACertificateByKeyboard) {
    makeLogbook();
    addEngine(QStringLiteral("Blue"));
    const Tester tester = addTester();
    const auto* panel = open<CalibrationsPanel>(TestersDialog::Page::Calibrations);
    type(panel, "by", QStringLiteral("Own bench"));
    type(panel, "certificate", QStringLiteral("No. 7"));
    fillTable(panel, "points",
              {QStringLiteral("20"), QStringLiteral("20.6"), QStringLiteral("80"),
               QStringLiteral("81,5"), QStringLiteral("140"), QStringLiteral("142.6")});
    EXPECT_TRUE(text(panel, "result").startsWith(QStringLiteral("At 80.0 lbf it shows 81.6 lbf")))
        << text(panel, "result").toStdString();
    EXPECT_NE(panel->findChild<CalibrationChart*>(), nullptr);
    save(panel);
    ASSERT_TRUE(waitFor([&] { return session.calibrations().size() == 1; }))
        << faults(panel).toStdString();
    const Calibration& calibration = session.calibrations().front();
    EXPECT_EQ(calibration.tester, tester.id);
    EXPECT_EQ(calibration.certificate, QStringLiteral("No. 7"));
    EXPECT_EQ(pointsToText(calibration.points), QStringLiteral("20:20.6 80:81.5 140:142.6"));
    session.undo();
    ASSERT_TRUE(waitFor([&] { return session.calibrations().front().withdrawn; }));
}

TEST_F(TestersDialogTest, NamesTheLineOfATableThatIsNotWhole) {
    makeLogbook();
    addTester();
    const auto* panel = open<CalibrationsPanel>(TestersDialog::Page::Calibrations);
    fillTable(
        panel, "points",
        {QStringLiteral("20"), QStringLiteral("20.6"), QStringLiteral("80"), QStringLiteral("x")});
    save(panel);
    EXPECT_TRUE(faults(panel).startsWith(QStringLiteral("Line 2 needs two forces")));
    EXPECT_TRUE(session.calibrations().empty());
}

TEST_F(TestersDialogTest, GuidesAStudyToItsResultInTradeWords) {
    makeLogbook();
    addTester();
    const auto* panel = open<StudiesPanel>(TestersDialog::Page::Studies);
    type(panel, "springs", QStringLiteral("S-1, S-2"));
    type(panel, "persons", QStringLiteral("Kim, Alex"));
    auto* table = panel->findChild<ForceTable*>(QStringLiteral("readings"));
    ASSERT_EQ(table->rowCount(), 2);
    ASSERT_EQ(table->columnCount(), 6) << "two persons, three hits each";
    QStringList cells;
    for (const char* cell : {"120", "121", "120.5", "121", "120", "121.5", "130", "131", "130.5",
                             "131", "130", "131,5"}) {
        cells << QString::fromLatin1(cell);
    }
    fillTable(panel, "readings", cells);
    const QString result = text(panel, "result");
    EXPECT_TRUE(result.contains(QStringLiteral("The tester:"))) << result.toStdString();
    EXPECT_TRUE(result.contains(QStringLiteral("The person:")));
    EXPECT_TRUE(result.contains(QStringLiteral("grades of these springs apart")));
    save(panel);
    ASSERT_TRUE(waitFor([&] { return session.studies().size() == 1; }))
        << faults(panel).toStdString();
    const RepeatabilityStudy& study = session.studies().front();
    EXPECT_EQ(study.readings[study.at(1, 1, 2)], TypedForce(1315, 1, ForceUnit::PoundForce));
}

TEST_F(TestersDialogTest, AnOverdueCalibrationWarnsInTheList) {
    makeLogbook();
    const Tester tester = addTester();
    Calibration calibration;
    calibration.id = CalibrationId::make();
    calibration.tester = tester.id;
    calibration.calibratedOn = QDate(2020, 1, 10);
    calibration.dueOn = QDate(2021, 1, 10);
    calibration.points =
        pointsFromText(QStringLiteral("20:20 80:80 140:140"), ForceUnit::PoundForce).value();
    put(AddCalibration{calibration});
    ASSERT_TRUE(waitFor([&] { return session.calibrations().size() == 1; }));
    const auto* panel = open<TestersPanel>(TestersDialog::Page::Testers);
    EXPECT_TRUE(text(panel, "suitability")
                    .startsWith(QStringLiteral("The calibration of tester Small dial was due on "
                                               "2021-01-10")))
        << text(panel, "suitability").toStdString();
}

} // namespace
} // namespace coilbook
