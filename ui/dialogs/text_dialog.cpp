#include "ui/dialogs/text_dialog.h"

#include "core/wording/wording.h"
#include "ui/dialogs/dialog_size.h"
#include "ui/widgets/scrolling.h"

#include <QCoreApplication>
#include <QDialogButtonBox>
#include <QLabel>
#include <QScrollArea>
#include <QVBoxLayout>

namespace coilbook {

TextDialog::TextDialog(const QString& title, const QStringList& paragraphs, QWidget* parent)
    : QDialog(parent) {
    setWindowTitle(title);
    setAttribute(Qt::WA_DeleteOnClose);
    auto* page = new QWidget;
    auto* text = new QVBoxLayout(page);
    for (const QString& paragraph : paragraphs) {
        auto* label = new QLabel(paragraph, page);
        label->setTextFormat(Qt::PlainText);
        label->setWordWrap(true);
        label->setTextInteractionFlags(Qt::TextSelectableByMouse);
        text->addWidget(label);
    }
    text->addStretch();
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    connect(buttons, &QDialogButtonBox::rejected, this, &TextDialog::reject);
    auto* column = new QVBoxLayout(this);
    column->addWidget(scrolling(page));
    column->addWidget(buttons);
    giveRoom(*this, 90, 22);
}

TextDialog* makeCautionsDialog(QWidget* parent) {
    return new TextDialog(TextDialog::tr("Cautions"), wording::cautions(), parent);
}

TextDialog* makeAboutDialog(const QString& logbook, QWidget* parent) {
    QStringList paragraphs;
    paragraphs << TextDialog::tr("Coilbook %1, a logbook for the valve springs of race engines.")
                      .arg(QCoreApplication::applicationVersion());
    paragraphs << TextDialog::tr("Free software under the GNU General Public License, version 3 or "
                                 "any later version (GPL-3.0-or-later). It comes without any "
                                 "warranty.");
    if (logbook.isEmpty()) {
        paragraphs << TextDialog::tr("No logbook is open. A logbook is one file; it is kept where "
                                     "you choose.");
    } else {
        paragraphs << TextDialog::tr("This logbook is one file:\n%1").arg(logbook);
    }
    paragraphs << TextDialog::tr("Nothing leaves this machine. To keep a second copy, use “Back "
                                 "up” in the logbook menu and put the copy on another disk.");
    return new TextDialog(TextDialog::tr("About Coilbook"), paragraphs, parent);
}

} // namespace coilbook
