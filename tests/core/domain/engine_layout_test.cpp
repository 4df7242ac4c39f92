#include "core/domain/engine_layout.h"
#include "tests/support/printers.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace coilbook {
namespace {

// Sixteen springs in a V8: common practice, no source.
TEST(EngineLayoutTest, TheDefaultHasEightCylindersAndSixteenSprings) {
    const EngineLayout layout = defaultLayout();
    EXPECT_EQ(layout.cylinders(), 8);
    EXPECT_EQ(layout.places().size(), 16U);
    EXPECT_EQ(layout.banks.size(), 2U);
    EXPECT_TRUE(checkedLayout(layout).has_value());
}

TEST(EngineLayoutTest, PlacesGoByCylinderIntakeBeforeExhaust) {
    const std::vector<Place> places = defaultLayout().places();
    EXPECT_TRUE(std::is_sorted(places.begin(), places.end()));
    EXPECT_EQ(placeText(places[0]), QStringLiteral("1 I"));
    EXPECT_EQ(placeText(places[1]), QStringLiteral("1 E"));
}

TEST(EngineLayoutTest, GoesThroughTextUnchanged) {
    const Result<EngineLayout> back = layoutFromText(layoutToText(defaultLayout()));
    ASSERT_TRUE(back.has_value());
    EXPECT_EQ(*back, defaultLayout());
}

TEST(EngineLayoutTest, RefusesACylinderThatFiresTwice) {
    EngineLayout layout = defaultLayout();
    layout.firingOrder[1] = layout.firingOrder[0];
    EXPECT_FALSE(checkedLayout(layout).has_value());
}

TEST(EngineLayoutTest, RefusesASpringThatIsMissingOrStandsTwice) {
    EngineLayout missing = defaultLayout();
    missing.banks[0].places.pop_back();
    EXPECT_FALSE(checkedLayout(missing).has_value());
    EngineLayout twice = defaultLayout();
    twice.banks[1].places.push_back(twice.banks[0].places.front());
    EXPECT_FALSE(checkedLayout(twice).has_value());
}

TEST(EngineLayoutTest, IntervalsAndAnOwnRoundGoThroughTextAndOldTextHasNeither) {
    EngineLayout layout = defaultLayout();
    EXPECT_FALSE(layoutToText(layout).contains(QStringLiteral("own_round")));
    layout.firingIntervals = {750, 1050, 750, 1050, 750, 1050, 750, 1050};
    layout.ownRound = layout.places();
    std::reverse(layout.ownRound.begin(), layout.ownRound.end());
    const Result<EngineLayout> back = layoutFromText(layoutToText(layout));
    ASSERT_TRUE(back.has_value());
    EXPECT_EQ(*back, layout);
}

TEST(EngineLayoutTest, RefusesIntervalsThatDoNotMakeUpTwoTurns) {
    EngineLayout layout = defaultLayout();
    for (const std::vector<int>& intervals :
         {std::vector<int>{7200}, std::vector<int>(8, 901), std::vector<int>(7, 900),
          std::vector<int>{8000, -800, 0, 0, 0, 0, 0, 0}}) {
        layout.firingIntervals = intervals;
        EXPECT_FALSE(checkedLayout(layout).has_value());
    }
    layout.firingIntervals.assign(8, 900);
    EXPECT_TRUE(checkedLayout(layout).has_value());
}

TEST(EngineLayoutTest, RefusesAnOwnRoundThatMissesAPlaceOrGoesToOneTwice) {
    EngineLayout layout = defaultLayout();
    layout.ownRound = layout.places();
    layout.ownRound.pop_back();
    EXPECT_EQ(checkedLayout(layout).error().arguments.value(0), QStringLiteral("8 E"));
    layout.ownRound.push_back(layout.ownRound.front());
    EXPECT_EQ(checkedLayout(layout).error().arguments.value(0), QStringLiteral("1 I"));
}

TEST(EngineLayoutTest, RefusesTextThatIsNoLayout) {
    for (const char* text : {"", "[]", "{}", "{\"banks\":3}", "not json",
                             R"({"banks":[{"name":"L","places":["1X"]}],"firing_order":[1]})"}) {
        EXPECT_FALSE(layoutFromText(QString::fromUtf8(text)).has_value()) << text;
    }
}

} // namespace
} // namespace coilbook
