#pragma once

#include <QUuid>

#include <algorithm>
#include <vector>

namespace coilbook {

/// The record of that id, or null.
template <class Record>
[[nodiscard]] const Record* recordWith(const std::vector<Record>& records, const QUuid& id) {
    const auto found = std::find_if(records.begin(), records.end(),
                                    [&](const Record& record) { return record.id.uuid() == id; });
    return found == records.end() ? nullptr : &*found;
}

} // namespace coilbook
