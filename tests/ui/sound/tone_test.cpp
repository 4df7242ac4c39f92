#include "ui/sound/tone.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>

namespace coilbook {
namespace {

TEST(ToneTest, HasThePitchAndLengthAskedFor) {
    const std::vector<std::int16_t> tone = toneOf(440.0, 500);
    ASSERT_EQ(tone.size(), static_cast<std::size_t>(kSamplesPerSecond) / 2);
    int rises = 0; // through zero: one a period
    for (std::size_t i = 1; i < tone.size(); ++i) {
        rises += tone[i - 1] < 0 && tone[i] >= 0 ? 1 : 0;
    }
    EXPECT_NEAR(rises, 220, 1);
}

TEST(ToneTest, SwellsAndFadesWithoutAClickAndDoesNotClip) {
    const std::vector<std::int16_t> tone = toneOf(880.0, 120);
    EXPECT_EQ(tone.front(), 0);
    EXPECT_EQ(tone.back(), 0);
    int steepest = 0;
    for (std::size_t i = 1; i < tone.size(); ++i) {
        steepest = std::max(steepest, std::abs(tone[i] - tone[i - 1]));
    }
    // 2 pi 880/44100 of the loudness is the steepest a sine of that pitch can be.
    EXPECT_LE(steepest, 16'384 * 0.126);
    EXPECT_LT(*std::max_element(tone.begin(), tone.end()), 16'385);
}

} // namespace
} // namespace coilbook
