#include "ui/pages/sheet_dialogs.h"

#include <QCoreApplication>
#include <QFileDialog>
#include <QPrintDialog>

namespace coilbook {

std::optional<QString> DesktopSheetDialogs::askPdfPath(QWidget* parent, const QString& suggestion) {
    QFileDialog dialog(parent, QCoreApplication::translate("SheetDialogs", "Save as PDF"));
    dialog.setAcceptMode(QFileDialog::AcceptSave);
    dialog.setNameFilter(QCoreApplication::translate("SheetDialogs", "PDF files (*.pdf)"));
    dialog.setDefaultSuffix(QStringLiteral("pdf"));
    dialog.selectFile(suggestion);
    if (dialog.exec() != QDialog::Accepted || dialog.selectedFiles().isEmpty()) {
        return std::nullopt;
    }
    return dialog.selectedFiles().constFirst();
}

bool DesktopSheetDialogs::setUp(QWidget* parent, QPrinter& printer) {
    QPrintDialog dialog(&printer, parent);
    dialog.setOption(QAbstractPrintDialog::PrintPageRange, false);
    return dialog.exec() == QDialog::Accepted;
}

} // namespace coilbook
