#include "tests/support/log_builder.h"
#include "tests/support/printers.h"
#include "tests/support/session_fixture.h"
#include "ui/dialogs/swap_dialog.h"
#include "ui/pages/review_board.h"
#include "ui/pages/review_decisions.h"
#include "ui/pages/review_detail.h"
#include "ui/pages/review_page.h"
#include "ui/preferences.h"

#include <QApplication>
#include <QLineEdit>
#include <QPushButton>
#include <QSettings>
#include <QTest>
#include <QTreeWidget>

namespace coilbook {
namespace {

using testing::exhaust;
using testing::intake;
using testing::waitFor;

class ReviewPageTest : public testing::SessionTest {
protected:
    void SetUp() override {
        SessionTest::SetUp();
        m_settings = std::make_unique<QSettings>(m_folder.filePath(QStringLiteral("settings.ini")),
                                                 QSettings::IniFormat);
        m_preferences = std::make_unique<Preferences>(*m_settings);
        m_page = std::make_unique<ReviewPage>(m_session, *m_preferences);
        m_page->resize(1200, 640);
        m_page->show();
        ASSERT_TRUE(QTest::qWaitForWindowActive(m_page.get()));
    }

    void TearDown() override { m_page.reset(); }

    void addEngine() {
        m_engine.id = EngineId::make();
        m_engine.name = QStringLiteral("Heron");
        ASSERT_TRUE(apply(AddEngine{m_engine, {}, {}}).has_value());
        select(m_engine.id);
    }

    /// Inspects two springs once.
    void inspect(const QDate& on, int races, const QStringList& lbf) {
        const Inspection inspection{InspectionId::make(), m_engine.id, on, races, true};
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
            reading.value =
                *TypedForce::parse(lbf[static_cast<qsizetype>(i)], ForceUnit::PoundForce);
            reading.author.at = m_clock.now();
            record.readings.push_back(reading);
        }
        ASSERT_TRUE(apply(record).has_value());
    }

    /// Types the reason into the dialog that asks for it.
    void decideWith(const QString& why) {
        ReasonDialog* dialog = m_page->reasonDialog();
        ASSERT_NE(dialog, nullptr);
        ASSERT_TRUE(QTest::qWaitForWindowActive(dialog));
        QTest::keyClicks(dialog->findChild<QLineEdit*>(QStringLiteral("why")), why);
        QTest::keyClick(dialog, Qt::Key_Return);
        waitFor([&] { return m_page->reasonDialog() == nullptr; });
    }

    [[nodiscard]] bool boardIsShown() const { return m_page->emptyText().isEmpty(); }

