#pragma once

#include <QCoreApplication>

namespace coilbook {

/// The translation context of what the command line says: `CommandText::tr("…")`.
class CommandText {
    Q_DECLARE_TR_FUNCTIONS(CommandLine)
};

} // namespace coilbook
