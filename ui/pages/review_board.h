#pragma once

#include "core/assessment/assessment.h"
#include "core/domain/engine_log.h"
#include "core/domain/history.h"
#include "core/wording/quantities.h"
#include "ui/models/standing_table_model.h"
#include "ui/pages/review_cells.h"

#include <QWidget>

#include <memory>
#include <optional>

class QLabel;
class QPushButton;
class QShortcut;
class QSortFilterProxyModel;
class QStackedLayout;
class QTableView;
class QTextEdit;

namespace coilbook {

class ReviewDetail;

/// Shows an assessed engine: the plan with its small charts or one spring enlarged on the left, the
/// table by urgency and the reasons of the selected spring on the right. Decides and stores
/// nothing.
class ReviewBoard : public QWidget {
    Q_OBJECT
public:
    explicit ReviewBoard(QWidget* parent = nullptr);

    /// Keeps the selection while the place is there, else selects the most urgent spring.
    void show(std::shared_ptr<const EngineLog> log, const EngineHistory& history,
              std::shared_ptr<const Assessment> assessment, const Quantities& quantities);

    [[nodiscard]] std::optional<Place> selected() const { return m_selected; }

    void select(const Place& place);

    [[nodiscard]] bool isEnlarged() const;
    void enlarge();
    void backToPlan();

    [[nodiscard]] EnginePlan& plan() const { return *m_plan; }

    [[nodiscard]] QTableView& table() const { return *m_table; }

    [[nodiscard]] ReviewDetail& detail() const { return *m_detail; }

    [[nodiscard]] QString summary() const;

    /// What is to be said of a newest inspection that is off as a whole; empty otherwise.
    [[nodiscard]] QString shiftNotice() const;
    [[nodiscard]] QString reasons() const;

Q_SIGNALS:
    void swapWanted(const coilbook::Place& place);
    void decided(const coilbook::InspectionId& inspection, const coilbook::SpringId& spring,
                 coilbook::ReadingJudgement judgement);

protected:
    void resizeEvent(QResizeEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    QWidget* makeHead();
    QWidget* makeSide();
    void makeTable();
    void onTableRow();
    void showSelected();
    void writeSummary();
    void writeReasons();
    void fitColumns();
    void wantSwap();

    std::shared_ptr<const EngineLog> m_log;
    std::shared_ptr<const Assessment> m_assessment;
    Quantities m_quantities;
    ReviewCells m_cells;
    std::optional<Place> m_selected;

    StandingTableModel* m_model;
    QSortFilterProxyModel* m_sorted;
    EnginePlan* m_plan;
    ReviewDetail* m_detail;
    QStackedLayout* m_views;
    QTableView* m_table;
    QLabel* m_summary;
    QLabel* m_shift;
    QLabel* m_reasonsHead;
    QTextEdit* m_reasons;
    QPushButton* m_enlarge;
    QPushButton* m_swap;
    QShortcut* m_escape;
    QWidget* m_side;
};

} // namespace coilbook
