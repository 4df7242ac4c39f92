#pragma once

#include "core/services/logbook_session.h"

#include <QUuid>
#include <QWidget>

#include <optional>
#include <vector>

class QLabel;
class QPushButton;
class QTreeWidget;

namespace coilbook {

class AmendmentList;
class AuthorFields;
class FaultForm;
class Preferences;

/// Records of one kind: their list at the left, the chosen one as a form at the right, and below it
/// what was changed in it since. A change needs a reason and leaves the old value in the logbook.
/// The kinds derive from this and say what stands in list and form.
class RecordPanel : public QWidget {
    Q_OBJECT
public:
    /// Shows that record, if it is in the list.
    void select(const QUuid& record);
    /// An empty form for a new record; only for kinds that can be added here.
    void startNew();

protected:
    struct Line {
        QUuid record;
        QStringList cells;
    };

    RecordPanel(LogbookSession& session, Preferences& preferences, QWidget* parent);

    /// Call at the end of the constructor, with the form filled with fields. Without `addText`
    /// nothing can be added here.
    void build(const QStringList& columns, const QString& addText, const QString& emptyText);

    [[nodiscard]] virtual std::vector<Line> lines() const = 0;
    /// Puts the record into the form; null: what a new one starts with.
    virtual void fill(const QUuid& record) = 0;
    /// The change that the form stands for: an amendment, or without `author` a new record of that
    /// id. Nothing when a field is at fault, which the form then says.
    [[nodiscard]] virtual std::optional<Change> read(const QUuid& record,
                                                     const std::optional<Authorship>& author) = 0;
    /// The field that a refusal is about; null: the form as a whole.
    [[nodiscard]] virtual QWidget* fieldAt(LogbookFault fault) const = 0;

    LogbookSession& m_session;
    Preferences& m_preferences;
    FaultForm* m_form;

private:
    void refresh();
    void showChosen();
    void show(const QUuid& record);
    void save();
    void finish(const QUuid& record, const Result<void>& result);

    QTreeWidget* m_list;
    AuthorFields* m_author = nullptr;
    AmendmentList* m_changes;
    QLabel* m_empty;
    QPushButton* m_add;
    QPushButton* m_save;
    QUuid m_record; ///< in the form; null: a new one
    bool m_canAdd = false;
};

} // namespace coilbook
