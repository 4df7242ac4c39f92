#include "core/wording/waiting_words.h"

#include "core/wording/wording.h"
#include "core/wording/words.h"

namespace coilbook::wording {

namespace {

struct Cause {
    QString happened;
    QString toDo; ///< half a sentence: `…, and they go in by themselves`
};

Cause causeOf(const Error& why) {
    const auto* fault = std::get_if<StorageFault>(&why.fault);
    switch (fault == nullptr ? StorageFault::Internal : *fault) {
    case StorageFault::DiskFull:
        return {Words::tr("The disk of the logbook is full."), Words::tr("Free some space on it")};
    case StorageFault::ReadOnly:
    case StorageFault::NoPermission:
        return {Words::tr("The logbook cannot be written to any more."),
                Words::tr("Allow writing to its file and folder again")};
    case StorageFault::Locked:
        return {Words::tr("Another program is writing to the logbook."),
                Words::tr("Wait until it has finished")};
    case StorageFault::HeldByWindow:
        return {Words::tr("The logbook is open in another window (%1 on %2, process %3).")
                    .arg(argument(why, 0), argument(why, 1), argument(why, 2)),
                Words::tr("Close it there")};
    case StorageFault::Missing:
    case StorageFault::Vanished:
        return {Words::tr("The file of the logbook was moved, deleted or replaced."),
                Words::tr("Put it back where it was")};
    case StorageFault::NeedsRecovery:
        return {Words::tr("The last write to the logbook was cut short and cannot be undone here."),
                Words::tr("Allow writing to its folder again")};
    case StorageFault::InputOutput:
        return {Words::tr("The disk or stick of the logbook does not answer (%1).")
                    .arg(argument(why, 0)),
                Words::tr("Plug it in again, or check the disk and its cable")};
    case StorageFault::Damaged:
    case StorageFault::NotALogbook:
        return {Words::tr("The file of the logbook is damaged, so nothing more is written to it."),
                Words::tr("Put the newest good backup in its place")};
    case StorageFault::AlreadyExists:
    case StorageFault::NewerVersion:
    case StorageFault::Unsound:
    case StorageFault::Conflict:
    case StorageFault::CannotWriteOutput:
    case StorageFault::Internal:
        break;
    }
    return {sentence(why), Words::tr("Open the logbook anew")};
}

QString readingCount(int readings) {
    return readings == 1 ? Words::tr("1 reading") : Words::tr("%n readings", nullptr, readings);
}

QString entryCount(int entries) {
    return entries == 1 ? Words::tr("1 entry") : Words::tr("%n entries", nullptr, entries);
}

} // namespace

QString waitingCount(int readings, int others) {
    if (readings == 0) {
        return entryCount(others);
    }
    if (others == 0) {
        return readingCount(readings);
    }
    return others == 1 ? Words::tr("%1 and 1 other entry").arg(readingCount(readings))
                       : Words::tr("%1 and %2 other entries")
                             .arg(readingCount(readings), QString::number(others));
}

QString waitingEntries(int readings, int others, const Error& why) {
    const Cause cause = causeOf(why);
    return Words::tr("%1 Waiting on this computer, not yet in the logbook: %2. What was saved "
                     "before is safe. %3; what waits then goes in by itself.")
        .arg(cause.happened, waitingCount(readings, others), cause.toDo);
}

QString waitingDone(int readings, int others) {
    return Words::tr("What was waiting is saved in the logbook now: %1.")
        .arg(waitingCount(readings, others));
}

QString waitingRefused(int entries, const QString& why) {
    return Words::tr("The logbook would not take what was waiting for it (%1): %2 It is still kept "
                     "on this computer. Save it elsewhere, enter it anew by hand, and drop it "
                     "then.")
        .arg(entryCount(entries), why);
}

QString waitingForUnopened(int readings, int others) {
    return Words::tr("Waiting for it on this computer: %1; that goes in when it can be opened "
                     "again.")
        .arg(waitingCount(readings, others));
}

QString readOnly(const Error& why) {
    const auto* fault = std::get_if<StorageFault>(&why.fault);
    switch (fault == nullptr ? StorageFault::Internal : *fault) {
    case StorageFault::HeldByWindow: {
        const QString user = argument(why, 3);
        const QString who =
            user.isEmpty() ? Words::tr("%1 on %2, process %3")
                                 .arg(argument(why, 0), argument(why, 1), argument(why, 2))
                           : Words::tr("%1 on %2, process %3 of %4")
                                 .arg(argument(why, 0), argument(why, 1), argument(why, 2), user);
        return Words::tr("This logbook is being worked on elsewhere (%1), so here it can only be "
                         "read. What is entered there appears here by itself.")
            .arg(who);
    }
    case StorageFault::Damaged:
        return Words::tr("This logbook is damaged (%1). It is shown as far as it can be read and "
                         "is left as it is. Export what can be read, and go on with the newest "
                         "good backup.")
            .arg(argument(why, 0));
    default:
        return Words::tr("This logbook or its folder is write-protected, so it can only be read; "
                         "it is left as it is. Allow writing there and try again, or work on a "
                         "copy in another folder.");
    }
}

QString salvaged(qint64 left, qint64 altered, bool hasGaps) {
    if (left == 0 && altered == 0 && !hasGaps) {
        return Words::tr("Every row of this logbook could be read and is exported.");
    }
    QStringList parts;
    if (hasGaps) {
        parts << Words::tr("parts of it cannot be read at all");
    }
    if (left > 0) {
        parts << Words::tr("rows left out because they are changed or lack what they refer to: %1")
                     .arg(left);
    }
    if (altered > 0) {
        parts << Words::tr("rows kept although they do not match their checksum: %1").arg(altered);
    }
    return Words::tr("This logbook is damaged, and only what can be read is exported (%1). Hold it "
                     "against your newest good backup.")
        .arg(parts.join(QStringLiteral("; ")));
}

QString canTakeOver() {
    return Words::tr("The logbook has been closed where it was worked on. It can be worked on here "
                     "now.");
}

} // namespace coilbook::wording
