#pragma once

class QAbstractButton;
class QWidget;

namespace coilbook {

/// Keeps the font of `widget` at `factor` times that of `leader`, also when the user changes the
/// size of all text. `leader` must outlive `widget`, as a parent does.
void followFont(QWidget& widget, QWidget& leader, double factor);

/// Makes a button a target for a dirty thumb, with air on both sides of its text, whatever size
/// text has.
void keepTarget(QAbstractButton& button);

/// Keeps any other control at least as tall as such a target.
void keepTargetHeight(QWidget& widget);

} // namespace coilbook
