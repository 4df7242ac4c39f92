#include "tests/support/printers.h"
#include "ui/dialogs/layout_text.h"

#include <gtest/gtest.h>

using namespace coilbook;

namespace {

TEST(LayoutTextTest, ReadsBackWhatItWrites) {
    const LayoutText text = writeLayout(defaultLayout());
    EXPECT_EQ(text.firingOrder, QStringLiteral("1 8 4 3 6 5 7 2"));
    const Result<EngineLayout> read = readLayout(text);
    ASSERT_TRUE(read);
    EXPECT_EQ(*read, defaultLayout());
}

TEST(LayoutTextTest, TakesSmallLettersCommasHyphensAndABankWithoutAName) {
    const Result<EngineLayout> read =
        readLayout({QStringLiteral("1i, 1e, 2e 2i\n\n"), QStringLiteral("1-2"), {}, {}});
    ASSERT_TRUE(read);
    ASSERT_EQ(read->banks.size(), 1U);
    EXPECT_TRUE(read->banks[0].name.isEmpty());
    EXPECT_EQ(read->cylinders(), 2);
    EXPECT_EQ(read->banks[0].places[3], (Place{Cylinder(2), Valve::Intake}));
}

TEST(LayoutTextTest, ReadsDegreesBetweenFiringsAndAnOwnRound) {
    const LayoutText good = writeLayout(defaultLayout());
    EXPECT_TRUE(good.intervals.isEmpty());
    EXPECT_TRUE(good.ownRound.isEmpty());
    const Result<EngineLayout> read =
        readLayout({QStringLiteral("1I 1E 2I 2E"), QStringLiteral("1 2"),
                    QStringLiteral("269,5° 450.5°"), QStringLiteral("2e 2i, 1e 1i")});
    ASSERT_TRUE(read);
    EXPECT_EQ(read->firingIntervals, (std::vector<int>{2695, 4505}));
    EXPECT_EQ(read->ownRound.front(), (Place{Cylinder(2), Valve::Exhaust}));
    EXPECT_EQ(writeLayout(*read).intervals, QStringLiteral("269.5 450.5"));
    EXPECT_EQ(*readLayout(writeLayout(*read)), *read);
    for (const char* intervals : {"90", "270 460", "270 -450", "a b", "269.55 450.45"}) {
        EXPECT_FALSE(readLayout({QStringLiteral("1I 1E 2I 2E"),
                                 QStringLiteral("1 2"),
                                 QString::fromUtf8(intervals),
                                 {}}))
            << intervals;
    }
}

TEST(LayoutTextTest, NamesTheFirstWordThatDoesNotFit) {
    const LayoutText good = writeLayout(defaultLayout());
    const auto faultOf = [](const LayoutText& text) {
        const Result<EngineLayout> read = readLayout(text);
        return read ? QString() : read.error().arguments.value(0);
    };
    EXPECT_EQ(faultOf({QStringLiteral("Left: 1E 1X"), good.firingOrder, {}, {}}),
              QStringLiteral("1X"));
    EXPECT_EQ(faultOf({good.banks, QStringLiteral("1 8 four"), {}, {}}), QStringLiteral("four"));
    EXPECT_EQ(faultOf({QString(good.banks).replace(QStringLiteral("3E"), QStringLiteral("3I")),
                       good.firingOrder,
                       {},
                       {}}),
              QStringLiteral("3 E"));
    EXPECT_FALSE(readLayout({good.banks, QStringLiteral("1 8 4 3 6 5 7"), {}, {}}));
    EXPECT_FALSE(readLayout({}));
}

} // namespace
