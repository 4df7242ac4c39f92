#pragma once

#include "core/domain/ids.h"
#include "ui/window/work_place.h"

#include <QMainWindow>
#include <QPointer>

#include <array>
#include <functional>

class QLabel;
class QStackedWidget;

namespace coilbook {

class LogbookFiles;
class LogbookSession;
class LogbookState;
class MessageStrip;
class Preferences;
class StartPage;
class TopBar;
class WindowMenus;
class WorkStrip;

/// The one window: an engine at the top, one of three places below, and what has to be said in a
/// strip between them. A page is made when it is shown first, so that the window is there at once.
class MainWindow : public QMainWindow {
    Q_OBJECT
public:
    using PageMaker = std::function<QWidget*(WorkPlace, LogbookSession&, Preferences&, QWidget*)>;

    /// Both must outlive the window. `makePage` is for tests.
    MainWindow(LogbookSession& session, Preferences& preferences, PageMaker maker = makePage);
    ~MainWindow() override;

    void openLogbook(const QString& path);
    void showPlace(WorkPlace place);

    [[nodiscard]] WorkPlace place() const { return m_place; }

    /// The page now shown: that of a place, or the start page.
    [[nodiscard]] QWidget* page() const;

    [[nodiscard]] MessageStrip& strip() const { return *m_strip; }

    [[nodiscard]] QString statusText() const;

protected:
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dropEvent(QDropEvent* event) override;
    void closeEvent(QCloseEvent* event) override;

private:
    void wireMenus();
    void wireSession();
    void wireStartPage();
    void restorePlaceOnScreen();

    void onEngines();
    /// Shows the page that fits what is open now.
    void showFitting();
    void showTitle();
    void showStatus();
    void chooseEngine();
    void selectEngine(const EngineId& engine);
    void editEngine(bool isNew);
    void retireEngine();
    void endImport();

    LogbookSession& m_session;
    Preferences& m_preferences;
    PageMaker m_makePage;
    TopBar* m_top;
    MessageStrip* m_strip;
    WorkStrip* m_work;
    QStackedWidget* m_stack;
    StartPage* m_start;
    QLabel* m_status;
    WindowMenus* m_menus = nullptr;
    LogbookState* m_state = nullptr;
    LogbookFiles* m_files = nullptr;
    std::array<QWidget*, 3> m_pages{};
    WorkPlace m_place = WorkPlace::Bench;
    QPointer<QWidget> m_focusBefore; ///< where the cursor was before an engine was chosen
    bool m_opening = false;
};

} // namespace coilbook
