#pragma once

#include "core/support/result.h"

#include <QSqlDatabase>
#include <QSqlQuery>
#include <QString>
#include <QVariant>

#include <memory>

namespace coilbook::storage {

/// One connection to one SQLite file, made, used and removed in one thread. Every statement goes
/// through here and is checked; a failure is an Error with the StorageFault that it means.
class Connection {
public:
    enum class Access { ReadWrite, ReadOnly, Create };

    /// Opens the file (Create: makes it) and writes nothing. What it holds is for the caller to
    /// check.
    [[nodiscard]] static Result<std::unique_ptr<Connection>> open(const QString& path,
                                                                  Access access);

    Connection(const Connection&) = delete;
    Connection& operator=(const Connection&) = delete;
    Connection(Connection&&) = delete;
    Connection& operator=(Connection&&) = delete;
    ~Connection();

    [[nodiscard]] const QString& path() const { return m_path; }

    /// Runs one statement that returns no rows; a `?` for each value.
    [[nodiscard]] Result<void> run(const QString& sql, const QVariantList& values = {}) const;

    /// The first column of the first row; an invalid QVariant when there is no row.
    [[nodiscard]] Result<QVariant> scalar(const QString& sql,
                                          const QVariantList& values = {}) const;

    /// Calls `onRow(const QSqlQuery&)`, which returns Result<void>, for each row and stops at the
    /// first failure.
    template <class OnRow>
    [[nodiscard]] Result<void> forEachRow(const QString& sql, const QVariantList& values,
                                          OnRow onRow) const {
        QSqlQuery query(m_database);
        if (Result<void> started = start(query, sql, values); !started) {
            return started;
        }
        while (query.next()) {
            if (Result<void> done = onRow(std::as_const(query)); !done) {
                return done;
            }
        }
        return outcomeOf(query);
    }

    /// A prepared statement for many executions.
    [[nodiscard]] Result<QSqlQuery> prepare(const QString& sql) const;

    /// Executes a prepared statement whose values are bound.
    [[nodiscard]] Result<void> execute(QSqlQuery& query) const;

private:
    Connection(QString path, QString name);
    [[nodiscard]] Result<void> start(QSqlQuery& query, const QString& sql,
                                     const QVariantList& values) const;
    /// A loop over rows ends at the last one or at a failure; this tells which.
    [[nodiscard]] Result<void> outcomeOf(const QSqlQuery& query) const;

    QString m_path;
    QString m_name;
    QSqlDatabase m_database;
};

} // namespace coilbook::storage
