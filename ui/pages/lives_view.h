#pragma once

#include "core/services/lives_reader.h"

#include <QWidget>

#include <memory>

class QComboBox;
class QLabel;
class QTreeWidget;

namespace coilbook {

class LogbookSession;
class Preferences;
class SurvivalChart;

/// How long springs last: of one part, batch, engine or kind of valve against the others, as a
/// curve and in numbers, and below it every spring's whole history. Reads the whole logbook while
/// it is shown.
class LivesView : public QWidget {
    Q_OBJECT
public:
    /// Both must outlive the view.
    LivesView(LogbookSession& session, Preferences& preferences, QWidget* parent = nullptr);

    void compareBy(LifeGrouping grouping);

    [[nodiscard]] QString said() const;

    [[nodiscard]] QTreeWidget& groups() const { return *m_groups; }

    [[nodiscard]] QTreeWidget& springs() const { return *m_springs; }

protected:
    void showEvent(QShowEvent* event) override;

private:
    void readAgain();
    void refresh();
    void showChosen();

    LogbookSession& m_session;
    LivesReader* m_reader;
    std::shared_ptr<const std::vector<SpringLife>> m_lives;
    LifeComparison m_comparison;
    bool m_isOld = true;
    QComboBox* m_grouping;
    QLabel* m_said;
    SurvivalChart* m_chart;
    QTreeWidget* m_groups;
    QTreeWidget* m_springs;
};

} // namespace coilbook
