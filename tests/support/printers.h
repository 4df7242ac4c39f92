#pragma once

#include "core/support/error.h"
#include "core/units/force.h"

#include <QString>

#include <ostream>

// What GoogleTest prints when a comparison fails; without these it prints bytes.

inline void PrintTo(const QString& text, std::ostream* stream) {
    *stream << '"' << text.toStdString() << '"';
}

namespace coilbook {

inline void PrintTo(Force force, std::ostream* stream) {
    *stream << force.inPoundsForce() << " lbf";
}

inline void PrintTo(const Error& error, std::ostream* stream) {
    *stream << "fault " << error.fault.index() << '/'
            << std::visit([](auto fault) { return static_cast<int>(fault); }, error.fault) << " ["
            << error.arguments.join(QStringLiteral(", ")).toStdString() << "] "
            << error.file.toStdString() << ':' << error.line << ':' << error.column.toStdString()
            << ' ' << error.detail.toStdString();
}

} // namespace coilbook
