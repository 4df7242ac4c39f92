#pragma once

#include "core/domain/shelf.h"

#include <QWidget>

#include <optional>
#include <vector>

class QLabel;
class QPushButton;
class QTreeWidget;

namespace coilbook {

class LogbookSession;
class Preferences;

/// The springs of an engine that stand in no place: spares, and those that were thrown out.
class ShelfView : public QWidget {
    Q_OBJECT
public:
    /// Both must outlive the view.
    ShelfView(LogbookSession& session, Preferences& preferences, QWidget* parent = nullptr);

    [[nodiscard]] QString summary() const;

    [[nodiscard]] QTreeWidget& list() const { return *m_list; }

Q_SIGNALS:
    /// Records of the shelf: of that spring, or to enter a new spare.
    void recordWanted(const std::optional<coilbook::SpringId>& spring);

private:
    void refresh();

    LogbookSession& m_session;
    Preferences& m_preferences;
    QLabel* m_summary;
    QTreeWidget* m_list;
    QPushButton* m_change;
    std::vector<ShelvedSpring> m_shelf;
};

} // namespace coilbook
