#include "core/support/text.h"
#include "core/wording/waiting_words.h"
#include "tests/support/printers.h"

#include <gtest/gtest.h>

#include <set>

namespace coilbook {
namespace {

constexpr int kFaults = static_cast<int>(StorageFault::Internal) + 1;

Error errorOf(int fault) {
    return {static_cast<StorageFault>(fault),
            {QStringLiteral("<b>a</b>"), QStringLiteral("b"), QStringLiteral("c")},
            {},
            0,
            {},
            0,
            {}};
}

TEST(WaitingWords, SayForEveryFaultWhatHappenedWhatIsSafeAndWhatToDo) {
    for (int fault = 0; fault < kFaults; ++fault) {
        const QString text = wording::waitingEntries(3, 1, errorOf(fault));
        EXPECT_TRUE(text.contains(QStringLiteral("3 readings and 1 other entry"))) << fault;
        EXPECT_TRUE(text.contains(QStringLiteral("What was saved before is safe"))) << fault;
        EXPECT_TRUE(text.contains(QStringLiteral("goes in by itself"))) << fault;
        EXPECT_FALSE(text.contains(QLatin1Char('%'))) << text.toStdString();
    }
}

TEST(WaitingWords, DoNotCallTheSameThingByTwoNamesNorTwoThingsByOne) {
    std::set<QString> sentences;
    for (const StorageFault fault :
         {StorageFault::DiskFull, StorageFault::ReadOnly, StorageFault::Locked,
          StorageFault::HeldByWindow, StorageFault::Vanished, StorageFault::NeedsRecovery,
          StorageFault::InputOutput, StorageFault::Damaged}) {
        sentences.insert(wording::waitingEntries(1, 0, errorOf(static_cast<int>(fault))));
    }
    EXPECT_EQ(sentences.size(), 8U);
}

TEST(WaitingWords, CountInWords) {
    EXPECT_EQ(wording::waitingCount(1, 0), QStringLiteral("1 reading"));
    EXPECT_EQ(wording::waitingCount(0, 1), QStringLiteral("1 entry"));
    EXPECT_EQ(wording::waitingCount(2, 3), QStringLiteral("2 readings and 3 other entries"));
}

TEST(WaitingWords, NameWhoHoldsTheLogbook) {
    const Error held{StorageFault::HeldByWindow,
                     {QStringLiteral("coilbook"), QStringLiteral("bench-two"),
                      QStringLiteral("4711"), QStringLiteral("kim")},
                     {},
                     0,
                     {},
                     0,
                     {}};
    EXPECT_TRUE(
        wording::readOnly(held).contains(QStringLiteral("(coilbook on bench-two, process 4711 of "
                                                        "kim)")));
}

} // namespace
} // namespace coilbook
