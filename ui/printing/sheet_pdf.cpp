#include "ui/printing/sheet_pdf.h"

#include "ui/printing/printed_words.h"
#include "ui/printing/round_form.h"
#include "ui/printing/sheet_painter.h"

#include <QBuffer>
#include <QPageSize>
#include <QPainter>
#include <QPdfWriter>
#include <QSaveFile>

namespace coilbook {

namespace {

constexpr int kResolution = 1200; ///< dots per inch; positions are rounded to them

Result<QByteArray> pdfOf(Paper paper, const QString& title, const PagePainting& paint) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    {
        QPdfWriter writer(&buffer);
        // All of this before begin(): later changes move the size but not the origin.
        writer.setResolution(kResolution);
        writer.setPageSize(QPageSize(paper == Paper::Letter ? QPageSize::Letter : QPageSize::A4));
        writer.setPageMargins(QMarginsF());
        writer.setTitle(title);
        writer.setCreator(QStringLiteral("Coilbook"));
        QPainter painter;
        if (!painter.begin(&writer)) {
            return fail(StorageFault::CannotWriteOutput, {QStringLiteral("PDF")});
        }
        paint(painter, QRectF(0.0, 0.0, writer.width(), writer.height()));
        painter.end();
    }
    return bytes;
}

} // namespace

Result<void> writePagePdf(const QString& path, Paper paper, const QString& title,
                          const PagePainting& paint) {
    const Result<QByteArray> bytes = pdfOf(paper, title, paint);
    if (!bytes) {
        Error error = bytes.error();
        error.file = path;
        return tl::unexpected(error);
    }
    QSaveFile file(path);
    const auto failed = [&] {
        return fail(StorageFault::CannotWriteOutput, {file.errorString()}, path);
    };
    if (!file.open(QIODevice::WriteOnly)) {
        return failed();
    }
    // On a full disk a large write may come back short and commit() still succeed.
    if (file.write(*bytes) != bytes->size() || !file.flush()) {
        const auto failure = failed();
        file.cancelWriting();
        return failure;
    }
    if (!file.commit()) {
        return failed();
    }
    return {};
}

Result<void> writeSheetPdf(const SheetContent& content, const QString& path, Paper paper) {
    return writePagePdf(path, paper, Printed::tr("Valve spring sheet, %1").arg(content.engine),
                        [&](QPainter& painter, const QRectF& device) {
                            paintSheet(painter, device, paper, content);
                        });
}

Result<void> writeRoundFormPdf(const RoundFormContent& content, const QString& path, Paper paper) {
    return writePagePdf(path, paper, Printed::tr("Round form, %1").arg(content.engine),
                        [&](QPainter& painter, const QRectF& device) {
                            paintRoundForm(painter, device, paper, content);
                        });
}

} // namespace coilbook
