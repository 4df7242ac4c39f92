#pragma once

#include "ui/preferences.h"
#include "ui/printing/sheet_pdf.h"

class QPrinter;

namespace coilbook {

/// Readies `printer` for one sheet of that paper; call before the user sets it up.
void preparePrinter(QPrinter& printer, Paper paper, const QString& title);

/// Prints the page; at its true size on paper as large as asked for, else shrunk to what is there.
/// False: the printer took no page.
[[nodiscard]] bool printPage(QPrinter& printer, Paper paper, const PagePainting& painting);

} // namespace coilbook
