#pragma once

#include "core/services/plan_content.h"
#include "core/services/planner.h"

#include <QWidget>

#include <optional>

class QComboBox;
class QLabel;
class QPushButton;
class QTableWidget;
class QTextEdit;

namespace coilbook {

class LogbookSession;
class Preferences;

/// Which springs to change before which race, how many spares that takes, and what else is to be
/// done before then. Follows the session while it is shown; decides nothing.
class PlanView : public QWidget {
    Q_OBJECT
public:
    /// Both must outlive the view.
    PlanView(LogbookSession& session, Preferences& preferences, QWidget* parent = nullptr);

    /// The place of the chosen row.
    [[nodiscard]] std::optional<Place> selected() const;
    void select(const Place& place);

    /// Further lines below the springs, of findings and service that is due.
    void setMoreLines(const std::vector<PlanLine>& lines);

    [[nodiscard]] Planner& planner() const { return *m_planner; }

    [[nodiscard]] QTableWidget& table() const { return *m_table; }

    /// All sentences that stand below the table.
    [[nodiscard]] QString said() const;

Q_SIGNALS:
    void swapWanted(const coilbook::Place& place);
    void calendarWanted();
    void printWanted();

protected:
    void showEvent(QShowEvent* event) override;
    void hideEvent(QHideEvent* event) override;

private:
    [[nodiscard]] QWidget* makeHead();
    void makeTable();
    void ask();
    void refresh();
    void fill(const PlanContent& content);
    void wantSwap();

    LogbookSession& m_session;
    Preferences& m_preferences;
    Planner* m_planner;
    QComboBox* m_risk;
    QComboBox* m_certainty;
    QPushButton* m_swap;
    QTableWidget* m_table;
    QTextEdit* m_said;
    std::vector<PlanRow> m_rows;
    std::vector<PlanLine> m_more;
};

} // namespace coilbook
