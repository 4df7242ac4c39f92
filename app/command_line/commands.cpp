#include "app/command_line/command.h"

namespace coilbook {

std::vector<Command> commands() {
    return {demoCommand(),  importCommand(), exportCommand(), assessCommand(),
            sheetCommand(), verifyCommand(), backupCommand()};
}

} // namespace coilbook
