#pragma once

#include "core/support/clock.h"
#include "ui/pages/sheet_dialogs.h"
#include "ui/preferences.h"
#include "ui/printing/sheet_pdf.h"

#include <QWidget>

#include <memory>

class QAction;
class QLabel;
class QRadioButton;
class QStackedLayout;

namespace coilbook {

class LogbookSession;
class PagePreview;
class Planner;

/// The place for printing: the spring sheet, the swap plan or the blank round form of the selected
/// engine as it will come out of the printer, and the ways to get it there.
class SheetPage : public QWidget {
    Q_OBJECT
public:
    enum class Document { Sheet, Plan, RoundForm };

    /// Both must outlive the page.
    SheetPage(LogbookSession& session, Preferences& preferences, QWidget* parent = nullptr);
    ~SheetPage() override;

    /// For tests: who answers in place of the desktop's dialogs.
    void setDialogs(std::unique_ptr<SheetDialogs> dialogs);

    void choose(Document document);
    [[nodiscard]] Document document() const;

    /// Also fit for a menu; enabled while there is a page to print.
    [[nodiscard]] QAction* printAction() const { return m_print; }

    [[nodiscard]] QAction* savePdfAction() const { return m_savePdf; }

    [[nodiscard]] PagePreview& preview() const { return *m_preview; }

    /// What is said in place of the preview; empty while there is one.
    [[nodiscard]] QString emptyText() const;
    /// What became of the last print or save; empty: nothing to say.
    [[nodiscard]] QString message() const;

    void print();
    void savePdf();

protected:
    void showEvent(QShowEvent* event) override;

private:
    /// A page, ready to be drawn anywhere.
    struct Page {
        PagePainting painting;
        QString title;    ///< of the document, for people
        QString fileName; ///< suggestion, with suffix
    };

    void makeActions();
    [[nodiscard]] QWidget* makeBar();
    void refresh();
    [[nodiscard]] QString whyEmpty() const;
    [[nodiscard]] Page page() const;
    void say(const QString& sentence);

    LogbookSession& m_session;
    Preferences& m_preferences;
    SystemClock m_clock;
    std::unique_ptr<SheetDialogs> m_dialogs;
    QAction* m_print = nullptr;
    QAction* m_savePdf = nullptr;
    QRadioButton* m_sheet = nullptr;
    QRadioButton* m_plan = nullptr;
    QRadioButton* m_roundForm = nullptr;
    QRadioButton* m_a4 = nullptr;
    QRadioButton* m_letter = nullptr;
    QLabel* m_message;
    QLabel* m_empty;
    PagePreview* m_preview;
    QStackedLayout* m_stack;
    Planner* m_planner;
    bool m_assessmentIsCurrent = false; ///< the assessment is that of the log
};

} // namespace coilbook
