#include "tests/support/printers.h"
#include "tests/ui/window/logbook_fixture.h"
#include "ui/dialogs/amendment_list.h"
#include "ui/dialogs/fault_form.h"
#include "ui/dialogs/inspections_panel.h"
#include "ui/dialogs/level_changes_panel.h"
#include "ui/dialogs/races_panel.h"
#include "ui/dialogs/records_dialog.h"
#include "ui/dialogs/running_panel.h"
#include "ui/dialogs/sittings_panel.h"
#include "ui/dialogs/springs_panel.h"
#include "ui/widgets/date_field.h"

#include <QCheckBox>
#include <QComboBox>
#include <QDoubleSpinBox>
#include <QLineEdit>
#include <QPushButton>
#include <QTreeWidget>

using namespace coilbook;

namespace {

class RecordsDialogTest : public coilbook::testing::LogbookFixture {
protected:
    RecordsDialogTest() { preferences.setPersonName(QStringLiteral("Sam")); }

    template <class Panel>
    Panel* open(RecordsDialog::Page page) {
        dialog = std::make_unique<RecordsDialog>(session, preferences, page);
        dialog->setAttribute(Qt::WA_DeleteOnClose, false);
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

    static void click(const QWidget* panel, const char* button) {
        QTest::mouseClick(panel->findChild<QPushButton*>(QString::fromLatin1(button)),
                          Qt::LeftButton);
    }

    static QString faults(const QWidget* panel) { return panel->findChild<FaultForm*>()->faults(); }

    void addRace(int number, const QDate& on) {
        Race race;
        race.id = RaceId::make();
        race.engine = session.selectedEngine();
        race.number = number;
        race.racedOn = on;
        put(AddRace{race});
    }

    /// One inspection with one reading of spring `1I`.
    void addInspection(const QDate& on, int races) {
        StartInspection start;
        start.inspection.id = InspectionId::make();
        start.inspection.engine = session.selectedEngine();
        start.inspection.inspectedOn = on;
        start.inspection.engineRaces = races;
        start.sitting.id = SittingId::make();
        start.sitting.inspection = start.inspection.id;
        put(start);
        RecordReadings record;
        Spring spring;
        spring.id = SpringId::make();
        spring.label = QStringLiteral("1I");
        Reading reading;
        reading.id = ReadingId::make();
        reading.sitting = start.sitting.id;
        reading.spring = spring.id;
        reading.place = {Cylinder(1), Valve::Intake};
        reading.value = TypedForce(1215, 1, ForceUnit::PoundForce);
        reading.author.at = clock.now();
        record.readings = {reading};
        record.newSprings = {spring};
        put(record);
        ASSERT_TRUE(waitFor([&] { return !session.log()->readings.empty(); }));
    }

    std::unique_ptr<RecordsDialog> dialog;
};

TEST_F(RecordsDialogTest, AddsARaceUnderTheNextNumber) {
    makeLogbook();
    addEngine(QStringLiteral("Blue"));
    addRace(1, QDate(2026, 3, 7));
    const auto* panel = open<RacesPanel>(RecordsDialog::Page::Races);
    click(panel, "add");
    EXPECT_EQ(panel->findChild<QLineEdit*>(QStringLiteral("number"))->text(), QStringLiteral("2"));
    panel->findChild<DateField*>(QStringLiteral("racedOn"))->setDate(QDate(2026, 3, 14));
    type(panel, "venue", QStringLiteral("Hill track"));
    type(panel, "laps", QStringLiteral("40"));
    type(panel, "peakRpm", QStringLiteral("9100"));
    click(panel, "save");
    ASSERT_TRUE(waitFor([&] { return session.log()->races.size() == 2; }));
    const Race& race = session.log()->races.back();
    EXPECT_EQ(race.number, 2);
    EXPECT_EQ(race.racedOn, QDate(2026, 3, 14));
    EXPECT_EQ(race.venue, QStringLiteral("Hill track"));
    EXPECT_EQ(race.laps, 40);
    EXPECT_EQ(race.peakRpm, 9100);
    EXPECT_EQ(race.overRev, std::nullopt);
    EXPECT_TRUE(session.log()->amendments.empty());
}

TEST_F(RecordsDialogTest, AmendsARaceWithAReasonAndShowsTheOldValueStruckOut) {
    makeLogbook();
    addEngine(QStringLiteral("Blue"));
    addRace(1, QDate(2026, 3, 7));
    const auto* panel = open<RacesPanel>(RecordsDialog::Page::Races);
    panel->findChild<DateField*>(QStringLiteral("racedOn"))->setDate(QDate(2026, 3, 8));
    click(panel, "save");
    EXPECT_TRUE(faults(panel).contains(QStringLiteral("An amendment needs a reason.")));
    type(panel, "why", QStringLiteral("wrong day"));
    click(panel, "save");
    ASSERT_TRUE(waitFor([&] { return session.log()->amendments.size() == 1; }));
    EXPECT_EQ(session.log()->races.front().racedOn, QDate(2026, 3, 8));
    const auto* changes = panel->findChild<AmendmentList*>();
    ASSERT_EQ(changes->topLevelItemCount(), 1);
    const QTreeWidgetItem* line = changes->topLevelItem(0);
    EXPECT_EQ(line->text(1), QStringLiteral("2026-03-07"));
    EXPECT_TRUE(line->font(1).strikeOut());
    EXPECT_EQ(line->text(2), QStringLiteral("2026-03-08"));
    EXPECT_EQ(line->text(3), QStringLiteral("wrong day"));
    EXPECT_EQ(line->text(4), QStringLiteral("Sam"));
}

TEST_F(RecordsDialogTest, NotesATestDayInLapsAndTakesItBackByUndo) {
    makeLogbook();
    addEngine(QStringLiteral("Blue"));
    addInspection(QDate(2026, 3, 7), 2);
    const auto* panel = open<RunningPanel>(RecordsDialog::Page::Running);
    EXPECT_EQ(panel->findChild<QLineEdit*>(QStringLiteral("engineRaces"))->text(),
              QStringLiteral("2"))
        << "as many as the engine has run";
    panel->findChild<DateField*>(QStringLiteral("ranOn"))->setDate(QDate(2026, 3, 14));
    click(panel, "save");
    EXPECT_TRUE(faults(panel).contains(QStringLiteral("either laps, or what part of a race")));
    type(panel, "laps", QStringLiteral("25"));
    type(panel, "note", QStringLiteral("Test day"));
    click(panel, "save");
    ASSERT_TRUE(waitFor([&] { return session.log()->running.size() == 1; }));
    const Running& running = session.log()->running.front();
    EXPECT_EQ(running.ranOn, QDate(2026, 3, 14));
    EXPECT_EQ(running.engineRaces, 2);
    EXPECT_EQ(running.laps, 25);
    EXPECT_EQ(running.raceThousandths, std::nullopt);
    EXPECT_EQ(running.note, QStringLiteral("Test day"));
    session.undo();
    EXPECT_TRUE(waitFor([&] { return session.log()->running.front().withdrawn; }));
}

TEST_F(RecordsDialogTest, NotesDynoPullsAsAPartOfARaceAndAmendsThem) {
    makeLogbook();
    addEngine(QStringLiteral("Blue"));
    addInspection(QDate(2026, 3, 7), 2);
    const auto* panel = open<RunningPanel>(RecordsDialog::Page::Running);
    panel->findChild<DateField*>(QStringLiteral("ranOn"))->setDate(QDate(2026, 3, 14));
    panel->findChild<QComboBox*>(QStringLiteral("measure"))->setCurrentIndex(1);
    panel->findChild<QDoubleSpinBox*>(QStringLiteral("part"))->setValue(0.25);
    click(panel, "save");
    ASSERT_TRUE(waitFor([&] { return session.log()->running.size() == 1; }));
    EXPECT_EQ(session.log()->running.front().raceThousandths, 250);
    EXPECT_EQ(session.log()->running.front().laps, std::nullopt);
    ASSERT_TRUE(waitFor(
        [&] { return !panel->findChild<QCheckBox*>(QStringLiteral("withdrawn"))->isHidden(); }));
    panel->findChild<QCheckBox*>(QStringLiteral("withdrawn"))->setChecked(true);
    type(panel, "why", QStringLiteral("another engine"));
    click(panel, "save");
    EXPECT_TRUE(waitFor([&] { return session.log()->running.front().withdrawn; }));
}

TEST_F(RecordsDialogTest, NotesWorkAtASpringAndTakesItBackByUndo) {
    makeLogbook();
    addEngine(QStringLiteral("Blue"));
    addInspection(QDate(2026, 3, 7), 2);
    const auto* panel = open<LevelChangesPanel>(RecordsDialog::Page::LevelChanges);
    const auto* spring = panel->findChild<QComboBox*>(QStringLiteral("spring"));
    ASSERT_TRUE(waitFor([&] { return spring->count() == 1; }));
    EXPECT_EQ(spring->currentText(), QStringLiteral("1 I, 1I"));
    panel->findChild<DateField*>(QStringLiteral("changedOn"))->setDate(QDate(2026, 3, 14));
    panel->findChild<QComboBox*>(QStringLiteral("kind"))->setCurrentIndex(2);
    type(panel, "note", QStringLiteral("lighter"));
    click(panel, "save");
    ASSERT_TRUE(waitFor([&] { return session.log()->levelChanges.size() == 1; }));
    const LevelChange& change = session.log()->levelChanges.front();
    EXPECT_EQ(change.spring, session.log()->springs.front().id);
    EXPECT_EQ(change.kind, LevelChangeKind::Retainer);
    EXPECT_EQ(change.changedOn, QDate(2026, 3, 14));
    EXPECT_EQ(change.engineRaces, 2);
    EXPECT_EQ(change.note, QStringLiteral("lighter"));
    session.undo();
    EXPECT_TRUE(waitFor([&] { return session.log()->levelChanges.front().withdrawn; }));
}

TEST_F(RecordsDialogTest, RefusesNumbersThatAreNone) {
    makeLogbook();
    addEngine(QStringLiteral("Blue"));
    const auto* panel = open<RacesPanel>(RecordsDialog::Page::Races);
    type(panel, "peakRpm", QStringLiteral("fast"));
    click(panel, "save");
    EXPECT_EQ(faults(panel), QStringLiteral("Give a whole number from 0 to 30000."));
    EXPECT_TRUE(session.log()->races.empty());
}

TEST_F(RecordsDialogTest, AmendsAWrongDateAndCountOfAnInspection) {
    makeLogbook();
    addEngine(QStringLiteral("Blue"));
    addInspection(QDate(2026, 3, 1), 0);
    const auto* panel = open<InspectionsPanel>(RecordsDialog::Page::Inspections);
    const auto* list = panel->findChild<QTreeWidget*>(QStringLiteral("records"));
    ASSERT_EQ(list->topLevelItemCount(), 1);
    EXPECT_EQ(list->topLevelItem(0)->text(2), QStringLiteral("1"));
    panel->findChild<DateField*>(QStringLiteral("inspectedOn"))->setDate(QDate(2026, 3, 2));
    type(panel, "engineRaces", QStringLiteral("1"));
    type(panel, "why", QStringLiteral("slip of the pen"));
    click(panel, "save");
    ASSERT_TRUE(waitFor([&] { return session.log()->amendments.size() == 2; }));
    EXPECT_EQ(session.log()->inspections.front().inspectedOn, QDate(2026, 3, 2));
    EXPECT_EQ(session.log()->inspections.front().engineRaces, 1);
}

TEST_F(RecordsDialogTest, AmendsTheTesterAndTemperatureOfAnInspection) {
    makeLogbook();
    addEngine(QStringLiteral("Blue"));
    Tester tester;
    tester.id = TesterId::make();
    tester.name = QStringLiteral("Small dial");
    put(AddTester{tester});
    addInspection(QDate(2026, 3, 1), 0);
    const auto* panel = open<SittingsPanel>(RecordsDialog::Page::Sittings);
    panel->findChild<QComboBox*>(QStringLiteral("tester"))->setCurrentIndex(1);
    type(panel, "temperature", QStringLiteral("82,5"));
    type(panel, "why", QStringLiteral("not noted on the day"));
    click(panel, "save");
    ASSERT_TRUE(waitFor([&] { return session.log()->sittings.front().tester == tester.id; }));
    EXPECT_EQ(session.log()->sittings.front().engineTemperature, Temperature::milliCelsius(82500));
}

TEST_F(RecordsDialogTest, AmendsTheLabelOfASpring) {
    makeLogbook();
    addEngine(QStringLiteral("Blue"));
    addInspection(QDate(2026, 3, 1), 0);
    const auto* panel = open<SpringsPanel>(RecordsDialog::Page::Springs);
    type(panel, "label", QStringLiteral("S-27"));
    type(panel, "why", QStringLiteral("misread"));
    click(panel, "save");
    ASSERT_TRUE(
        waitFor([&] { return session.log()->springs.front().label == QStringLiteral("S-27"); }));
    const QList<AmendmentList*> lists = dialog->findChildren<AmendmentList*>();
    EXPECT_TRUE(std::any_of(lists.begin(), lists.end(), [](const AmendmentList* list) {
        return list->topLevelItemCount() == 1 &&
               list->topLevelItem(0)->text(1) == QStringLiteral("1I");
    }));
}

TEST_F(RecordsDialogTest, FitsASmallLaptopAtTheLargestText) {
    makeLogbook();
    addEngine(QStringLiteral("Blue"));
    const QFont before = QApplication::font();
    QFont large = before;
    large.setPointSizeF(large.pointSizeF() * 1.5);
    QApplication::setFont(large);
    {
        const RecordsDialog records(session, preferences, RecordsDialog::Page::Races);
        EXPECT_LE(records.minimumSizeHint().width(), 1366);
        EXPECT_LE(records.minimumSizeHint().height(), 740);
    }
    QApplication::setFont(before);
}

} // namespace
