#pragma once

namespace coilbook {

/// What can go wrong with a logbook file. `Error::file` names the file; further arguments are
/// listed at the enumerator.
enum class StorageFault {
    Missing,           ///< there is no such file
    AlreadyExists,     ///< a new file was asked for and one is there
    NotALogbook,       ///< some other kind of file, or an empty one
    NewerVersion,      ///< written by a newer Coilbook; 1: its schema version
    Damaged,           ///< pages, rows or checksums do not hold; 1: what was found
    ReadOnly,          ///< file or folder cannot be written
    NoPermission,      ///< file cannot be read, or the folder not entered
    Locked,            ///< another program writes to it; 1: who, as far as known
    HeldByWindow,      ///< a window has it open; 1: program, 2: host, 3: process id, 4: user
    DiskFull,          ///< no space left
    Vanished,          ///< file removed or replaced while open
    NeedsRecovery,     ///< a write was cut short and must be undone, which needs a writable place
    InputOutput,       ///< the device failed; 1: what the system said
    Conflict,          ///< a constraint of the schema refused the row; 1: which
    CannotWriteOutput, ///< an output file could not be written; 1: what the system said
    Unsound,           ///< verify found what is no damage of the file; 1: where
    Internal,          ///< the storage layer refused a statement: a bug; 1: what was said
};

} // namespace coilbook
