#pragma once

#include "core/support/result.h"

#include <QStringList>
#include <tl/expected.hpp>

#include <utility>
#include <variant>

namespace coilbook {

/// What can be wrong with the command line itself. Arguments are listed at the enumerator.
enum class UsageFault {
    UnknownCommand,     ///< 1: the word given
    UnknownOption,      ///< 1: the option given, 2: the command or empty
    OptionNeedsValue,   ///< 1: the option, 2: what its value stands for
    OptionTakesNoValue, ///< 1: the option
    OptionTwice,        ///< 1: the option
    MissingOption,      ///< 1: the option, 2: the command
    MissingArgument,    ///< 1: what is missing, 2: the command
    TooManyArguments,   ///< 1: the first that is too many, 2: the command
    BadDate,            ///< 1: the text
    BadLimit,           ///< 1: the text
    BadRacesAhead,      ///< 1: the text
    BadPaper,           ///< 1: the text
    BadSeal,            ///< 1: the text
};

struct UsageError {
    UsageFault fault = UsageFault::UnknownCommand;
    QStringList arguments;
};

/// Why a command ended without doing its work: the command line is wrong, or the work failed.
using Failure = std::variant<UsageError, Error>;

template <class T>
using Outcome = tl::expected<T, Failure>;

/// `return misused(UsageFault::BadDate, {text});`
[[nodiscard]] inline tl::unexpected<Failure> misused(UsageFault fault, QStringList arguments) {
    return tl::unexpected<Failure>(UsageError{fault, std::move(arguments)});
}

/// Hands the error of core on: `return failed(store.error());`
[[nodiscard]] inline tl::unexpected<Failure> failed(const Error& error) {
    return tl::unexpected<Failure>(error);
}

/// The outcome of a last step in core.
[[nodiscard]] inline Outcome<void> outcomeOf(const Result<void>& result) {
    return result.map_error([](const Error& error) { return Failure(error); });
}

/// 2 for a wrong command line, 1 for everything else.
[[nodiscard]] int exitCodeOf(const Failure& failure);

/// The one line for standard error, without its end: `coilbook: ` and the sentence.
[[nodiscard]] QString lineOf(const Failure& failure);

} // namespace coilbook
