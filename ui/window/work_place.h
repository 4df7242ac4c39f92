#pragma once

class QWidget;

namespace coilbook {

class LogbookSession;
class Preferences;

/// The three places of the window, one for each job.
enum class WorkPlace {
    Bench,  ///< enter readings
    Review, ///< decide what to swap
    Sheet,  ///< print
};

/// Makes the page of that place; `parent` owns it.
[[nodiscard]] QWidget* makePage(WorkPlace place, LogbookSession& session, Preferences& preferences,
                                QWidget* parent);

} // namespace coilbook
