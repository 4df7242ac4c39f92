#pragma once

class QDialog;

namespace coilbook {

/// Gives a dialog room for so many characters and lines of its text, as far as the screen allows.
/// Qt alone never goes beyond two thirds of the screen, which is little on a laptop.
void giveRoom(QDialog& dialog, int characters, int lines);

} // namespace coilbook
