#include "core/services/spare_match.h"
#include "core/services/swap.h"
#include "tests/support/fixed_clock.h"
#include "tests/support/log_builder.h"
#include "tests/support/printers.h"

#include <gtest/gtest.h>

namespace coilbook {
namespace {

using testing::exhaust;
using testing::intake;
using testing::LogBuilder;

const testing::FixedClock kClock{QDate(2026, 5, 3)};
const QDate kDay(2026, 4, 1);

/// Exhaust springs that read 130, 131 and 132 when new, an intake one that read 120.
LogBuilder set() {
    LogBuilder builder;
    builder.inspection(kDay, 0);
    builder.reading(exhaust(1), QStringLiteral("S-1"), QStringLiteral("130"));
    builder.reading(exhaust(2), QStringLiteral("S-2"), QStringLiteral("131"));
    builder.reading(exhaust(3), QStringLiteral("S-3"), QStringLiteral("132"));
    builder.reading(intake(1), QStringLiteral("S-4"), QStringLiteral("120"));
    for (Spring& spring : builder.log().springs) {
        spring.part = QStringLiteral("dual");
    }
    return builder;
}

void addSpare(LogBuilder& builder, const char* label, const char* lbf, const char* part = "dual") {
    builder.shelve(QString::fromLatin1(label), kDay);
    builder.log().springs.back().part = QString::fromLatin1(part);
    builder.log().shelvings.back().pressure =
        TypedForce::parse(QString::fromLatin1(lbf), ForceUnit::PoundForce);
}

QStringList labelsOf(const std::vector<SpareProposal>& proposals) {
    QStringList labels;
    for (const SpareProposal& proposal : proposals) {
        labels << proposal.spare.spring.label;
    }
    return labels;
}

TEST(SpareMatchTest, TheSetReadsAsTheMedianOfItsKindOfValve) {
    const EngineHistory history = historyOf(set().log());
    EXPECT_EQ(setPressure(history, exhaust(5)), Force::poundsForce(131.0));
    EXPECT_EQ(setPressure(history, intake(5)), Force::poundsForce(120.0));
}

TEST(SpareMatchTest, ProposesTheSetsPartThenTheNearestPressure) {
    LogBuilder builder = set();
    addSpare(builder, "far", "138");
    addSpare(builder, "other", "131", "single");
    addSpare(builder, "unknown", "");
    addSpare(builder, "near", "130.5");
    const auto proposals = proposedSpares(builder.log(), historyOf(builder.log()), exhaust(2));
    EXPECT_EQ(labelsOf(proposals),
              QStringList({QStringLiteral("near"), QStringLiteral("far"), QStringLiteral("unknown"),
                           QStringLiteral("other")}));
    EXPECT_EQ(proposals.front().apart, Force::poundsForce(0.5));
}

TEST(SpareMatchTest, WhatWasThrownOutIsNotProposedAndNotPutIn) {
    LogBuilder builder = set();
    builder.shelve(QStringLiteral("bent"), kDay, Storage::Scrap);
    EXPECT_TRUE(proposedSpares(builder.log(), historyOf(builder.log()), exhaust(2)).empty());
    SwapEntry entry;
    entry.place = exhaust(2);
    entry.label = QStringLiteral("bent");
    entry.on = kDay;
    const auto refused = swapOf(builder.log(), entry, kClock);
    ASSERT_FALSE(refused.has_value());
    EXPECT_EQ(std::get<LogbookFault>(refused.error().front().error.fault),
              LogbookFault::SpringScrapped);
}

TEST(SpareMatchTest, ASwapPutsTheSpringThatComesOutWhereItShallGo) {
    LogBuilder builder = set();
    addSpare(builder, "near", "130.5");
    SwapEntry entry;
    entry.place = exhaust(2);
    entry.label = QStringLiteral("near");
    entry.on = kDay;
    entry.outgoingTo = Storage::Scrap;
    entry.outgoingReason = QStringLiteral("cracked");
    const auto swap = swapOf(builder.log(), entry, kClock);
    ASSERT_TRUE(swap.has_value());
    EXPECT_FALSE(swap->newSpring.has_value()) << "the spare is known";
    ASSERT_TRUE(swap->outgoing.has_value());
    EXPECT_EQ(swap->outgoing->spring, builder.spring(QStringLiteral("S-2")));
    EXPECT_EQ(swap->outgoing->to, Storage::Scrap);
    EXPECT_EQ(swap->outgoing->reason, QStringLiteral("cracked"));
}

} // namespace
} // namespace coilbook
