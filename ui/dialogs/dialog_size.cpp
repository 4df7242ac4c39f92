#include "ui/dialogs/dialog_size.h"

#include <QDialog>
#include <QScreen>

namespace coilbook {

namespace {

/// The part of the screen that a dialog may take; the rest is for its frame.
constexpr double kMostOfScreen = 0.9;

} // namespace

void giveRoom(QDialog& dialog, int characters, int lines) {
    const QFontMetrics metrics = dialog.fontMetrics();
    const QSize wanted(metrics.averageCharWidth() * characters, metrics.lineSpacing() * lines);
    dialog.resize(wanted.expandedTo(dialog.sizeHint())
                      .boundedTo(dialog.screen()->availableSize() * kMostOfScreen));
}

} // namespace coilbook
