#include "core/wording/fault_sentences.h"
#include "core/wording/words.h"

namespace coilbook::wording {

QString sentenceOf(InputFault fault, const Error& error) {
    switch (fault) {
    case InputFault::EmptyFile:
        return Words::tr("The file is empty, so nothing was read from it. It must begin with a "
                         "line that names the columns.");
    case InputFault::CannotRead:
        return Words::tr("The file cannot be read (%1). Check its name and your permission to "
                         "read it.")
            .arg(argument(error, 0));
    }
    Q_UNREACHABLE();
}

} // namespace coilbook::wording
