#pragma once

#include <QString>

#include <optional>

class QPrinter;
class QWidget;

namespace coilbook {

/// What the sheet's page has to ask before something leaves the program. A test answers in the
/// user's place.
class SheetDialogs {
public:
    virtual ~SheetDialogs() = default;
    /// Where the PDF shall go; empty: thought better of it.
    [[nodiscard]] virtual std::optional<QString> askPdfPath(QWidget* parent,
                                                            const QString& suggestion) = 0;
    /// Lets the user choose and set up the printer; false: thought better of it.
    [[nodiscard]] virtual bool setUp(QWidget* parent, QPrinter& printer) = 0;
};

/// The dialogs of the desktop.
class DesktopSheetDialogs final : public SheetDialogs {
public:
    [[nodiscard]] std::optional<QString> askPdfPath(QWidget* parent,
                                                    const QString& suggestion) override;
    [[nodiscard]] bool setUp(QWidget* parent, QPrinter& printer) override;
};

} // namespace coilbook
