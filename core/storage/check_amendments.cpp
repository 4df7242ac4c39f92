#include "core/storage/checks.h"
#include "core/storage/table.h"

#include <algorithm>
#include <tuple>

namespace coilbook::storage {

namespace {

/// The table of that name whose records can be amended; null if there is none.
const TableShape* amendableTable(const QString& name) {
    const auto& tables = dataTables();
    const auto found = std::find_if(tables.begin(), tables.end(), [&](const TableShape* shape) {
        return shape->name == name && shape->key == QLatin1String("id") &&
               shape != &Rows<Amendment>::shape() && shape != &Rows<Decision>::shape();
    });
    return found == tables.end() ? nullptr : *found;
}

class FactChains {
public:
    FactChains(const Connection& connection, VerifyReport& report)
        : m_connection(connection)
        , m_report(report) {}

    Result<void> check() {
        const QString sql = QStringLiteral(
            "SELECT a.subject, a.record_id, a.fact, a.old_value, a.new_value, a.id FROM amendment a"
            " ORDER BY a.subject, a.record_id, a.fact, a.id");
        const auto onRow = [&](const QSqlQuery& query) -> Result<void> {
            const Fact fact{query.value(0).toString(), query.value(1).toString(),
                            query.value(2).toString()};
            if (fact == m_fact) {
                if (query.value(3).toString() != m_newest) {
                    add(FindingKind::AmendmentGap, query.value(5).toString());
                }
            } else if (Result<void> ended = endChain(); !ended) {
                return ended;
            }
            m_fact = fact;
            m_newest = query.value(4).toString();
            m_newestId = query.value(5).toString();
            return {};
        };
        return m_connection.forEachRow(sql, {}, onRow).and_then([&] { return endChain(); });
    }

private:
    using Fact = std::tuple<QString, QString, QString>; ///< table, record id, column

    void add(FindingKind kind, const QString& id) {
        m_report.add({kind, QStringLiteral("amendment ") + id, {}, {}});
    }

    Result<void> endChain() {
        const auto& [table, record, column] = m_fact;
        if (m_newestId.isNull()) {
            return {};
        }
        const TableShape* shape = amendableTable(table);
        if (shape == nullptr || !shape->columns.contains(column)) {
            add(FindingKind::UnknownFact, m_newestId);
            return {};
        }
        bool found = false;
        const auto onRow = [&](const QSqlQuery& query) -> Result<void> {
            found = true;
            if (query.value(0).toString() != m_newest) {
                add(FindingKind::NotLeadingToNow, m_newestId);
            }
            return {};
        };
        // Both names come from the shape, never from the file.
        const QString sql =
            QStringLiteral("SELECT r.%1 FROM %2 r WHERE r.id = ?").arg(column, shape->name);
        return m_connection.forEachRow(sql, {record}, onRow).map([&] {
            if (!found) {
                add(FindingKind::NothingAmended, m_newestId);
            }
        });
    }

    const Connection& m_connection;
    VerifyReport& m_report;
    Fact m_fact;
    QString m_newest;
    QString m_newestId; ///< null before the first
};

} // namespace

Result<void> checkAmendments(const Connection& connection, VerifyReport& report) {
    return FactChains(connection, report).check();
}

} // namespace coilbook::storage
