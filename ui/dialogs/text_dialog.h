#pragma once

#include <QDialog>

namespace coilbook {

/// Some paragraphs to read, with a button to close: cautions, and what the program is.
class TextDialog : public QDialog {
    Q_OBJECT
public:
    TextDialog(const QString& title, const QStringList& paragraphs, QWidget* parent = nullptr);
};

/// The usual cautions around valve springs.
[[nodiscard]] TextDialog* makeCautionsDialog(QWidget* parent);

/// Version, licence, and where the data lives (`logbook` empty: none is open).
[[nodiscard]] TextDialog* makeAboutDialog(const QString& logbook, QWidget* parent);

} // namespace coilbook
