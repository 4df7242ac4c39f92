#include "tests/durability/power_cut_disk.h"
#include "tests/durability/power_cut_vfs.h"

#include <array>
#include <cerrno>
#include <climits>
#include <cstdio>
#include <fcntl.h>
#include <sqlite3.h>
#include <string>
#include <sys/stat.h>
#include <sys/syscall.h>
#include <unistd.h>

// Backups and restores give finished files their names by the system's own calls. In this program
// those calls are ours, for the C++ library and Qt as well: they tell the disk of what is its, and
// do for all else what they always do.

using coilbook::testing::PowerCutDisk;

namespace {

/// As the system says it when the device is gone.
int failed() {
    errno = EIO;
    return -1;
}

} // namespace

namespace coilbook::testing {

void removeRealName(const char* path) {
    ::syscall(SYS_unlink, path);
}

void makeRealName(const char* path) {
    const int descriptor = ::open(path, O_CREAT | O_CLOEXEC | O_RDWR, 0600);
    if (descriptor >= 0) {
        ::close(descriptor);
    }
}

} // namespace coilbook::testing

extern "C" int rename(const char* from, const char* to) noexcept {
    PowerCutDisk* disk = PowerCutDisk::holding(from);
    if (disk == nullptr || !disk->find(from)) {
        return static_cast<int>(::syscall(SYS_rename, from, to));
    }
    return disk->rename(from, to) == SQLITE_OK ? 0 : failed();
}

extern "C" int unlink(const char* path) noexcept {
    PowerCutDisk* disk = PowerCutDisk::holding(path);
    if (disk == nullptr || !disk->find(path)) {
        return static_cast<int>(::syscall(SYS_unlink, path));
    }
    return disk->remove(path, false) == SQLITE_OK ? 0 : failed();
}

extern "C" int fsync(int descriptor) {
    std::array<char, PATH_MAX + 1> path{};
    const std::string link = "/proc/self/fd/" + std::to_string(descriptor);
    const ssize_t length = ::readlink(link.c_str(), path.data(), PATH_MAX);
    PowerCutDisk* disk = length > 0 ? PowerCutDisk::holding(path.data()) : nullptr;
    if (disk == nullptr) {
        return static_cast<int>(::syscall(SYS_fsync, descriptor));
    }
    if (const auto file = disk->find(path.data())) {
        return disk->sync(*file) == SQLITE_OK ? 0 : failed();
    }

    struct stat facts {};

    if (::fstat(descriptor, &facts) == 0 && S_ISDIR(facts.st_mode)) {
        return disk->syncNames() == SQLITE_OK ? 0 : failed();
    }
    return static_cast<int>(::syscall(SYS_fsync, descriptor));
}
