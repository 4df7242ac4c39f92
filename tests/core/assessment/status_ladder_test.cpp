#include "core/assessment/status_ladder.h"

#include <gtest/gtest.h>

#include <ostream>
#include <vector>

namespace coilbook {
namespace {

using enum Standing;

struct LadderCase {
    const char* what;
    double measured; ///< lbf, of a limit of 5
    std::optional<double> pPastLimit;
    std::optional<double> pDue;
    bool hasTrend;
    Caution caution;
    Verdict expected;
};

void PrintTo(const LadderCase& ladderCase, std::ostream* stream) {
    *stream << ladderCase.what;
}

class StatusLadderTest : public ::testing::TestWithParam<LadderCase> {};

// The rungs are those of the contract, section 4. 5 lbf: common practice, no source.
TEST_P(StatusLadderTest, TheFirstRungThatHoldsCounts) {
    JudgingRules rules;
    rules.caution = GetParam().caution;
    const Evidence evidence{Force::poundsForce(GetParam().measured), GetParam().pPastLimit,
                            GetParam().pDue, GetParam().hasTrend};
    const Verdict verdict = judge(evidence, rules);
    EXPECT_EQ(verdict.standing, GetParam().expected.standing);
    EXPECT_EQ(verdict.pastBy, GetParam().expected.pastBy);
}

constexpr auto kEven = Caution::Even;

INSTANTIATE_TEST_SUITE_P(
    Rungs, StatusLadderTest,
    ::testing::Values(
        LadderCase{"baseline only", 0.0, {}, {}, false, kEven, {NoTrend, {}}},
        LadderCase{"two inspections below the limit", 4.9, {}, {}, false, kEven, {NoTrend, {}}},
        LadderCase{"two inspections at the limit",
                   5.0,
                   {},
                   {},
                   false,
                   kEven,
                   {PastLimit, PastBy::Measured}},
        LadderCase{"sound", 1.0, 0.0, 0.0, true, kEven, {Sound, {}}},
        LadderCase{"nearly due", 4.0, 0.1, 0.4999, true, kEven, {Sound, {}}},
        LadderCase{"just due", 4.0, 0.1, 0.5, true, kEven, {Due, {}}},
        LadderCase{"due before any trend of its own", 0.0, 0.0, 0.6, false, kEven, {Due, {}}},
        LadderCase{"nearly past by the estimate", 4.0, 0.4999, 0.9, true, kEven, {Due, {}}},
        LadderCase{
            "just past by the estimate", 4.0, 0.5, 0.9, true, kEven, {PastLimit, PastBy::Estimate}},
        LadderCase{
            "past by measurement alone", 5.2, 0.2, 0.3, true, kEven, {PastLimit, PastBy::Measured}},
        LadderCase{"past by both", 5.2, 0.6, 0.7, true, kEven, {PastLimit, PastBy::Both}},
        LadderCase{"a cautious owner swaps at 0.3",
                   4.0,
                   0.3,
                   0.7,
                   true,
                   Caution::Cautious,
                   {PastLimit, PastBy::Estimate}},
        LadderCase{
            "a thrifty owner waits at 0.69", 4.0, 0.69, 0.7, true, Caution::Thrifty, {Due, {}}},
        LadderCase{"a thrifty owner swaps at 0.7",
                   4.0,
                   0.7,
                   0.7,
                   true,
                   Caution::Thrifty,
                   {PastLimit, PastBy::Estimate}}));

} // namespace
} // namespace coilbook
