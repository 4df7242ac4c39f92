#include "core/storage/verification.h"

#include "core/storage/table.h"
#include "core/storage/transaction.h"

#include <map>
#include <tuple>

namespace coilbook::storage {

namespace {

using Findings = std::vector<VerifyReport::Finding>;

bool isDamage(const Error& error) {
    const auto* fault = std::get_if<StorageFault>(&error.fault);
    return fault != nullptr &&
           (*fault == StorageFault::Damaged || *fault == StorageFault::NotALogbook);
}

/// Damage that stops a query becomes a finding, so that the other checks still run.
Result<void> keepDamage(const Result<void>& checked, const QString& where, Findings& findings) {
    if (checked || !isDamage(checked.error())) {
        return checked;
    }
    findings.push_back({where, checked.error().detail});
    return {};
}

Result<void> checkPages(const Connection& connection, Findings& findings) {
    const auto onRow = [&](const QSqlQuery& query) -> Result<void> {
        const QString text = query.value(0).toString();
        if (text != QLatin1String("ok")) {
            findings.push_back({QStringLiteral("page"), text});
        }
        return {};
    };
    return connection.forEachRow(QStringLiteral("PRAGMA integrity_check"), {}, onRow);
}

Result<void> checkForeignKeys(const Connection& connection, Findings& findings) {
    const auto onRow = [&](const QSqlQuery& query) -> Result<void> {
        findings.push_back(
            {query.value(0).toString(),
             QStringLiteral("refers to a row that is not there in ") + query.value(2).toString()});
        return {};
    };
    return connection.forEachRow(QStringLiteral("PRAGMA foreign_key_check"), {}, onRow);
}

template <class Record>
Result<void> checkRows(const Connection& connection, VerifyReport& report) {
    const TableShape& shape = Rows<Record>::shape();
    const int columns = static_cast<int>(shape.columns.size());
    const int id = static_cast<int>(shape.columns.indexOf(QStringLiteral("id")));
    const QString sql = QStringLiteral("SELECT %1 FROM %2 r")
                            .arg(columnList(shape, QStringLiteral("r")), shape.name);
    const auto onRow = [&](const QSqlQuery& query) -> Result<void> {
        ++report.rowsChecked;
        QVariantList values;
        values.reserve(columns);
        for (int i = 0; i < columns; ++i) {
            values.append(query.value(i));
        }
        if (query.value(columns).toLongLong() != rowChecksum(shape.name, values)) {
            report.findings.push_back({shape.name + QLatin1Char(' ') + values.at(id).toString(),
                                       QStringLiteral("the row does not match its checksum")});
        }
        return {};
    };
    return keepDamage(connection.forEachRow(sql, {}, onRow), shape.name, report.findings);
}

/// Amended facts: each old value is what the amendment before it left, and the newest one is what
/// the record says now.
class FactChains {
public:
    FactChains(const Connection& connection, Findings& findings)
        : m_connection(connection)
        , m_findings(findings) {}

