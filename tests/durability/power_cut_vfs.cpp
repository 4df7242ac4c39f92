#include "tests/durability/power_cut_vfs.h"

#include "tests/durability/power_cut_disk.h"

#include <algorithm>
#include <cstring>
#include <new>
#include <sqlite3.h>

// The interface of an SQLite VFS: sqlite.org/c3ref/vfs.html and io_methods.html. Which names are
// synced when is as in SQLite's own file system for Unix: the folder with the first sync of a new
// journal, and with a removal where SQLite asks for that.

namespace coilbook::testing {

namespace {

/// SQLite's own record of an open file, and behind it ours.
struct OpenFile {
    sqlite3_file base;
    PowerCutDisk* disk;
    std::shared_ptr<PowerCutDisk::File>* file;
    bool syncsNames; ///< a new journal whose name is not on the disk yet
};

OpenFile& opened(sqlite3_file* file) {
    return *reinterpret_cast<OpenFile*>(file);
}

PowerCutDisk::File& fileOf(sqlite3_file* file) {
    return **opened(file).file;
}

sqlite3_vfs* systemsOwn = nullptr;

int closeFile(sqlite3_file* file) {
    delete opened(file).file;
    opened(file).file = nullptr;
    return SQLITE_OK;
}

int readFile(sqlite3_file* file, void* target, int count, sqlite3_int64 offset) {
    if (opened(file).disk->isOff()) {
        return SQLITE_IOERR_READ;
    }
    const std::string& bytes = fileOf(file).live;
    const auto wanted = static_cast<std::size_t>(count);
    const std::size_t from = std::min(static_cast<std::size_t>(offset), bytes.size());
    const std::size_t got = std::min(wanted, bytes.size() - from);
    std::memset(target, 0, wanted);
    std::memcpy(target, bytes.data() + from, got);
    return got == wanted ? SQLITE_OK : SQLITE_IOERR_SHORT_READ;
}

int writeFile(sqlite3_file* file, const void* bytes, int count, sqlite3_int64 offset) {
    return opened(file).disk->write(fileOf(file), bytes, static_cast<std::size_t>(count),
                                    static_cast<std::size_t>(offset));
}

int truncateFile(sqlite3_file* file, sqlite3_int64 length) {
    return opened(file).disk->truncate(fileOf(file), static_cast<std::size_t>(length));
}

int syncFile(sqlite3_file* file, int /*flags*/) {
    OpenFile& open = opened(file);
    if (const int code = open.disk->sync(**open.file); code != SQLITE_OK) {
        return code;
    }
    if (open.syncsNames) {
        open.syncsNames = false;
        return open.disk->syncNames();
    }
    return SQLITE_OK;
}

int sizeOfFile(sqlite3_file* file, sqlite3_int64* size) {
    *size = static_cast<sqlite3_int64>(fileOf(file).live.size());
    return opened(file).disk->isOff() ? SQLITE_IOERR_FSTAT : SQLITE_OK;
}

// One connection works on a file at a time, so locks are always given.

int lockFile(sqlite3_file* file, int /*level*/) {
    return opened(file).disk->isOff() ? SQLITE_IOERR_LOCK : SQLITE_OK;
}

int unlockFile(sqlite3_file* /*file*/, int /*level*/) {
    return SQLITE_OK;
}

int isReserved(sqlite3_file* /*file*/, int* answer) {
    *answer = 0;
    return SQLITE_OK;
}

int controlFile(sqlite3_file* /*file*/, int /*operation*/, void* /*argument*/) {
    return SQLITE_NOTFOUND;
}

int sectorSize(sqlite3_file* /*file*/) {
    return 4096;
}

int characteristics(sqlite3_file* /*file*/) {
    return SQLITE_IOCAP_POWERSAFE_OVERWRITE;
}

const sqlite3_io_methods kMethods{
    1,        closeFile,  readFile,   writeFile,   truncateFile, syncFile,        sizeOfFile,
    lockFile, unlockFile, isReserved, controlFile, sectorSize,   characteristics, nullptr,
    nullptr,  nullptr,    nullptr,    nullptr,     nullptr};

int openFile(sqlite3_vfs* /*vfs*/, const char* path, sqlite3_file* file, int flags, int* outFlags) {
    PowerCutDisk* disk = PowerCutDisk::holding(path);
    if (disk == nullptr) {
        return systemsOwn->xOpen(systemsOwn, path, file, flags, outFlags);
    }
    auto& open = *new (file) OpenFile{};
    if (disk->isOff()) {
        return SQLITE_CANTOPEN;
    }
    std::shared_ptr<PowerCutDisk::File> found = disk->find(path);
    if (!found) {
        if ((flags & SQLITE_OPEN_CREATE) == 0) {
            return SQLITE_CANTOPEN;
        }
        found = disk->create(path);
        if (!found) {
            return SQLITE_IOERR;
        }
        open.syncsNames =
            (flags & (SQLITE_OPEN_MAIN_JOURNAL | SQLITE_OPEN_SUPER_JOURNAL | SQLITE_OPEN_WAL)) != 0;
    }
    open.disk = disk;
    open.file = new std::shared_ptr<PowerCutDisk::File>(std::move(found));
    open.base.pMethods = &kMethods;
    if (outFlags != nullptr) {
        *outFlags = flags;
    }
    return SQLITE_OK;
}

int deleteFile(sqlite3_vfs* /*vfs*/, const char* path, int syncsFolder) {
    PowerCutDisk* disk = PowerCutDisk::holding(path);
    return disk == nullptr ? systemsOwn->xDelete(systemsOwn, path, syncsFolder)
                           : disk->remove(path, syncsFolder != 0);
}

int access(sqlite3_vfs* /*vfs*/, const char* path, int flags, int* answer) {
    const PowerCutDisk* disk = PowerCutDisk::holding(path);
    if (disk == nullptr) {
        return systemsOwn->xAccess(systemsOwn, path, flags, answer);
    }
    const std::shared_ptr<PowerCutDisk::File> found = disk->find(path);
    *answer = found && (flags != SQLITE_ACCESS_EXISTS || !found->live.empty()) ? 1 : 0;
    return SQLITE_OK;
}

int fullPath(sqlite3_vfs* /*vfs*/, const char* path, int most, char* target) {
    if (PowerCutDisk::holding(path) == nullptr) {
        return systemsOwn->xFullPathname(systemsOwn, path, most, target);
    }
    sqlite3_snprintf(most, target, "%s", path);
    return SQLITE_OK;
}

sqlite3_vfs& powerCutVfs() {
    static sqlite3_vfs vfs = [] {
        sqlite3_initialize();
        systemsOwn = sqlite3_vfs_find(nullptr);
        sqlite3_vfs made = *systemsOwn; // time, randomness and sleep stay the system's
        made.iVersion = 1;
        made.zName = "power-cut";
        made.szOsFile = std::max(static_cast<int>(sizeof(OpenFile)), systemsOwn->szOsFile);
        made.pNext = nullptr;
        made.xOpen = openFile;
        made.xDelete = deleteFile;
        made.xAccess = access;
        made.xFullPathname = fullPath;
        return made;
    }();
    return vfs;
}

} // namespace

void installPowerCutVfs() {
    sqlite3_vfs_register(&powerCutVfs(), 1);
}

void removePowerCutVfs() {
    sqlite3_vfs_unregister(&powerCutVfs());
    sqlite3_vfs_register(systemsOwn, 1);
}

} // namespace coilbook::testing
