#pragma once

#include <QDialog>

namespace coilbook {

class LogbookSession;
class Preferences;

/// The shop's testers: what is known of each, its calibrations, and how well it repeats. Shown with
/// open(): nothing waits for it.
class TestersDialog : public QDialog {
    Q_OBJECT
public:
    enum class Page { Testers, Calibrations, Studies };

    TestersDialog(LogbookSession& session, Preferences& preferences, Page first,
                  QWidget* parent = nullptr);
};

} // namespace coilbook
