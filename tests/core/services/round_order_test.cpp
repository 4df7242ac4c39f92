#include "core/services/round_order.h"
#include "tests/support/printers.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace coilbook {
namespace {

QString walk(RoundOrder order) {
    QStringList texts;
    for (const Place& place : placesInOrder(defaultLayout(), order)) {
        texts.append(placeText(place).remove(QLatin1Char(' ')));
    }
    return texts.join(QLatin1Char(' '));
}

TEST(RoundOrderTest, ByBankWalksEachBankFromFrontToRear) {
    EXPECT_EQ(walk(RoundOrder::ByBank),
              QStringLiteral("1E 1I 3I 3E 5E 5I 7I 7E 2E 2I 4I 4E 6E 6I 8I 8E"));
}

TEST(RoundOrderTest, ByFiringOrderTestsBothSpringsOfACylinderBeforeTheCrankIsTurned) {
    EXPECT_EQ(walk(RoundOrder::ByFiringOrder),
              QStringLiteral("1I 1E 8I 8E 4I 4E 3I 3E 6I 6E 5I 5E 7I 7E 2I 2E"));
}

TEST(RoundOrderTest, ByCylinderCounts) {
    EXPECT_EQ(walk(RoundOrder::ByCylinder),
              QStringLiteral("1I 1E 2I 2E 3I 3E 4I 4E 5I 5E 6I 6E 7I 7E 8I 8E"));
}

TEST(RoundOrderTest, AnEngineWithItsOwnOrderIsWalkedInIt) {
    EngineLayout layout = defaultLayout();
    EXPECT_EQ(placesInOrder(layout, RoundOrder::Own), placesInOrder(layout, RoundOrder::ByBank));
    layout.ownRound = placesInOrder(layout, RoundOrder::ByCylinder);
    std::reverse(layout.ownRound.begin(), layout.ownRound.end());
    EXPECT_EQ(placesInOrder(layout, RoundOrder::Own), layout.ownRound);
}

TEST(RoundOrderTest, KeysComeBackAndUnknownOnesMeanByBank) {
    for (const RoundOrder order :
         {RoundOrder::ByBank, RoundOrder::ByFiringOrder, RoundOrder::ByCylinder, RoundOrder::Own}) {
        EXPECT_EQ(roundOrderFromKey(keyOf(order)), order);
    }
    EXPECT_EQ(roundOrderFromKey(QStringLiteral("sideways")), RoundOrder::ByBank);
}

} // namespace
} // namespace coilbook
