#pragma once

#include "core/storage/table.h"

namespace coilbook::storage {

/// The same as amend() for values in the order of the columns.
[[nodiscard]] Result<void> amendValues(const Connection& connection, const TableShape& shape,
                                       const QVariantList& before, const QVariantList& after,
                                       const Authorship& author);

/// Puts `after` in the place of `before` (the same record as stored) and keeps the old value of
/// each changed fact as an Amendment by `author`. Nothing happens when nothing differs.
/// LogbookFault::WhyMissing if a fact changes without a reason.
template <class Record>
[[nodiscard]] Result<void> amend(const Connection& connection, const Record& before,
                                 const Record& after, const Authorship& author) {
    return amendValues(connection, Rows<Record>::shape(), Rows<Record>::values(before),
                       Rows<Record>::values(after), author);
}

} // namespace coilbook::storage
