#pragma once

#include "core/services/sheet_content.h"
#include "core/services/sheet_content_form.h"
#include "core/support/result.h"
#include "ui/preferences.h"

#include <QRectF>
#include <QString>

#include <functional>

class QPainter;

namespace coilbook {

/// Paints one page onto `device`, the whole sheet of paper in the painter's units.
using PagePainting = std::function<void(QPainter& painter, const QRectF& device)>;

/// Writes that page as a PDF: first whole in memory, then to a temporary file that replaces `path`
/// when all of it is there. Needs a QGuiApplication, any platform.
/// StorageFault::CannotWriteOutput where the file cannot be written; what was there stays then.
[[nodiscard]] Result<void> writePagePdf(const QString& path, Paper paper, const QString& title,
                                        const PagePainting& paint);

[[nodiscard]] Result<void> writeSheetPdf(const SheetContent& content, const QString& path,
                                         Paper paper);

[[nodiscard]] Result<void> writeRoundFormPdf(const RoundFormContent& content, const QString& path,
                                             Paper paper);

} // namespace coilbook
