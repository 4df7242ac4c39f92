#include "core/storage/connection.h"

#include "core/storage/sql_errors.h"

#include <QFileInfo>
#include <QSqlError>
#include <QUrl>

#include <atomic>

namespace coilbook::storage {

namespace {

QString freshName() {
    // Qt keeps connections under names that the whole process shares.
    static std::atomic<quint64> count{0};
    return QStringLiteral("coilbook-%1").arg(++count);
}

QString uriOf(const QString& path, Connection::Access access) {
    QString mode = QStringLiteral("rw");
    if (access == Connection::Access::ReadOnly) {
        mode = QStringLiteral("ro");
    } else if (access == Connection::Access::Create) {
        mode = QStringLiteral("rwc");
    }
    const QByteArray encoded =
        QUrl::toPercentEncoding(QFileInfo(path).absoluteFilePath(), QByteArrayLiteral("/"));
    return QStringLiteral("file:%1?mode=%2").arg(QString::fromLatin1(encoded), mode);
}

} // namespace

Connection::Connection(QString path, QString name)
    : m_path(std::move(path))
    , m_name(std::move(name))
    , m_database(QSqlDatabase::addDatabase(QStringLiteral("QSQLITE"), m_name)) {}

Connection::~Connection() {
    m_database.close();
    m_database = QSqlDatabase();
    QSqlDatabase::removeDatabase(m_name);
}

Result<std::unique_ptr<Connection>> Connection::open(const QString& path, Access access) {
    std::unique_ptr<Connection> connection(new Connection(path, freshName()));
    QSqlDatabase& database = connection->m_database;
    database.setDatabaseName(uriOf(path, access));
    // Longer waits are the caller's, which may tell the user meanwhile.
    database.setConnectOptions(QStringLiteral("QSQLITE_OPEN_URI;QSQLITE_BUSY_TIMEOUT=250"));
    if (!database.open()) {
        return tl::unexpected(errorFrom(database.lastError(), path));
    }
    return connection;
}

Result<void> Connection::outcomeOf(const QSqlQuery& query) const {
    const QSqlError error = query.lastError();
    if (error.isValid()) {
        return tl::unexpected(errorFrom(error, m_path));
    }
    return {};
}

Result<void> Connection::start(QSqlQuery& query, const QString& sql,
                               const QVariantList& values) const {
    Q_ASSERT(sql.count(QLatin1Char('?')) == values.size());
    query.setForwardOnly(true);
    if (!query.prepare(sql)) {
        return tl::unexpected(errorFrom(query.lastError(), m_path));
    }
    for (const QVariant& value : values) {
        query.addBindValue(value);
    }
    return execute(query);
}

Result<void> Connection::run(const QString& sql, const QVariantList& values) const {
    QSqlQuery query(m_database);
    return start(query, sql, values);
}

Result<QVariant> Connection::scalar(const QString& sql, const QVariantList& values) const {
    QSqlQuery query(m_database);
    if (Result<void> started = start(query, sql, values); !started) {
        return tl::unexpected(started.error());
    }
    const QVariant value = query.next() ? query.value(0) : QVariant();
    if (Result<void> read = outcomeOf(query); !read) {
        return tl::unexpected(read.error());
    }
    return value;
}

Result<QSqlQuery> Connection::prepare(const QString& sql) const {
    QSqlQuery query(m_database);
    query.setForwardOnly(true);
    if (!query.prepare(sql)) {
        return tl::unexpected(errorFrom(query.lastError(), m_path));
    }
    return query;
}

Result<void> Connection::execute(QSqlQuery& query) const {
    if (!query.exec()) {
        return tl::unexpected(errorFrom(query.lastError(), m_path));
    }
    return {};
}

} // namespace coilbook::storage
