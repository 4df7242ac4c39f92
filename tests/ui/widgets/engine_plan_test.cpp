#include "ui/widgets/engine_plan.h"

#include <QPainter>
#include <QSignalSpy>
#include <QTest>
#include <gtest/gtest.h>

#include <set>

namespace coilbook {
namespace {

Place at(int cylinder, Valve valve) {
    return {Cylinder(cylinder), valve};
}

class EnginePlanTest : public ::testing::Test {
protected:
    EnginePlanTest() {
        plan.setEngine(defaultLayout());
        plan.resize(800, 640);
    }

    EnginePlan plan;
};

TEST_F(EnginePlanTest, PaintsEveryPlaceOnceAndMarksTheSelectedOne) {
    std::multiset<Place> painted;
    std::set<Place> selected;
    plan.setCellPainter([&](QPainter&, const EnginePlan::Cell& cell, const Scheme&) {
        painted.insert(cell.place);
        if (cell.selected) {
            selected.insert(cell.place);
        }
    });
    plan.setSelected(at(3, Valve::Exhaust));
    ASSERT_FALSE(plan.grab().isNull());
    const std::vector<Place> all = defaultLayout().places();
    EXPECT_EQ(painted, std::multiset<Place>(all.begin(), all.end()));
    EXPECT_EQ(selected, std::set<Place>{at(3, Valve::Exhaust)});
}

TEST_F(EnginePlanTest, WalksByArrowKeysAndTellsEachStep) {
    QSignalSpy steps(&plan, &EnginePlan::selectedByUser);
    QTest::keyClick(&plan, Qt::Key_Down);
    EXPECT_EQ(plan.selected(), at(1, Valve::Exhaust));
    QTest::keyClick(&plan, Qt::Key_Down);
    QTest::keyClick(&plan, Qt::Key_Right);
    EXPECT_EQ(plan.selected(), at(2, Valve::Intake));
    QTest::keyClick(&plan, Qt::Key_Right);
    EXPECT_EQ(plan.selected(), at(2, Valve::Intake));
    EXPECT_EQ(steps.count(), 3);
}

TEST_F(EnginePlanTest, OpensTheSelectedPlaceByEnterAndDoubleClick) {
    QSignalSpy opened(&plan, &EnginePlan::activated);
    QTest::keyClick(&plan, Qt::Key_Return);
    EXPECT_EQ(opened.count(), 0);
    const QPoint target = plan.planLayout().areaOf(at(6, Valve::Intake)).center().toPoint();
    QTest::mouseClick(&plan, Qt::LeftButton, {}, target);
    EXPECT_EQ(plan.selected(), at(6, Valve::Intake));
    QTest::keyClick(&plan, Qt::Key_Return);
    QTest::mouseDClick(&plan, Qt::LeftButton, {}, target);
    EXPECT_EQ(opened.count(), 2);
}

TEST_F(EnginePlanTest, DropsASelectionThatTheNextEngineLacks) {
    plan.setSelected(at(8, Valve::Intake));
    plan.setSelected(at(9, Valve::Intake));
    EXPECT_EQ(plan.selected(), std::nullopt);
    plan.setSelected(at(8, Valve::Intake));
    EngineLayout single;
    single.banks = {{QStringLiteral("Head"), {at(1, Valve::Intake), at(1, Valve::Exhaust)}}};
    single.firingOrder = {Cylinder(1)};
    plan.setEngine(single);
    EXPECT_EQ(plan.selected(), std::nullopt);
}

TEST_F(EnginePlanTest, SaysTheSelectedPlaceInWordsForAScreenReader) {
    plan.setCellText([](const Place& place) { return placeText(place); });
    plan.setSelected(at(3, Valve::Exhaust));
    EXPECT_EQ(plan.accessibleDescription(), QStringLiteral("3 E"));
}

} // namespace
} // namespace coilbook
