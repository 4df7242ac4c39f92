#include "core/domain/shelf.h"
#include "tests/support/log_builder.h"
#include "tests/support/printers.h"
#include "tests/support/session_fixture.h"
#include "ui/dialogs/records_dialog.h"
#include "ui/dialogs/swap_dialog.h"
#include "ui/pages/lives_view.h"
#include "ui/pages/plan_view.h"
#include "ui/pages/review_page.h"
#include "ui/pages/shelf_view.h"
#include "ui/preferences.h"

#include <QComboBox>
#include <QLineEdit>
#include <QPushButton>
#include <QSettings>
#include <QTableWidget>
#include <QTest>
#include <QTreeWidget>

namespace coilbook {
namespace {

using testing::exhaust;
using testing::intake;
using testing::waitFor;

/// Two springs that lose a pound a race, read after each of five races; a planned race, and a
/// spare.
class ReviewViewsTest : public testing::SessionTest {
protected:
    void SetUp() override {
        SessionTest::SetUp();
        m_settings = std::make_unique<QSettings>(m_folder.filePath(QStringLiteral("settings.ini")),
                                                 QSettings::IniFormat);
        m_preferences = std::make_unique<Preferences>(*m_settings);
        m_engine.id = EngineId::make();
        m_engine.name = QStringLiteral("Heron");
        ASSERT_TRUE(apply(AddEngine{m_engine, {}, {}}).has_value());
        select(m_engine.id);
        for (int races = 0; races <= 4; ++races) {
            inspect(races);
        }
        PlannedRace race;
        race.id = PlannedRaceId::make();
        race.engine = m_engine.id;
        race.plannedOn = QDate(2026, 12, 1);
        race.venue = QStringLiteral("Low Fen");
        ASSERT_TRUE(apply(AddPlannedRace{race}).has_value());
        ShelveSpring spare;
        spare.newSpring = Spring{SpringId::make(), QStringLiteral("N-1"), {}, {}, {}};
        spare.shelving.id = ShelvingId::make();
        spare.shelving.engine = m_engine.id;
        spare.shelving.spring = spare.newSpring->id;
        spare.shelving.shelvedOn = QDate(2026, 4, 1);
        spare.shelving.pressure = TypedForce(1210, 1, ForceUnit::PoundForce);
        ASSERT_TRUE(apply(spare).has_value());
        m_page = std::make_unique<ReviewPage>(m_session, *m_preferences);
        m_page->resize(1200, 640);
        m_page->show();
        ASSERT_TRUE(QTest::qWaitForWindowActive(m_page.get()));
        waitFor([&] { return m_page->emptyText().isEmpty(); });
    }

    void TearDown() override { m_page.reset(); }

    void inspect(int races) {
        const Inspection inspection{InspectionId::make(), m_engine.id,
                                    QDate(2026, 4, 1).addDays(7 * races), races, true};
        const Sitting sitting{SittingId::make(), inspection.id, {}, {}, {}};
        ASSERT_TRUE(apply(StartInspection{inspection, sitting}).has_value());
        RecordReadings record;
        record.newSprings = m_springs;
        for (std::size_t i = 0; i < m_springs.size(); ++i) {
            Reading reading;
            reading.id = ReadingId::make();
            reading.sitting = sitting.id;
            reading.spring = m_springs[i].id;
            reading.place = i == 0 ? exhaust(3) : intake(4);
            reading.value = TypedForce(1215 - 10 * races, 1, ForceUnit::PoundForce);
            reading.author.at = m_clock.now();
            record.readings.push_back(reading);
        }
        ASSERT_TRUE(apply(record).has_value());
    }

    /// Labels on the shelf, and of what was thrown out behind a bar.
    [[nodiscard]] QString shelf() const {
        QStringList spares;
        QStringList scrap;
        for (const ShelvedSpring& spring : shelfOf(*m_session.log(), *m_session.history())) {
            (spring.where == Storage::Shelf ? spares : scrap) << spring.spring.label;
        }
        return spares.join(QLatin1Char(' ')) + QLatin1Char('|') + scrap.join(QLatin1Char(' '));
    }

    [[nodiscard]] QString labelAt(const Place& place) const {
        for (const HistoryLife& life : m_session.history()->lives) {
            if (life.fitted && life.place == place) {
                return life.label;
            }
        }
        return {};
    }

