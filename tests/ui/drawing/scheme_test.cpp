#include "tests/support/printers.h"
#include "tests/ui/drawing/contrast.h"
#include "ui/drawing/scheme.h"

#include <QMetaEnum>
#include <gtest/gtest.h>

#include <array>
#include <string>
#include <vector>

namespace coilbook {

namespace {

using testing::contrast;

constexpr double kText = 4.5; // WCAG 2.2, 1.4.3 Contrast (Minimum), level AA
constexpr double kMark = 3.0; // WCAG 2.2, 1.4.11 Non-text Contrast, level AA

struct NamedScheme {
    std::string name;
    Scheme scheme;
};

void PrintTo(const NamedScheme& scheme, std::ostream* stream) {
    *stream << scheme.name;
}

class SchemeTest : public ::testing::TestWithParam<NamedScheme> {};

} // namespace

TEST(ContrastTest, AgreesWithTheEndsAndWithAPublishedPairOfWcag) {
    // Definition: black on white is 21:1, a colour on itself 1:1 (WCAG 2.2, "contrast ratio").
    EXPECT_NEAR(contrast(Qt::black, Qt::white), 21.0, 1e-9);
    EXPECT_NEAR(contrast(Qt::white, Qt::white), 1.0, 1e-9);
    // #767676 is known as the lightest grey that passes 4.5:1 on white (common practice, from
    // memory): the one above it fails.
    EXPECT_GE(contrast(QColor(0x76, 0x76, 0x76), Qt::white), kText);
    EXPECT_LT(contrast(QColor(0x77, 0x77, 0x77), Qt::white), kText);
}

TEST_P(SchemeTest, TextIsReadableOnGroundAndPanel) {
    const Scheme& s = GetParam().scheme;
    for (const QColor& ground : {s.ground, s.panel}) {
        for (const QColor& text : {s.text, s.mutedText}) {
            EXPECT_GE(contrast(text, ground), kText) << text.name().toStdString();
        }
    }
}

TEST_P(SchemeTest, StandingsMayBeWrittenAsWellAsDrawn) {
    const Scheme& s = GetParam().scheme;
    for (const QColor& ground : {s.ground, s.panel}) {
        for (const Standing standing :
             {Standing::PastLimit, Standing::Due, Standing::Sound, Standing::NoTrend}) {
            EXPECT_GE(contrast(s.of(standing), ground), kText)
                << s.of(standing).name().toStdString();
        }
    }
}

TEST_P(SchemeTest, MarksAndLinesStandOutFromGroundAndPanel) {
    const Scheme& s = GetParam().scheme;
    for (const QColor& ground : {s.ground, s.panel}) {
        for (const QColor& mark : {s.line, s.limit, s.estimate, s.reading, s.overRev, s.accent}) {
            EXPECT_GE(contrast(mark, ground), kMark) << mark.name().toStdString();
        }
    }
}

TEST_P(SchemeTest, LinesAndReadingsStandOutFromTheBandTheyLieOn) {
    const Scheme& s = GetParam().scheme;
    for (const QColor& mark : {s.limit, s.estimate, s.reading}) {
        EXPECT_GE(contrast(mark, s.band), kMark) << mark.name().toStdString();
    }
    EXPECT_NE(s.band, s.panel);
}

TEST_P(SchemeTest, PaletteIsReadableAndItsSchemeIsFoundAgain) {
    const Scheme& s = GetParam().scheme;
    const QPalette palette = paletteOf(s);
    for (const QPalette::ColorGroup group : {QPalette::Active, QPalette::Inactive}) {
        const auto colour = [&](QPalette::ColorRole role) {
            return palette.color(group, role);
        };

        struct Pair {
            QPalette::ColorRole text;
            QPalette::ColorRole ground;
        };

        for (const Pair& pair :
             {Pair{QPalette::WindowText, QPalette::Window}, Pair{QPalette::Text, QPalette::Base},
              Pair{QPalette::Text, QPalette::AlternateBase},
              Pair{QPalette::PlaceholderText, QPalette::Base},
              Pair{QPalette::ButtonText, QPalette::Button},
              Pair{QPalette::BrightText, QPalette::Window},
              Pair{QPalette::HighlightedText, QPalette::Highlight},
              Pair{QPalette::ToolTipText, QPalette::ToolTipBase},
              Pair{QPalette::Link, QPalette::Base}, Pair{QPalette::LinkVisited, QPalette::Base}}) {
            EXPECT_GE(contrast(colour(pair.text), colour(pair.ground)), kText)
                << QMetaEnum::fromType<QPalette::ColorRole>().valueToKey(pair.text);
        }
    }
    EXPECT_EQ(schemeFor(palette).ground, s.ground);
}

TEST_P(SchemeTest, PaletteSetsEveryRoleOfEveryGroup) {
    const QPalette palette = paletteOf(GetParam().scheme);
    for (const QPalette::ColorGroup group :
         {QPalette::Active, QPalette::Inactive, QPalette::Disabled}) {
        for (int role = 0; role < QPalette::NColorRoles; ++role) {
            const auto asked = static_cast<QPalette::ColorRole>(role);
            if (asked != QPalette::NoRole) {
                EXPECT_TRUE(palette.isBrushSet(group, asked))
                    << QMetaEnum::fromType<QPalette::ColorRole>().valueToKey(role);
            }
        }
    }
}

TEST_P(SchemeTest, DisabledTextStepsBackAndCanStillBeRead) {
    // WCAG exempts inactive controls; a mechanic still wants to see what is there. 2.5:1: our own
    // choice, no source.
    const QPalette palette = paletteOf(GetParam().scheme);
    const QColor ground = palette.color(QPalette::Disabled, QPalette::Window);
    const double disabled =
        contrast(palette.color(QPalette::Disabled, QPalette::WindowText), ground);
    EXPECT_GE(disabled, 2.5);
    EXPECT_LT(disabled,
              contrast(palette.color(QPalette::Active, QPalette::WindowText), ground) / 2.0);
}

INSTANTIATE_TEST_SUITE_P(Both, SchemeTest,
                         ::testing::Values(NamedScheme{"light", lightScheme()},
                                           NamedScheme{"dark", darkScheme()}),
                         [](const auto& named) { return named.param.name; });

TEST(PaperSchemeTest, IsBlackOrGreyOnWhite) {
    const Scheme s = paperScheme();
    for (const QColor& colour :
         {s.ground, s.panel, s.text, s.mutedText, s.line, s.grid, s.limit, s.estimate, s.band,
          s.reading, s.overRev, s.accent, s.pastLimit, s.due, s.sound, s.noTrend}) {
        EXPECT_EQ(colour.red(), colour.green());
        EXPECT_EQ(colour.green(), colour.blue());
    }
    // 7:1 is WCAG's enhanced level (1.4.6); a photocopy needs at least that.
    EXPECT_GE(contrast(s.mutedText, s.ground), 7.0);
}

} // namespace coilbook
