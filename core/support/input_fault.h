#pragma once

namespace coilbook {

/// What can be wrong with a file that is read in, or with a command line. Position (file, line,
/// column) is in `Error`; further arguments are listed at the enumerator.
enum class InputFault {
    EmptyFile,
    CannotRead, ///< 1: what the system said
};

} // namespace coilbook
