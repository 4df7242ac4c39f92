#pragma once

#include "core/domain/changes.h"
#include "core/support/clock.h"
#include "ui/dialogs/reason_dialog.h"
#include "ui/dialogs/swap_dialog.h"

#include <QPointer>
#include <QWidget>

class QLabel;
class QPushButton;
class QStackedLayout;

namespace coilbook {

class LogbookSession;
class MessageStrip;
class Preferences;
class ReviewBoard;
struct EngineLog;

/// The place where one decides which springs to swap. Follows the session's assessment, says what
/// to do while there is nothing to show, and records swaps.
class ReviewPage : public QWidget {
    Q_OBJECT
public:
    /// Both must outlive the page.
    ReviewPage(LogbookSession& session, Preferences& preferences, QWidget* parent = nullptr);

    [[nodiscard]] ReviewBoard& board() const { return *m_board; }

    /// What an empty page says; empty while the board is shown.
    [[nodiscard]] QString emptyText() const;

    /// The dialog that records a swap, while it is open.
    [[nodiscard]] SwapDialog* swapDialog() const { return m_dialog; }

    /// The dialog that asks why a reading is kept or set aside, while it is open.
    [[nodiscard]] ReasonDialog* reasonDialog() const { return m_reason; }

    /// Opens the dialog for the selected place; nothing without one or in a read-only logbook.
    void startSwap();

Q_SIGNALS:
    /// The way out of a page without inspections.
    void benchWanted();

private:
    void refresh();
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
    ReviewBoard* m_board;
    QPointer<SwapDialog> m_dialog;
    QPointer<ReasonDialog> m_reason;
    FittingId m_told; ///< the swap that the message is about
};

} // namespace coilbook
