#pragma once

#include "core/domain/changes.h"
#include "core/support/clock.h"
#include "ui/dialogs/reason_dialog.h"
#include "ui/dialogs/records_dialog.h"
#include "ui/dialogs/swap_dialog.h"

#include <QPointer>
#include <QWidget>

class QLabel;
class QPushButton;
class QStackedLayout;
class QTabBar;

namespace coilbook {

class LogbookSession;
class LivesView;
class MessageStrip;
class PlanView;
class Preferences;
class ReviewBoard;
class ShelfView;
struct EngineLog;

/// The place where one decides which springs to swap. Follows the session's assessment, says what
/// to do while there is nothing to show, and records swaps.
class ReviewPage : public QWidget {
    Q_OBJECT
public:
    /// Both must outlive the page.
    ReviewPage(LogbookSession& session, Preferences& preferences, QWidget* parent = nullptr);

    /// What it shows of the engine, by keys Ctrl+1 to Ctrl+4.
    enum class View { Springs, Plan, Shelf, Lives };

    void showView(View view);
    [[nodiscard]] View view() const;

    [[nodiscard]] ReviewBoard& board() const { return *m_board; }

    [[nodiscard]] PlanView& plan() const { return *m_plan; }

    [[nodiscard]] ShelfView& shelf() const { return *m_shelf; }

    [[nodiscard]] LivesView& lives() const { return *m_lives; }

    /// What an empty page says; empty while the board is shown.
    [[nodiscard]] QString emptyText() const;

    /// The dialog that records a swap, while it is open.
    [[nodiscard]] SwapDialog* swapDialog() const { return m_dialog; }

    /// The dialog that asks why a reading is kept or set aside, while it is open.
    [[nodiscard]] ReasonDialog* reasonDialog() const { return m_reason; }

    /// The dialog with the calendar and the shelf, while it is open.
    [[nodiscard]] RecordsDialog* recordsDialog() const { return m_records; }

    /// Opens the dialog for the selected place; nothing without one or in a read-only logbook.
    void startSwap();

Q_SIGNALS:
    /// The way out of a page without inspections.
    void benchWanted();
    /// The swap plan shall be printed.
    void printPlanWanted();

private:
    [[nodiscard]] QWidget* makeViews();
    void refresh();
    void showRecords(RecordsDialog::Page page);
    void showEmpty(const QString& sentence, bool offerBench);
    void onSwapWanted(const Place& place);
    void onDecided(const InspectionId& inspection, const SpringId& spring,
                   ReadingJudgement judgement);
    [[nodiscard]] bool mayWrite(const QString& refusal);
    void applySwap(const FitSpring& swap);
    void dropOldNews(const EngineLog& log);

    LogbookSession& m_session;
    Preferences& m_preferences;
    SystemClock m_clock;
    QStackedLayout* m_stack;
    QLabel* m_empty;
    QPushButton* m_toBench;
    MessageStrip* m_message;
    QTabBar* m_views;
    ReviewBoard* m_board;
    PlanView* m_plan;
    ShelfView* m_shelf;
    LivesView* m_lives;
    QPointer<SwapDialog> m_dialog;
    QPointer<ReasonDialog> m_reason;
    QPointer<RecordsDialog> m_records;
    FittingId m_told; ///< the swap that the message is about
};

} // namespace coilbook
