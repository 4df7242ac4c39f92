#pragma once

#include <QObject>

namespace coilbook {

/// Keeps every label of the program from guessing what it is given: text from a logbook, a file's
/// name, what a person typed are shown as they stand, also where they look like HTML, and nothing
/// in them is loaded from anywhere. A label that is meant to be rich says so itself and escapes
/// what it is given. Tooltips and message boxes are labels too.
class PlainLabels : public QObject {
    Q_OBJECT
public:
    /// For all labels of the application that are shown from now on, while this is there.
    explicit PlainLabels(QObject* parent);

    bool eventFilter(QObject* watched, QEvent* event) override;
};

} // namespace coilbook
