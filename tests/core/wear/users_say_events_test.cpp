#include "core/wear/event_scores.h"
#include "core/wear/loss_functional.h"
#include "core/wear/outputs.h"
#include "core/wear/session_check.h"
#include "tests/core/wear/reference_season.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace coilbook {
namespace {

using wear::Event;
using wear::Fit;
using wear::Say;
using wear::Season;

/// A season whose only event is a drop that is pending at the newest reading of a spring
/// (tests/data/wear/ref of that name).
class UsersSayEventsTest : public ::testing::Test {
protected:
    void SetUp() override {
        m_season = testing::referenceSeason("case_pending_drop").arranged.season;
        m_pending = wear::fitSeason(m_season).value();
        ASSERT_EQ(m_pending.design.events.size(), 1U);
        m_event = m_pending.design.events.front();
        ASSERT_TRUE(m_event.pending);
    }

    [[nodiscard]] Season saying(Say say) const {
        Season season = m_season;
        season.lives[m_event.life].cells[m_event.cell].say = say;
        return season;
    }

    [[nodiscard]] double lossNow(const Season& season, const Fit& fit) const {
        return wear::posteriorOfLife(m_event.life, season, fit).lossNow().mean();
    }

    Season m_season;
    Fit m_pending;
    Event m_event;
};

// Section 7: a pending event's posterior is (1-pL) trend + pL (trend + step); a confirmed one has
// pL = 1, a denied one becomes a misread.
TEST_F(UsersSayEventsTest, ConfirmingAndDenyingAreTheTwoSidesOfThePendingDrop) {
    const Season confirmed = saying(Say::Drop);
    const Season denied = saying(Say::Misread);
    const Fit withDrop = wear::fitSeason(confirmed).value();
    const Fit withMisread = wear::fitSeason(denied).value();
    ASSERT_EQ(withDrop.design.events.size(), 1U);
    EXPECT_TRUE(withDrop.design.events[0].byUser && !withDrop.design.events[0].pending);
    EXPECT_EQ(withMisread.design.events[0].kind, Event::Kind::Misread);
    const double dropped = wear::dropProbability(m_event);
    EXPECT_GT(lossNow(confirmed, withDrop), lossNow(denied, withMisread) + 2.0);
    EXPECT_NEAR(lossNow(m_season, m_pending),
                dropped * lossNow(confirmed, withDrop) +
                    (1.0 - dropped) * lossNow(denied, withMisread),
                1e-6);
}

TEST_F(UsersSayEventsTest, AKeptReadingBearsNoEvent) {
    const Season kept = saying(Say::Kept);
    const Fit fit = wear::fitSeason(kept).value();
    EXPECT_TRUE(fit.design.events.empty());
    const Fit without = wear::fitSeason(m_season, {.events = false}).value();
    EXPECT_NEAR(lossNow(kept, fit), lossNow(m_season, without), 1e-9);
}

TEST_F(UsersSayEventsTest, TheFastPathTakesUpWhatWasSaidSince) {
    const Season kept = saying(Say::Kept);
    EXPECT_TRUE(wear::refit(kept, m_pending)->design.events.empty());
    const Season confirmed = saying(Say::Drop);
    const Fit once = wear::refit(confirmed, m_pending).value();
    ASSERT_EQ(once.design.events.size(), 1U);
    EXPECT_TRUE(once.design.events[0].byUser);
    const Fit again = wear::refit(confirmed, once).value();
    EXPECT_EQ(again.design.events.size(), 1U);
    const Fit takenBack = wear::refit(m_season, once).value();
    EXPECT_TRUE(takenBack.design.events.empty()) << "found anew by the next full fit only";
}

TEST_F(UsersSayEventsTest, TheNewestReadingIsOffItsTrendWhateverIsSaidOfIt) {
    for (const Say say : {Say::None, Say::Drop, Say::Misread}) {
        const Season season = saying(say);
        const Fit fit = wear::fitSeason(season).value();
        // The cavity is the same in all three: the trend without that reading.
        EXPECT_NEAR(
            wear::offTrendScore(m_event.life, season, fit.design, fit.atMode).value(),
            wear::offTrendScore(m_event.life, m_season, m_pending.design, m_pending.atMode).value(),
            1e-3);
    }
}

// A column of its own with a flat prior takes a reading out as if it had not been taken.
TEST_F(UsersSayEventsTest, AReadingSetAsideIsAsGoodAsNotTaken) {
    Season aside = testing::referenceSeason("engine11").arranged.season;
    Season without = aside;
    aside.lives[4].cells[2].say = Say::Misread;
    without.lives[4].cells.erase(without.lives[4].cells.begin() + 2);
    const Fit one = wear::fitSeason(aside).value();
    const Fit other = wear::fitSeason(without).value();
    ASSERT_EQ(one.design.events.size(), 1U);
    ASSERT_TRUE(other.design.events.empty());
    for (std::size_t life = 0; life < aside.lives.size(); ++life) {
        EXPECT_NEAR(wear::posteriorOfLife(life, aside, one).lossNow().mean(),
                    wear::posteriorOfLife(life, without, other).lossNow().mean(), 0.01);
    }
}

TEST_F(UsersSayEventsTest, WhatIsSaidDoesNotCountAmongTheFiveOfALife) {
    Season season = testing::referenceSeason("engine09").arranged.season;
    const auto life = std::find_if(season.lives.begin(), season.lives.end(),
                                   [](const wear::Life& any) { return any.cells.size() == 10; });
    ASSERT_NE(life, season.lives.end());
    for (const std::size_t cell : {1U, 2U, 4U, 5U, 8U}) {
        life->cells[cell].say = Say::Misread;
    }
    life->cells[6].mean += 25.0; // a slip that nobody has spoken of
    const std::vector<Event> events = wear::fitSeason(season)->design.events;
    const auto isOfLife = [&](const Event& event) {
        return &season.lives[event.life] == &*life;
    };
    EXPECT_EQ(std::count_if(events.begin(), events.end(), isOfLife), 6);
    EXPECT_TRUE(std::any_of(events.begin(), events.end(), [&](const Event& event) {
        return isOfLife(event) && event.cell == 6 && !event.byUser;
    }));
}

// Section 6 fits the earlier sessions by themselves: what was said about them holds there too.
TEST_F(UsersSayEventsTest, TheSessionCheckKeepsWhatWasSaidAboutEarlierReadings) {
    Season season = m_season;
    season.lives[3].cells[2].say = Say::Misread;
    const Season earlier = wear::firstSessions(season, season.sessions.size() - 1);
    const Fit fit = wear::fitSeason(earlier).value();
    ASSERT_EQ(fit.design.events.size(), 1U);
    EXPECT_TRUE(fit.design.events[0].byUser);
    const Fit full = wear::fitSeason(season).value();
    EXPECT_EQ(wear::sessionCheck(season, full), wear::sessionCheck(season, full, fit));
}

TEST_F(UsersSayEventsTest, ASpringWithAllReadingsSetAsideStillHasAnAnswer) {
    for (wear::Cell& cell : m_season.lives[0].cells) {
        cell.say = Say::Misread;
    }
    const Fit fit = wear::fitSeason(m_season).value();
    const wear::Mixture loss = wear::posteriorOfLife(0, m_season, fit).lossNow();
    EXPECT_TRUE(std::isfinite(loss.mean()) && std::isfinite(loss.sd()));
    EXPECT_GT(loss.sd(), 0.0);
}

} // namespace
} // namespace coilbook