    [[nodiscard]] QString labelAt(const Place& place) const {
        for (const SpringAssessment& spring : m_session.assessment()->springs) {
            if (spring.place == place) {
                return spring.label;
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

TEST_F(ReviewPageTest, SaysWhatToDoWhileThereIsNothingToShow) {
    EXPECT_TRUE(m_page->emptyText().contains(QStringLiteral("No engine")));
    addEngine();
    waitFor([&] { return m_page->emptyText().contains(QStringLiteral("Bench (key F2)")); });
    m_session.closeLogbook();
    waitFor([&] { return m_page->emptyText().contains(QStringLiteral("No logbook")); });
}

TEST_F(ReviewPageTest, ShowsTheBoardOnceReadingsAreThere) {
    addEngine();
    inspect(QDate(2026, 4, 1), 0, {QStringLiteral("121.5"), QStringLiteral("120")});
    waitFor([&] { return boardIsShown(); });
    EXPECT_TRUE(boardIsShown());
    waitFor([&] { return m_page->board().summary().contains(QStringLiteral("2 no trend yet")); });
}

TEST_F(ReviewPageTest, RecordsASwapByKeyboardAndTakesItBackByUndo) {
    addEngine();
    inspect(QDate(2026, 4, 1), 0, {QStringLiteral("121.5"), QStringLiteral("120")});
    inspect(QDate(2026, 5, 2), 4, {QStringLiteral("116"), QStringLiteral("119")});
    waitFor([&] { return boardIsShown() && m_page->board().selected() == exhaust(3); });
    m_page->board().plan().setFocus();
    QTest::keyClick(&m_page->board().plan(), Qt::Key_S);
    SwapDialog* dialog = m_page->swapDialog();
    ASSERT_NE(dialog, nullptr);
    ASSERT_TRUE(QTest::qWaitForWindowActive(dialog));

    const auto focus = [&] {
        return dialog->isAncestorOf(QApplication::focusWidget()) ? QApplication::focusWidget()
                                                                 : nullptr;
    };
    ASSERT_TRUE(QTest::qWaitFor([&] { return focus() != nullptr; }));
    QTest::keyClicks(focus(), QStringLiteral("S-07")); // fitted elsewhere
    QTest::keyClick(focus(), Qt::Key_Return);
    EXPECT_TRUE(dialog->faults().contains(QStringLiteral("4 I"))) << dialog->faults().toStdString();
    QTest::keyClick(focus(), Qt::Key_A, Qt::ControlModifier);
    QTest::keyClicks(focus(), QStringLiteral("S-20"));
    QTest::keyClick(focus(), Qt::Key_Return);

    waitFor(
        [&] { return m_session.assessment() && labelAt(exhaust(3)) == QStringLiteral("S-20"); });
    EXPECT_EQ(labelAt(exhaust(3)), QStringLiteral("S-20"));
    waitFor([&] { return m_page->swapDialog() == nullptr; });
    EXPECT_EQ(m_page->swapDialog(), nullptr);

    m_session.undo();
    waitFor([&] { return labelAt(exhaust(3)) == QStringLiteral("S-06"); });
    EXPECT_EQ(labelAt(exhaust(3)), QStringLiteral("S-06"));
}

// One reading of the spring in view is set aside, and that taken back, by keyboard alone.
TEST_F(ReviewPageTest, SetsAReadingAsideByKeyboardAndTakesItBack) {
    addEngine();
    for (int races = 0; races <= 4; ++races) {
        const QString lbf = QString::number(121.5 - 0.3 * races - (races == 2 ? 1.5 : 0.0));
        inspect(QDate(2026, 4, 1).addDays(7 * races), races, {lbf, QStringLiteral("120")});
    }
    waitFor([&] { return boardIsShown() && m_page->board().selected().has_value(); });
    m_page->board().select(exhaust(3));
    m_page->board().enlarge();
    ReviewDetail& detail = m_page->board().detail();
    waitFor([&] { return detail.chart().chart().readings.size() == 5; });
    detail.chart().setCurrent(2);
    EXPECT_EQ(detail.trail().currentItem()->text(0), QStringLiteral("2026-04-15"))
        << "the row of the reading in view is chosen";
    QPushButton* aside = detail.decisions().button(ReadingJudgement::SetAside);
    ASSERT_NE(aside, nullptr);
    EXPECT_EQ(detail.decisions().button(ReadingJudgement::LeftToModel), nullptr);
    aside->setFocus();
    QTest::keyClick(aside, Qt::Key_Space);
    decideWith(QStringLiteral("hung up on the adapter"));
    waitFor([&] { return !m_session.log()->decisions.empty(); });
    const Decision& decision = m_session.log()->decisions.back();
    EXPECT_EQ(decision.judgement, ReadingJudgement::SetAside);
    EXPECT_EQ(decision.spring, m_springs[0].id);
    EXPECT_EQ(decision.inspection, m_session.log()->inspections[2].id);
    EXPECT_EQ(decision.author.why, QStringLiteral("hung up on the adapter"));
    const auto said = [&](const char* text) {
        const QTreeWidget& trail = detail.trail();
        for (int row = 0; row < trail.topLevelItemCount(); ++row) {
            if (trail.topLevelItem(row)->text(6).contains(QString::fromLatin1(text))) {
                return true;
            }
        }
        return false;
    };
    waitFor([&] { return said("set aside: "); });
    EXPECT_TRUE(said("hung up on the adapter"));

    detail.chart().setCurrent(2);
    waitFor([&] { return detail.decisions().button(ReadingJudgement::LeftToModel) != nullptr; });
    EXPECT_EQ(detail.decisions().button(ReadingJudgement::SetAside), nullptr);
    m_session.undo();
    waitFor([&] {
        return m_session.log()->decisions.back().judgement == ReadingJudgement::LeftToModel;
    });
    waitFor([&] { return !said("set aside"); });
    EXPECT_FALSE(said("set aside"));
}

TEST_F(ReviewPageTest, ADropThatMayBeIsConfirmedOrDeniedWithAReason) {
    addEngine();
    for (int races = 0; races <= 6; ++races) {
        const QString lbf = QString::number(121.5 - 0.2 * races - (races == 6 ? 8.0 : 0.0));
        inspect(QDate(2026, 4, 1).addDays(7 * races), races,
                {lbf, QString::number(120 - 0.2 * races)});
    }
    waitFor([&] { return boardIsShown() && m_page->board().selected() == exhaust(3); });
    m_page->board().enlarge();
    ReviewDetail& detail = m_page->board().detail();
    // The assessment of all seven follows their readings.
    waitFor([&] { return detail.decisions().button(ReadingJudgement::DropDenied) != nullptr; });
    QPushButton* confirm = detail.decisions().button(ReadingJudgement::DropConfirmed);
    ASSERT_NE(confirm, nullptr);
    QTest::mouseClick(confirm, Qt::LeftButton);
    decideWith(QStringLiteral("tested twice more"));
    waitFor([&] { return !m_session.log()->decisions.empty(); });
    EXPECT_EQ(m_session.log()->decisions.back().judgement, ReadingJudgement::DropConfirmed);
}

} // namespace
} // namespace coilbook
