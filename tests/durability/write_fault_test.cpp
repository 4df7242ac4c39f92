#include "tests/durability/sweep.h"

#include <cstdio>
#include <sqlite3.h>

namespace coilbook::testing {
namespace {

class WriteFaultTest : public SweepTest {
protected:
    /// Runs a session whose disk refuses a write, frees the disk, and does the rest.
    void sweep(int code, StorageFault meant) {
        qint64 faults = 0;
        const auto stride = repetitions("COILBOOK_FAULT_STRIDE", 7);
        for (const Rehearsed& expected : rehearsed()) {
            for (const auto failing :
                 {PowerCutDisk::Failing::Once, PowerCutDisk::Failing::UntilFreed}) {
                for (qint64 at = 1; at <= expected.operations; at += stride) {
                    SCOPED_TRACE(
                        expected.session.name + ", fault at operation " + std::to_string(at) +
                        (failing == PowerCutDisk::Failing::Once ? " once" : " until freed"));
                    disk().setContents(expected.before);
                    disk().failAt(at, code, failing);
                    const Progress progress = run(expected.session);
                    faults += disk().hasFailed() ? 1 : 0;
                    disk().free();
                    if (progress.error) {
                        EXPECT_EQ(progress.error->fault, decltype(Error::fault)(meant));
                    }
                    expectWhole(expected, progress);
                    expectToEndAsRehearsed(expected, progress);
                    if (HasFailure()) {
                        return;
                    }
                }
            }
        }
        EXPECT_GT(faults, 0);
        std::printf("%lld faults, 0 lost, 0 doubled, 0 files damaged\n",
                    static_cast<long long>(faults));
    }
};

TEST_F(WriteFaultTest, AFullDiskLosesNothingAndTheRetryDoublesNothing) {
    sweep(SQLITE_FULL, StorageFault::DiskFull);
}

TEST_F(WriteFaultTest, AnInputOutputErrorLosesNothingAndTheRetryDoublesNothing) {
    sweep(SQLITE_IOERR_WRITE, StorageFault::InputOutput);
}

} // namespace
} // namespace coilbook::testing
