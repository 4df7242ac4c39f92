#include "tests/support/log_builder.h"
#include "tests/support/printers.h"
#include "tests/ui/pages/review_sample.h"
#include "ui/pages/review_board.h"
#include "ui/pages/review_detail.h"

#include <QHeaderView>
#include <QSignalSpy>
#include <QTableView>
#include <QTest>
#include <QTreeWidget>
#include <gtest/gtest.h>

namespace coilbook {
namespace {

using testing::exhaust;
using testing::intake;

class ReviewBoardTest : public ::testing::Test {
protected:
    ReviewBoardTest() { board.resize(1366, 640); }

    void show(const EngineLog& log) {
        const auto shared = std::make_shared<const EngineLog>(log);
        const EngineHistory history = historyOf(log);
        board.show(shared, history,
                   std::make_shared<const Assessment>(assess(history, log.engine.rules)),
                   Quantities(ForceUnit::PoundForce, QLocale(QLocale::C)));
        board.QWidget::show();
        ASSERT_TRUE(QTest::qWaitForWindowActive(&board));
    }

    /// A cell of the row that is selected in the table.
    [[nodiscard]] QString inTable(int column) const {
        return board.table().currentIndex().siblingAtColumn(column).data().toString();
    }

    ReviewBoard board;
};

TEST_F(ReviewBoardTest, BeginsWithTheMostUrgentSpringAndItsReasons) {
    show(testing::reviewSample());
    EXPECT_EQ(board.selected(), exhaust(3));
    EXPECT_EQ(board.plan().selected(), exhaust(3));
    EXPECT_EQ(board.table().currentIndex().row(), 0);
    EXPECT_EQ(inTable(StandingTableModel::PlaceColumn), QStringLiteral("3 E"));
    EXPECT_FALSE(board.reasons().isEmpty());
    EXPECT_TRUE(board.summary().contains(QStringLiteral("1 past the limit")))
        << board.summary().toStdString();
}

TEST_F(ReviewBoardTest, ANewestInspectionThatReadsLowIsAnnouncedOnce) {
    EngineLog log = testing::reviewSample();
    show(log);
    EXPECT_TRUE(board.shiftNotice().isEmpty()) << board.shiftNotice().toStdString();
    for (Reading& reading : log.readings) {
        if (reading.sitting == log.sittings.back().id) {
            const double lbf = reading.value.force().inPoundsForce() - 4.0;
            reading.value = *TypedForce::parse(QString::number(lbf, 'f', 2), ForceUnit::PoundForce);
        }
    }
    show(log);
    EXPECT_TRUE(board.shiftNotice().contains(QStringLiteral("low on all springs")))
        << board.shiftNotice().toStdString();
    EXPECT_TRUE(board.shiftNotice().contains(QStringLiteral("test three springs again")));
    EXPECT_FALSE(board.reasons().contains(QStringLiteral("low on all springs")))
        << board.reasons().toStdString();
}

TEST_F(ReviewBoardTest, AYoungEngineIsCalledProvisionalInPlanAndTable) {
    show(testing::reviewSample(3));
    EXPECT_TRUE(inTable(StandingTableModel::StandingColumn).endsWith(QStringLiteral("provisional")))
        << inTable(StandingTableModel::StandingColumn).toStdString();
    EXPECT_TRUE(board.reasons().contains(QStringLiteral("This rests on few inspections")));
}

TEST_F(ReviewBoardTest, WalksTheEngineByArrowKeysAndTakesTheTableAlong) {
    show(testing::reviewSample());
    board.plan().setFocus();
    QTest::keyClick(&board.plan(), Qt::Key_Right);
    EXPECT_EQ(board.selected(), exhaust(4));
    EXPECT_EQ(inTable(StandingTableModel::PlaceColumn), QStringLiteral("4 E"));
    board.table().setFocus();
    QTest::keyClick(&board.table(), Qt::Key_Home, Qt::ControlModifier);
    EXPECT_EQ(board.plan().selected(), exhaust(3));
}

TEST_F(ReviewBoardTest, EnlargesByEnterFromPlanAndTableAndGoesBackByEscape) {
    show(testing::reviewSample());
    board.plan().setFocus();
    QTest::keyClick(&board.plan(), Qt::Key_Return);
    EXPECT_TRUE(board.isEnlarged());
    EXPECT_TRUE(board.detail().chart().hasFocus());
    QTest::keyClick(&board.detail().chart(), Qt::Key_Escape);
    EXPECT_FALSE(board.isEnlarged());
    EXPECT_TRUE(board.plan().hasFocus());
    board.table().setFocus();
    QTest::keyClick(&board.table(), Qt::Key_Return);
    EXPECT_TRUE(board.isEnlarged());
}

TEST_F(ReviewBoardTest, EnlargesByDoubleClickOnASmallChart) {
    show(testing::reviewSample());
    const QPoint cell = board.plan().planLayout().areaOf(intake(8)).center().toPoint();
    QTest::mouseClick(&board.plan(), Qt::LeftButton, {}, cell);
    QTest::mouseDClick(&board.plan(), Qt::LeftButton, {}, cell);
    EXPECT_TRUE(board.isEnlarged());
    EXPECT_EQ(board.selected(), intake(8));
}

TEST_F(ReviewBoardTest, TellsExactValuesByArrowKeysAndUnderThePointer) {
    show(testing::reviewSample());
    board.enlarge();
    LossChartView& chart = board.detail().chart();
    ASSERT_EQ(chart.chart().readings.size(), 8U);
    EXPECT_EQ(chart.current(), 7U);
    EXPECT_TRUE(board.detail().values().contains(QStringLiteral("2026-06-07")));
    QTest::keyClick(&chart, Qt::Key_Home);
    EXPECT_EQ(chart.current(), 0U);
    EXPECT_TRUE(board.detail().values().startsWith(QStringLiteral("2026-03-01 after 0 races")))
        << board.detail().values().toStdString();
    QTest::keyClick(&chart, Qt::Key_Right);
    EXPECT_EQ(chart.current(), 1U);
    QTest::mouseMove(&chart, QPoint(chart.width() / 2, chart.height() / 2));
    EXPECT_TRUE(QTest::qWaitFor([&] { return chart.current() > 1U; }));
}

TEST_F(ReviewBoardTest, ListsAmendedFormsStruckThroughWithWhoAndWhy) {
    show(testing::reviewSample());
    board.enlarge();
    const QTreeWidget& trail = board.detail().trail();
    ASSERT_EQ(trail.topLevelItemCount(), 9); // eight inspections and one amended form
    int struck = 0;
    for (int i = 0; i < trail.topLevelItemCount(); ++i) {
        for (int column = 0; column < trail.columnCount(); ++column) {
            if (trail.topLevelItem(i)->font(column).strikeOut()) {
                ++struck;
                EXPECT_EQ(trail.topLevelItem(i)->text(trail.columnCount() - 1),
                          QStringLiteral("amended: Bench, slip of the pen"));
            }
        }
    }
    EXPECT_EQ(struck, 1);
}

TEST_F(ReviewBoardTest, AsksForASwapAtTheSelectedPlaceByOneKey) {
    show(testing::reviewSample());
    QSignalSpy wanted(&board, &ReviewBoard::swapWanted);
    board.plan().setFocus();
    QTest::keyClick(&board.plan(), Qt::Key_S);
    ASSERT_EQ(wanted.count(), 1);
    EXPECT_EQ(wanted.front().front().value<Place>(), exhaust(3));
}

TEST_F(ReviewBoardTest, SaysThatOneInspectionGivesBaselinesOnly) {
    show(testing::reviewSample(1));
    EXPECT_TRUE(board.summary().contains(QStringLiteral("16 no trend yet")));
    EXPECT_TRUE(board.summary().contains(QStringLiteral("baselines")));
    board.enlarge();
    EXPECT_TRUE(board.isEnlarged());
}

TEST_F(ReviewBoardTest, KeepsItsSelectionWhenNewReadingsArrive) {
    show(testing::reviewSample(7));
    board.select(intake(6));
    show(testing::reviewSample(8));
    EXPECT_EQ(board.selected(), intake(6));
    EXPECT_EQ(inTable(StandingTableModel::PlaceColumn), QStringLiteral("6 I"));
}

TEST_F(ReviewBoardTest, FitsASmallLaptopAtLargeText) {
    QFont large = board.font();
    large.setPointSizeF(large.pointSizeF() * 1.5);
    board.setFont(large);
    show(testing::reviewSample());
    EXPECT_LE(board.minimumSizeHint().width(), 1366);
    EXPECT_LE(board.minimumSizeHint().height(), 640);
    EXPECT_LE(board.table().horizontalHeader()->length(), board.table().viewport()->width());
    for (const Place& place : defaultLayout().places()) {
        EXPECT_GE(board.plan().planLayout().areaOf(place).height(),
                  2.0 * QFontMetricsF(large).height())
            << placeText(place).toStdString();
    }
}

} // namespace
} // namespace coilbook
