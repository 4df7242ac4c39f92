#include "core/domain/layout_schemes.h"
#include "tests/support/printers.h"
#include "tests/ui/window/logbook_fixture.h"
#include "ui/dialogs/engine_dialog.h"
#include "ui/dialogs/engine_facts_form.h"
#include "ui/widgets/quantity_field.h"

#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPointer>
#include <QPushButton>

using namespace coilbook;

namespace {

class EngineDialogTest : public coilbook::testing::LogbookFixture {
protected:
    QPointer<EngineDialog> openDialog(const std::optional<Engine>& engine = {}) {
        QPointer<EngineDialog> dialog = new EngineDialog(session, preferences, engine);
        dialog->open();
        EXPECT_TRUE(QTest::qWaitForWindowActive(dialog));
        return dialog;
    }

    static void type(const QWidget* dialog, const char* field, const QString& text) {
        auto* line = dialog->findChild<QLineEdit*>(QString::fromLatin1(field));
        ASSERT_NE(line, nullptr) << field;
        line->selectAll();
        QTest::keyClicks(line, text);
    }

    static void save(const QWidget* dialog) {
        QTest::mouseClick(dialog->findChild<QPushButton*>(QStringLiteral("save")), Qt::LeftButton);
    }

    static QString faults(const QWidget* dialog) {
        return dialog->findChild<EngineFactsForm*>()->faults();
    }
};

TEST_F(EngineDialogTest, SetsUpAnEngineWithItsSixteenSprings) {
    makeLogbook();
    const auto dialog = openDialog();
    type(dialog, "name", QStringLiteral(" Blue "));
    type(dialog, "serial", QStringLiteral("S-7"));
    type(dialog, "limit", QStringLiteral("4,5"));
    type(dialog, "rpmCeiling", QStringLiteral("9200"));
    save(dialog);
    ASSERT_TRUE(waitFor([&] { return dialog.isNull() && session.engines().size() == 1; }));
    session.selectEngine(session.engines().front().id);
    ASSERT_TRUE(waitFor([&] { return session.log() != nullptr; }));
    const EngineLog& log = *session.log();
    EXPECT_EQ(log.engine.name, QStringLiteral("Blue"));
    EXPECT_EQ(log.engine.serial, QStringLiteral("S-7"));
    EXPECT_EQ(log.engine.rules.limit, Force::poundsForce(4.5));
    EXPECT_EQ(log.engine.rpmCeiling, 9200);
    EXPECT_EQ(log.engine.layout, defaultLayout());
    ASSERT_EQ(log.fittings.size(), 16U);
    ASSERT_EQ(log.springs.size(), 16U);
    for (const Fitting& fitting : log.fittings) {
        const auto spring =
            std::find_if(log.springs.begin(), log.springs.end(),
                         [&](const Spring& known) { return known.id == fitting.spring; });
        ASSERT_NE(spring, log.springs.end());
        EXPECT_EQ(spring->label, placeText(fitting.place).remove(QLatin1Char(' ')));
    }
}

TEST_F(EngineDialogTest, KeepsHowWearIsCountedAndSaysWhichLapsAreMissing) {
    makeLogbook();
    addEngine(QStringLiteral("Blue"));
    for (int number = 1; number <= 3; ++number) {
        Race race;
        race.id = RaceId::make();
        race.engine = session.selectedEngine();
        race.number = number;
        race.racedOn = QDate(2026, 3, 7 * number);
        race.laps = number == 2 ? std::nullopt : std::optional(40);
        put(AddRace{race});
    }
    ASSERT_TRUE(waitFor([&] { return session.log()->races.size() == 3; }));
    const auto dialog = openDialog(session.log()->engine);
    const auto* missing = dialog->findChild<QLabel*>(QStringLiteral("lapsMissing"));
    EXPECT_FALSE(missing->isHidden());
    EXPECT_EQ(missing->text(),
              QStringLiteral("Laps are missing of race 2: until it has them, wear goes by races."));
    dialog->findChild<QCheckBox*>(QStringLiteral("springsRunIn"))->setChecked(true);
    dialog->findChild<QComboBox*>(QStringLiteral("exposure"))->setCurrentIndex(1);
    type(dialog, "why", QStringLiteral("run in on the fixture"));
    save(dialog);
    ASSERT_TRUE(waitFor([&] { return dialog.isNull() && session.log()->engine.springsRunIn; }));
    EXPECT_EQ(session.log()->engine.exposureUnit, ExposureUnit::Laps);
    session.undo();
    ASSERT_TRUE(waitFor([&] { return !session.log()->engine.springsRunIn; }));
    EXPECT_EQ(session.log()->engine.exposureUnit, ExposureUnit::Races);
}

TEST_F(EngineDialogTest, SaysUnderTheFieldWhatIsMissing) {
    makeLogbook();
    const auto dialog = openDialog();
    type(dialog, "limit", QStringLiteral("none"));
    save(dialog);
    EXPECT_TRUE(faults(dialog).contains(QStringLiteral("The engine needs a name.")));
    EXPECT_TRUE(faults(dialog).contains(QStringLiteral("cannot be the limit")));
    EXPECT_TRUE(session.engines().empty());
    delete dialog;
}

TEST_F(EngineDialogTest, SaysThatANameIsTakenWhenTheLogbookRefusesIt) {
    makeLogbook();
    addEngine(QStringLiteral("Blue"));
    const auto dialog = openDialog();
    type(dialog, "name", QStringLiteral("Blue"));
    save(dialog);
    EXPECT_TRUE(waitFor([&] { return !faults(dialog).isEmpty(); }));
    EXPECT_TRUE(faults(dialog).contains(QStringLiteral("Choose another name.")));
    EXPECT_EQ(session.engines().size(), 1U);
    delete dialog;
}

TEST_F(EngineDialogTest, AmendsOnlyWithAReasonAndKeepsTheOldValue) {
    makeLogbook();
    const Engine engine = addEngine(QStringLiteral("Blue"));
    preferences.setPersonName(QStringLiteral("Sam"));
    const auto dialog = openDialog(engine);
    type(dialog, "name", QStringLiteral("Navy"));
    save(dialog);
    EXPECT_TRUE(faults(dialog).contains(QStringLiteral("An amendment needs a reason.")));
    type(dialog, "why", QStringLiteral("repainted"));
    save(dialog);
    ASSERT_TRUE(waitFor(
        [&] { return dialog.isNull() && session.log()->engine.name == QStringLiteral("Navy"); }));
    ASSERT_EQ(session.log()->amendments.size(), 1U);
    const Amendment& amendment = session.log()->amendments.front();
    EXPECT_EQ(amendment.oldValue, QStringLiteral("Blue"));
    EXPECT_EQ(amendment.author.who, QStringLiteral("Sam"));
    EXPECT_EQ(amendment.author.why, QStringLiteral("repainted"));
}

TEST_F(EngineDialogTest, LeavesALimitThatNobodyTouchedAsItIsInTheOtherUnit) {
    makeLogbook();
    const Engine engine = addEngine(QStringLiteral("Blue"));
    preferences.setForceUnit(ForceUnit::Newton);
    const auto dialog = openDialog(engine);
    EXPECT_EQ(dialog->findChild<QuantityField*>(QStringLiteral("limit"))->text(),
              QStringLiteral("22.24"));
    type(dialog, "serial", QStringLiteral("S-7"));
    type(dialog, "why", QStringLiteral("forgotten"));
    save(dialog);
    ASSERT_TRUE(waitFor([&] { return session.log()->engine.serial == QStringLiteral("S-7"); }));
    EXPECT_EQ(session.log()->engine.rules.limit, Force::poundsForce(5.0));
    EXPECT_EQ(session.log()->amendments.size(), 1U);
}

TEST_F(EngineDialogTest, RefusesALayoutThatDoesNotAddUp) {
    makeLogbook();
    const auto dialog = openDialog();
    type(dialog, "name", QStringLiteral("Blue"));
    dialog->findChild<QPlainTextEdit*>(QStringLiteral("banks"))
        ->setPlainText(QStringLiteral("Left: 1E 1I 3I 3E\nRight: 2E 2I 4I 4E"));
    save(dialog);
    QTest::qWait(50);
    EXPECT_TRUE(session.engines().empty());
    type(dialog, "firingOrder", QStringLiteral("1-3-4-2"));
    save(dialog);
    ASSERT_TRUE(waitFor([&] { return session.engines().size() == 1; }));
    session.selectEngine(session.engines().front().id);
    ASSERT_TRUE(waitFor([&] { return session.log() != nullptr; }));
    EXPECT_EQ(session.log()->engine.layout.cylinders(), 4);
    EXPECT_EQ(session.log()->fittings.size(), 8U);
}

TEST_F(EngineDialogTest, AReadySchemeCanBeChosenAndAnOwnRoundTyped) {
    makeLogbook();
    const auto dialog = openDialog();
    type(dialog, "name", QStringLiteral("Blue"));
    auto* scheme = dialog->findChild<QComboBox*>(QStringLiteral("scheme"));
    ASSERT_EQ(scheme->currentIndex(), 1) << "a new engine begins with the first of them";
    scheme->setCurrentIndex(3);
    Q_EMIT scheme->activated(3);
    QStringList round;
    const EngineLayout expected = v8Schemes().at(2).layout;
    for (const Place& place : expected.places()) {
        round.prepend(placeText(place).remove(QLatin1Char(' ')));
    }
    type(dialog, "ownRound", round.join(QLatin1Char(' ')));
    EXPECT_EQ(scheme->currentIndex(), 3);
    save(dialog);
    ASSERT_TRUE(waitFor([&] { return session.engines().size() == 1; }));
    session.selectEngine(session.engines().front().id);
    ASSERT_TRUE(waitFor([&] { return session.log() != nullptr; }));
    const EngineLayout& layout = session.log()->engine.layout;
    EXPECT_EQ(layout.firingOrder, expected.firingOrder);
    EXPECT_EQ(layout.banks, expected.banks);
    EXPECT_EQ(layout.ownRound.front(), expected.places().back());
}

TEST_F(EngineDialogTest, FitsASmallLaptopAtTheLargestText) {
    makeLogbook();
    const QFont before = QApplication::font();
    QFont large = before;
    large.setPointSizeF(large.pointSizeF() * 1.5);
    QApplication::setFont(large);
    {
        EngineDialog dialog(session, preferences, std::nullopt);
        EXPECT_LE(dialog.minimumSizeHint().width(), 1366);
        EXPECT_LE(dialog.minimumSizeHint().height(), 740);
    }
    QApplication::setFont(before);
}

} // namespace