    Result<void> check() {
        const QString sql = QStringLiteral(
            "SELECT a.subject, a.record_id, a.fact, a.old_value, a.new_value, a.id FROM amendment a"
            " ORDER BY a.subject, a.record_id, a.fact, a.id");
        const auto onRow = [&](const QSqlQuery& query) -> Result<void> {
            const Fact fact{query.value(0).toString(), query.value(1).toString(),
                            query.value(2).toString()};
            if (fact == m_fact) {
                if (query.value(3).toString() != m_newest) {
                    add(query.value(5).toString(),
                        QStringLiteral("does not begin where the amendment before it ended"));
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

    void add(const QString& id, const QString& what) {
        m_findings.push_back({QStringLiteral("amendment ") + id, what});
    }

    Result<void> endChain() {
        const auto& [table, record, column] = m_fact;
        if (table.isEmpty()) {
            return {};
        }
        const TableShape* shape = shapeNamed(table);
        if (shape == nullptr || !shape->columns.contains(column)) {
            add(m_newestId, QStringLiteral("names a fact that records of its kind do not have"));
            return {};
        }
        bool found = false;
        const auto onRow = [&](const QSqlQuery& query) -> Result<void> {
            found = true;
            if (query.value(0).toString() != m_newest) {
                add(m_newestId, QStringLiteral("does not lead to what the record says now"));
            }
            return {};
        };
        // Both names come from the shape, never from the file.
        const QString sql =
            QStringLiteral("SELECT r.%1 FROM %2 r WHERE r.id = ?").arg(column, shape->name);
        return m_connection.forEachRow(sql, {record}, onRow).map([&] {
            if (!found) {
                add(m_newestId, QStringLiteral("amends a record that is not there"));
            }
        });
    }

    static const TableShape* shapeNamed(const QString& table) {
        for (const TableShape* shape :
             {&Rows<Engine>::shape(), &Rows<Race>::shape(), &Rows<Inspection>::shape(),
              &Rows<Sitting>::shape(), &Rows<Spring>::shape(), &Rows<Tester>::shape(),
              &Rows<Fitting>::shape(), &Rows<Running>::shape(), &Rows<LevelChange>::shape(),
              &Rows<Calibration>::shape(), &Rows<RepeatabilityStudy>::shape(),
              &Rows<PlannedRace>::shape(), &Rows<Shelving>::shape()}) {
            if (shape->name == table) {
                return shape;
            }
        }
        return nullptr;
    }

    const Connection& m_connection;
    Findings& m_findings;
    Fact m_fact;
    QString m_newest;
    QString m_newestId;
};

/// Amended readings: following `amends` ends at an original (the foreign key knows only that the
/// next row is there, not that the way ends).
Result<void> checkReadingChains(const Connection& connection, Findings& findings) {
    const QString sql = QStringLiteral(
        "WITH RECURSIVE way (sitting_id, start, id, amends, steps) AS ("
        " SELECT r.sitting_id, r.id, r.id, r.amends, 0 FROM reading r WHERE r.amends IS NOT NULL"
        " UNION ALL"
        " SELECT w.sitting_id, w.start, r.id, r.amends, w.steps + 1 FROM way w"
        " JOIN reading r ON r.sitting_id = w.sitting_id AND r.id = w.amends WHERE w.steps < 1000)"
        " SELECT w.start FROM way w GROUP BY w.sitting_id, w.start"
        " HAVING sum(CASE WHEN w.amends IS NULL THEN 1 ELSE 0 END) = 0");
    const auto onRow = [&](const QSqlQuery& query) -> Result<void> {
        findings.push_back({QStringLiteral("reading ") + query.value(0).toString(),
                            QStringLiteral("amends rows that lead to no original")});
        return {};
    };
    return connection.forEachRow(sql, {}, onRow);
}

Result<void> checkAll(const Connection& connection, VerifyReport& report) {
    Findings& findings = report.findings;
    const auto page = QStringLiteral("page");
    return keepDamage(checkPages(connection, findings), page, findings)
        .and_then(
            [&] { return keepDamage(checkForeignKeys(connection, findings), page, findings); })
        .and_then([&] { return checkRows<Engine>(connection, report); })
        .and_then([&] { return checkRows<Tester>(connection, report); })
        .and_then([&] { return checkRows<Spring>(connection, report); })
        .and_then([&] { return checkRows<Race>(connection, report); })
        .and_then([&] { return checkRows<Inspection>(connection, report); })
        .and_then([&] { return checkRows<Sitting>(connection, report); })
        .and_then([&] { return checkRows<Fitting>(connection, report); })
        .and_then([&] { return checkRows<Reading>(connection, report); })
        .and_then([&] { return checkRows<Running>(connection, report); })
        .and_then([&] { return checkRows<LevelChange>(connection, report); })
        .and_then([&] { return checkRows<Calibration>(connection, report); })
        .and_then([&] { return checkRows<RepeatabilityStudy>(connection, report); })
        .and_then([&] { return checkRows<PlannedRace>(connection, report); })
        .and_then([&] { return checkRows<Shelving>(connection, report); })
        .and_then([&] { return checkRows<Decision>(connection, report); })
        .and_then([&] { return checkRows<Amendment>(connection, report); })
        .and_then([&] {
            return keepDamage(checkReadingChains(connection, findings), QStringLiteral("reading"),
                              findings);
        })
        .and_then([&] {
            return keepDamage(FactChains(connection, findings).check(), QStringLiteral("amendment"),
                              findings);
        });
}

} // namespace

Result<VerifyReport> verifyFile(const Connection& connection) {
    const Result<Transaction> view = Transaction::read(connection);
    if (!view) {
        return tl::unexpected(view.error());
    }
    VerifyReport report;
    if (Result<void> checked = checkAll(connection, report); !checked) {
        return tl::unexpected(checked.error());
    }
    return report;
}

} // namespace coilbook::storage
