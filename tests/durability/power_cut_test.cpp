#include "tests/durability/sweep.h"

#include <algorithm>
#include <cstdio>

namespace coilbook::testing {
namespace {

using PowerCutTest = SweepTest;

/// A moment at which the power goes off, and what survives.
struct Cut {
    std::size_t session;
    qint64 operation;
    PowerCutDisk::Survivors survivors;
    unsigned seed;
};

constexpr unsigned kChances = 4;

std::vector<Cut> cutsOf(std::size_t session, qint64 operations) {
    using Survivors = PowerCutDisk::Survivors;
    std::vector<Cut> cuts;
    for (qint64 operation = 1; operation <= operations + 1; ++operation) {
        cuts.push_back({session, operation, Survivors::SyncedOnly, 0});
        cuts.push_back({session, operation, Survivors::Everything, 0});
        for (unsigned chance = 0; chance < kChances; ++chance) {
            cuts.push_back({session, operation, Survivors::ByChance,
                            static_cast<unsigned>(operation) * kChances + chance});
        }
    }
    return cuts;
}

TEST_F(PowerCutTest, LosesNothingAcknowledgedDoublesNothingAndLeavesEveryFileWhole) {
    std::vector<Cut> cuts;
    for (std::size_t i = 0; i < rehearsed().size(); ++i) {
        const std::vector<Cut> more = cutsOf(i, rehearsed()[i].operations);
        cuts.insert(cuts.end(), more.begin(), more.end());
    }
    const auto wanted = static_cast<std::size_t>(repetitions("COILBOOK_CUTS", 200));
    // Evenly over all sessions, moments and chances; all of them if so many are wanted.
    const std::size_t chosen = std::min(wanted, cuts.size());
    std::size_t acknowledged = 0;
    for (std::size_t i = 0; i < chosen; ++i) {
        const Cut& cut = cuts[i * cuts.size() / chosen];
        const Rehearsed& expected = rehearsed()[cut.session];
        SCOPED_TRACE(expected.session.name + ", cut at operation " + std::to_string(cut.operation) +
                     ", seed " + std::to_string(cut.seed) + ", survivors " +
                     std::to_string(static_cast<int>(cut.survivors)));
        disk().setContents(expected.before);
        disk().cutAt(cut.operation);
        const Progress progress = run(expected.session);
        disk().cut();
        acknowledged += progress.done;
        disk().powerOn(cut.survivors, cut.seed);
        expectWhole(expected, progress);
        expectToEndAsRehearsed(expected, progress);
        if (HasFailure()) {
            return;
        }
    }
    std::printf("%zu of %zu possible cuts in %zu sessions, %zu steps acknowledged before them, "
                "0 lost, 0 doubled, 0 files damaged\n",
                chosen, cuts.size(), rehearsed().size(), acknowledged);
}

} // namespace
} // namespace coilbook::testing