    std::vector<Spring> m_springs{{SpringId::make(), QStringLiteral("S-06"), {}, {}, {}},
                                  {SpringId::make(), QStringLiteral("S-07"), {}, {}, {}}};
    Engine m_engine;
    std::unique_ptr<QSettings> m_settings;
    std::unique_ptr<Preferences> m_preferences;
    std::unique_ptr<ReviewPage> m_page;
};

TEST_F(ReviewViewsTest, KeysLeadToEachViewAndBack) {
    for (const auto& [key, view] : {std::pair{Qt::Key_2, ReviewPage::View::Plan},
                                    std::pair{Qt::Key_3, ReviewPage::View::Shelf},
                                    std::pair{Qt::Key_4, ReviewPage::View::Lives},
                                    std::pair{Qt::Key_1, ReviewPage::View::Springs}}) {
        QTest::keyClick(m_page.get(), key, Qt::ControlModifier);
        EXPECT_EQ(m_page->view(), view);
    }
}

TEST_F(ReviewViewsTest, ThePlanSaysWhatToChangeAndHowManySparesToHave) {
    m_page->showView(ReviewPage::View::Plan);
    waitFor([&] { return m_page->plan().said().contains(QStringLiteral("not running out")); });
    const QString said = m_page->plan().said();
    EXPECT_TRUE(said.contains(QStringLiteral("2026-12-01 Low Fen"))) << said.toStdString();
    EXPECT_TRUE(said.contains(QStringLiteral("There is 1 on the shelf"))) << said.toStdString();
    const QTableWidget& table = m_page->plan().table();
    ASSERT_GE(table.rowCount(), 2);
    EXPECT_TRUE(table.item(0, 4)->text().contains(QLatin1Char('%')));
}

TEST_F(ReviewViewsTest, FurtherLinesStandBelowThePlan) {
    m_page->showView(ReviewPage::View::Plan);
    waitFor([&] { return m_page->plan().planner().plan() != nullptr; });
    m_page->plan().setMoreLines({{QStringLiteral("Race 9"), QStringLiteral("Change the oil.")}});
    EXPECT_TRUE(m_page->plan().said().endsWith(QStringLiteral("Race 9: Change the oil.")));
}

TEST_F(ReviewViewsTest, ASwapFromThePlanTakesTheSpareAndUndoPutsAllBack) {
    m_page->showView(ReviewPage::View::Plan);
    waitFor([&] { return m_page->plan().planner().plan() != nullptr; });
    m_page->plan().select(exhaust(3));
    QTest::keyClick(&m_page->plan().table(), Qt::Key_S);
    SwapDialog* dialog = m_page->swapDialog();
    ASSERT_NE(dialog, nullptr);
    ASSERT_TRUE(QTest::qWaitForWindowActive(dialog));
    EXPECT_EQ(dialog->findChildren<QComboBox*>().front()->currentText(), QStringLiteral("N-1"))
        << "the spare that matches is proposed";
    QTest::keyClick(dialog, Qt::Key_Return);
    waitFor([&] { return m_page->swapDialog() == nullptr; });
    waitFor([&] { return labelAt(exhaust(3)) == QStringLiteral("N-1"); });
    EXPECT_EQ(shelf(), QStringLiteral("|S-06")) << "it went to scrap, as the dialog said";
    m_session.undo();
    waitFor([&] { return labelAt(exhaust(3)) == QStringLiteral("S-06"); });
    EXPECT_EQ(shelf(), QStringLiteral("N-1|"));
    m_session.redo();
    waitFor([&] { return labelAt(exhaust(3)) == QStringLiteral("N-1"); });
    EXPECT_EQ(shelf(), QStringLiteral("|S-06"));
}

TEST_F(ReviewViewsTest, TheShelfListsItsSpringsAndTakesANewSpare) {
    m_page->showView(ReviewPage::View::Shelf);
    ASSERT_EQ(m_page->shelf().list().topLevelItemCount(), 1);
    EXPECT_EQ(m_page->shelf().list().topLevelItem(0)->text(0), QStringLiteral("N-1"));
    for (QPushButton* button : m_page->shelf().findChildren<QPushButton*>()) {
        if (button->text().contains(QStringLiteral("New spare"))) {
            button->click();
        }
    }
    RecordsDialog* dialog = m_page->recordsDialog();
    ASSERT_NE(dialog, nullptr);
    dialog->close();
    waitFor([&] { return m_page->recordsDialog() == nullptr; });
}

TEST_F(ReviewViewsTest, LivesComeFromTheWholeLogbook) {
    m_page->showView(ReviewPage::View::Lives);
    waitFor([&] { return m_page->lives().springs().topLevelItemCount() == 2; });
    m_page->lives().compareBy(LifeGrouping::Valve);
    EXPECT_EQ(m_page->lives().groups().topLevelItemCount(), 2);
    EXPECT_FALSE(m_page->lives().said().isEmpty());
}

} // namespace
} // namespace coilbook
