#pragma once

#include "core/support/error.h"

#include <tl/expected.hpp>

#include <utility>

namespace coilbook {

/// A value, or the reason why there is none. Expected failures travel this way; a bug is an
/// assertion, and no exception leaves `core`.
template <class T>
using Result = tl::expected<T, Error>;

/// Short way to return a failure: `return fail(InputFault::EmptyFile, {}, path);`
template <class Fault>
[[nodiscard]] tl::unexpected<Error> fail(Fault fault, QStringList arguments = {}, QString file = {},
                                         qint64 line = 0, QString column = {}) {
    return tl::unexpected<Error>(
        Error{fault, std::move(arguments), std::move(file), line, std::move(column), 0, {}});
}

} // namespace coilbook
