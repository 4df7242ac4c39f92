#pragma once

#include "app/command_line/command.h"

namespace coilbook {

/// What `coilbook --help` prints.
[[nodiscard]] QString helpOnProgram(const std::vector<Command>& commands);

/// What `coilbook COMMAND --help` prints.
[[nodiscard]] QString helpOn(const Command& command);

} // namespace coilbook
