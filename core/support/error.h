#pragma once

#include "core/support/input_fault.h"
#include "core/support/logbook_fault.h"
#include "core/support/storage_fault.h"

#include <QString>
#include <QStringList>

#include <variant>

namespace coilbook {

/// Why something could not be done, as data. `core/wording` turns it into the one sentence that a
/// person reads (wording::sentence); nothing else in the program composes such a sentence.
struct Error {
    std::variant<StorageFault, InputFault, LogbookFault> fault;
    /// What the sentence names, in the order documented at the enumerator.
    QStringList arguments;
    /// Where: file, physical line (the first is 1; 0 = none) and column name, as far as they apply.
    QString file;
    qint64 line = 0;
    QString column;
    /// Further faults of the same kind of input that were found beside this one.
    qint64 more = 0;
    /// Technical detail for the log; never shown as the sentence.
    QString detail;

    bool operator==(const Error&) const = default;
};

} // namespace coilbook
