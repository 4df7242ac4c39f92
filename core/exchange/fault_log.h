#pragma once

#include "core/support/error.h"

#include <QString>

#include <compare>
#include <concepts>
#include <cstddef>

namespace coilbook {

/// Where in the files of one import something stands. Sorts by argument, line, column.
struct CellPosition {
    std::size_t file = 0;
    qint64 line = 0;
    std::size_t field = 0;

    auto operator<=>(const CellPosition&) const = default;
};

/// Counts what is wrong with the files of an import and keeps the first by position, whatever the
/// order in which the faults were found.
class FaultLog {
public:
    void add(const CellPosition& position, const Error& error) {
        add(position, [&error] { return error; });
    }

    /// `makeError()` is asked for the error only if it is the first: a file of the wrong kind may
    /// have millions of faults.
    template <std::invocable MakeError>
    void add(const CellPosition& position, const MakeError& makeError) {
        if (m_count++ == 0 || position < m_position) {
            m_position = position;
            m_first = makeError();
        }
    }

    [[nodiscard]] bool isEmpty() const { return m_count == 0; }

    /// The first fault, with the number of all others as `more`. Precondition: not isEmpty().
    [[nodiscard]] Error first() const {
        Error error = m_first;
        error.more = m_count - 1;
        return error;
    }

private:
    CellPosition m_position;
    Error m_first;
    qint64 m_count = 0;
};

} // namespace coilbook
