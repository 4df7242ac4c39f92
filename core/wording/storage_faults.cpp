#include "core/wording/fault_sentences.h"
#include "core/wording/words.h"

namespace coilbook::wording {

QString sentenceOf(StorageFault fault, const Error& error) {
    switch (fault) {
    case StorageFault::Missing:
        return Words::tr("There is no such file. Check the name and the folder.");
    case StorageFault::AlreadyExists:
        return Words::tr("A file of this name is there already and was left as it is. Choose "
                         "another name, or move that file away first.");
    case StorageFault::NotALogbook:
        return Words::tr("This file is not a Coilbook logbook and was left as it is. Choose a file "
                         "that Coilbook has written.");
    case StorageFault::NewerVersion:
        return Words::tr("This logbook was written by a newer Coilbook (version %1 of the file) "
                         "and was left as it is. Open it with that version or a later one.")
            .arg(argument(error, 0));
    case StorageFault::Damaged:
        return Words::tr("This logbook is damaged: %1. Nothing was changed; keep the file, go on "
                         "with your newest backup, and export with --readable, or open it in the "
                         "window, for what can still be read.")
            .arg(argument(error, 0));
    case StorageFault::Unsound:
        return Words::tr("Something in this logbook is not as it should be: %1. Nothing was "
                         "changed; “coilbook verify” lists what was found.")
            .arg(argument(error, 0));
    case StorageFault::ReadOnly:
        return Words::tr("This file or its folder cannot be written to, so nothing was saved. "
                         "Allow writing there, or choose another folder.");
    case StorageFault::NoPermission:
        return Words::tr("You have no permission to open this file. Ask its owner for access, or "
                         "choose another file.");
    case StorageFault::Locked:
        if (argument(error, 0).isEmpty()) {
            return Words::tr("Another program is writing to this logbook, so nothing was saved. "
                             "Try again when it has finished.");
        }
        return Words::tr("%1 is writing to this logbook, so nothing was saved. Try again when it "
                         "has finished.")
            .arg(argument(error, 0));
    case StorageFault::HeldByWindow:
        return Words::tr("This logbook is open in a window (%1 on %2, process %3), so nothing was "
                         "changed. Close it there and try again.")
            .arg(argument(error, 0), argument(error, 1), argument(error, 2));
    case StorageFault::DiskFull:
        return Words::tr("The disk is full, so this was not saved; all that was saved before is "
                         "safe. Free some space and try again.");
    case StorageFault::Vanished:
        return Words::tr("The file was moved, deleted or replaced while it was open, so this was "
                         "not saved. Put it back, or open it where it is now.");
    case StorageFault::NeedsRecovery:
        return Words::tr("The last write to this logbook was cut short and has to be undone first, "
                         "which cannot be done here. Copy the file together with its -journal file "
                         "to a folder that can be written to, and open it there.");
    case StorageFault::InputOutput:
        return Words::tr("The disk reported a failure (%1), so this was not saved. Check the disk "
                         "and its cable, then try again.")
            .arg(argument(error, 0));
    case StorageFault::Conflict:
        return Words::tr("This does not fit what the logbook holds already (%1), so nothing was "
                         "saved. Load the logbook anew and try again.")
            .arg(argument(error, 0));
    case StorageFault::CannotWriteOutput:
        return Words::tr("The file could not be written (%1). Check the folder, its free space and "
                         "your permission to write there.")
            .arg(argument(error, 0));
    case StorageFault::Internal:
        return Words::tr("The logbook refused this because of a mistake in Coilbook (%1); nothing "
                         "was saved. Please report it with this sentence.")
            .arg(argument(error, 0));
    }
    Q_UNREACHABLE();
}

} // namespace coilbook::wording
