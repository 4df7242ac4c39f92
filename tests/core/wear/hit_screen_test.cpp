#include "core/wear/hit_screen.h"

#include <gtest/gtest.h>

#include <vector>

namespace coilbook {
namespace {

using wear::HitGroup;

/// Eight springs of two hits half a pound apart in one session.
std::vector<HitGroup> session(std::size_t number, double level) {
    std::vector<HitGroup> groups;
    for (std::size_t life = 0; life < 8; ++life) {
        groups.push_back({life, number, 0, {level, level + 0.5}});
    }
    return groups;
}

std::vector<HitGroup> twoSessions() {
    std::vector<HitGroup> groups = session(0, 120.0);
    for (HitGroup& group : session(1, 119.0)) {
        groups.push_back(std::move(group));
    }
    return groups;
}

const std::vector<double> kGraduations{0.5};

TEST(HitScreenTest, HitsThatAgreeAreKept) {
    std::vector<HitGroup> groups = twoSessions();
    EXPECT_TRUE(wear::screenHits(groups, kGraduations).empty());
}

TEST(HitScreenTest, OfThreeHitsTheOneFarFromTheirMedianGoes) {
    std::vector<HitGroup> groups = twoSessions();
    groups[3].hits = {120.0, 111.0, 120.5};
    const auto removed = wear::screenHits(groups, kGraduations);
    ASSERT_EQ(removed.size(), 1U);
    EXPECT_EQ(removed[0].group, 3U);
    EXPECT_EQ(removed[0].hit, 1U);
    EXPECT_EQ(groups[3].hits, (std::vector<double>{120.0, 120.5}));
}

// The life read 120.25 before and the set lost 1 since: of 119 and 112 the first is believed.
TEST(HitScreenTest, OfTwoHitsTheOneFarFromWhatTheSetDidGoes) {
    std::vector<HitGroup> groups = twoSessions();
    groups[10].hits = {112.0, 119.0};
    const auto removed = wear::screenHits(groups, kGraduations);
    ASSERT_EQ(removed.size(), 1U);
    EXPECT_EQ(removed[0].hit, 0U);
    EXPECT_EQ(groups[10].hits, std::vector<double>{119.0});
}

TEST(HitScreenTest, AtABaselineTheSetIsTheJudge) {
    std::vector<HitGroup> groups = twoSessions();
    groups[0].hits = {120.5, 129.0};
    ASSERT_EQ(wear::screenHits(groups, kGraduations).size(), 1U);
    EXPECT_EQ(groups[0].hits, std::vector<double>{120.5});
}

// Threshold max(4, 1.5 q + 5 s_w); ranges of 0.5 at two hits: s_w = 0.5/0.954, so 1.5 · 0.5 + 2.62
// stays below 4; with 4 itself allowed.
TEST(HitScreenTest, ARangeOfFourPoundsIsNotYetASlip) {
    std::vector<HitGroup> groups = twoSessions();
    groups[10].hits = {115.5, 119.5};
    EXPECT_TRUE(wear::screenHits(groups, kGraduations).empty());
    groups[10].hits = {115.4, 119.5};
    EXPECT_EQ(wear::screenHits(groups, kGraduations).size(), 1U);
}

TEST(HitScreenTest, ACoarseGaugeMayDifferMore) {
    std::vector<HitGroup> groups = twoSessions();
    groups[10].hits = {110.0, 119.0};
    EXPECT_TRUE(wear::screenHits(groups, std::vector<double>{5.0}).empty());
}

TEST(HitScreenTest, OneHitAlwaysStays) {
    std::vector<HitGroup> groups = twoSessions();
    groups[10].hits = {50.0, 90.0, 300.0, 170.0};
    EXPECT_EQ(wear::screenHits(groups, kGraduations).size(), 3U);
    EXPECT_EQ(groups[10].hits.size(), 1U);
}

} // namespace
} // namespace coilbook
