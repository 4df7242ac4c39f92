#include "core/storage/seals.h"

#include "core/storage/row_checksum.h"
#include "core/storage/table.h"

#include <QCryptographicHash>

#include <array>
#include <utility>

namespace coilbook::storage {

namespace {

struct NamedBeginning {
    SealBeginning beginning;
    const char* name;
};

constexpr std::array kBeginnings{NamedBeginning{SealBeginning::Created, "created"},
                                 NamedBeginning{SealBeginning::Migrated, "migrated"},
                                 NamedBeginning{SealBeginning::Imported, "imported"},
                                 NamedBeginning{SealBeginning::Restored, "restored"}};

QString hex(const QByteArray& digest) {
    return QString::fromLatin1(digest.toHex());
}

QVariant textOrNull(const QString& text) {
    return text.isNull() ? QVariant() : QVariant(text);
}

QVariantList columnsOf(const SealContent& seal, qint64 number) {
    const bool isNew = seal.replaced.isEmpty();
    return {QVariant::fromValue<qlonglong>(number),
            seal.subject,
            textOrNull(seal.record),
            QVariant::fromValue<qlonglong>(seal.rows),
            hex(seal.content),
            isNew || seal.replaces == 0 ? QVariant()
                                        : QVariant::fromValue<qlonglong>(seal.replaces),
            isNew ? QVariant() : QVariant(hex(seal.replaced))};
}

} // namespace

QString nameOf(SealBeginning beginning) {
    for (const NamedBeginning& known : kBeginnings) {
        if (known.beginning == beginning) {
            return QString::fromLatin1(known.name);
        }
    }
    return {};
}

std::optional<SealBeginning> beginningNamed(const QString& subject) {
    for (const NamedBeginning& known : kBeginnings) {
        if (subject == QLatin1String(known.name)) {
            return known.beginning;
        }
    }
    return std::nullopt;
}

QString sealDigest(const ChainEnd& previous, const SealContent& seal) {
    const QVariantList values =
        QVariantList{previous.digest} + columnsOf(seal, previous.number + 1);
    return hex(rowDigest(QStringLiteral("seal"), values));
}

Result<ChainEnd> chainEnd(const Connection& connection) {
    ChainEnd end;
    const auto onRow = [&](const QSqlQuery& query) -> Result<void> {
        end = {query.value(0).toLongLong(), query.value(1).toString()};
        return {};
    };
    return connection
        .forEachRow(
            QStringLiteral("SELECT s.number, s.digest FROM seal s ORDER BY s.number DESC LIMIT 1"),
            {}, onRow)
        .map([&] { return end; });
}

Result<void> addSeal(const Connection& connection, ChainEnd& end, const SealContent& seal) {
    const QString digest = sealDigest(end, seal);
    const qint64 number = end.number + 1;
    return connection
        .run(QStringLiteral("INSERT INTO seal (number, subject, record_id, row_count, content,"
                            " replaces, replaced, digest) VALUES (?, ?, ?, ?, ?, ?, ?, ?)"),
             columnsOf(seal, number) + QVariantList{digest})
        .map([&] {
            end = {number, digest};
        });
}

Result<void> insertSealed(const Connection& connection, const TableShape& shape,
                          const QVariantList& values) {
    Result<ChainEnd> end = chainEnd(connection);
    if (!end) {
        return tl::unexpected(end.error());
    }
    Result<InsertStatement> statement = InsertStatement::prepare(connection, shape, 1);
    if (!statement) {
        return tl::unexpected(statement.error());
    }
    SealContent seal;
    seal.subject = shape.name;
    seal.record = values.at(shape.columns.indexOf(QStringLiteral("id"))).toString();
    seal.content = rowDigest(shape.name, values);
    const Result<qsizetype> stored =
        statement->run(withSeal(values, seal.content, end->number + 1));
    if (!stored) {
        return tl::unexpected(stored.error());
    }
    if (*stored == 0) {
        return {};
    }
    return addSeal(connection, *end, seal);
}

Result<void> updateSealed(const Connection& connection, const TableShape& shape,
                          const QVariantList& values) {
    Result<ChainEnd> end = chainEnd(connection);
    if (!end) {
        return tl::unexpected(end.error());
    }
    const qsizetype id = shape.columns.indexOf(QStringLiteral("id"));
    SealContent seal;
    seal.subject = shape.name;
    seal.record = values.at(id).toString();
    seal.content = rowDigest(shape.name, values);
    const auto onRow = [&](const QSqlQuery& query) -> Result<void> {
        seal.replaced = rowDigest(shape.name, rowValues(shape, query));
        seal.replaces = query.value(static_cast<int>(shape.columns.size()) + 1).toLongLong();
        return {};
    };
    const QString before = QStringLiteral("SELECT %1, r.seal FROM %2 r WHERE r.id = ?")
                               .arg(columnList(shape, QStringLiteral("r")), shape.name);
    QStringList assignments;
    for (const QString& column : shape.columns) {
        assignments.append(column + QStringLiteral(" = ?"));
    }
    const QString update = QStringLiteral("UPDATE %1 SET %2, checksum = ?, seal = ? WHERE id = ?")
                               .arg(shape.name, assignments.join(QStringLiteral(", ")));
    return connection.forEachRow(before, {values.at(id)}, onRow)
        .and_then([&]() -> Result<void> {
            if (seal.replaced.isEmpty()) {
                return fail(StorageFault::Conflict, {shape.name}, connection.path());
            }
            return connection.run(update, withSeal(values, seal.content, end->number + 1) +
                                              QVariantList{values.at(id)});
        })
        .and_then([&] { return addSeal(connection, *end, seal); });
}

Result<std::optional<NotedSeal>> newestSealOf(const Connection& connection,
                                              const EngineId& engine) {
    // A beginning covers the engine too, and rows without a seal of their own.
    const QString sql = QStringLiteral(
        "WITH sittings (id, tester_id, seal) AS (SELECT s.id, s.tester_id, s.seal"
        " FROM inspection i JOIN sitting s ON s.inspection_id = i.id WHERE i.engine_id = ?),"
        " springs (id) AS (SELECT r.spring_id FROM sittings s JOIN reading r ON r.sitting_id = s.id"
        " UNION SELECT f.spring_id FROM fitting f WHERE f.engine_id = ?"
        " UNION SELECT h.spring_id FROM shelving h WHERE h.engine_id = ?)"
        " SELECT s.number, s.digest FROM seal s WHERE s.number = (SELECT max(own.seal) FROM ("
        " SELECT e.seal FROM engine e WHERE e.id = ?"
        " UNION ALL SELECT max(r.seal) FROM race r WHERE r.engine_id = ?"
        " UNION ALL SELECT max(i.seal) FROM inspection i WHERE i.engine_id = ?"
        " UNION ALL SELECT max(s.seal) FROM sittings s"
        " UNION ALL SELECT max(r.seal) FROM sittings s JOIN reading r ON r.sitting_id = s.id"
        " UNION ALL SELECT max(t.seal) FROM tester t WHERE t.id IN (SELECT tester_id FROM sittings)"
        " UNION ALL SELECT max(c.seal) FROM calibration c"
        " WHERE c.tester_id IN (SELECT tester_id FROM sittings)"
        " UNION ALL SELECT max(y.seal) FROM study y"
        " WHERE y.tester_id IN (SELECT tester_id FROM sittings)"
        " UNION ALL SELECT max(p.seal) FROM spring p WHERE p.id IN (SELECT id FROM springs)"
        " UNION ALL SELECT max(f.seal) FROM fitting f WHERE f.engine_id = ?"
        " UNION ALL SELECT max(u.seal) FROM running u WHERE u.engine_id = ?"
        " UNION ALL SELECT max(l.seal) FROM level_change l WHERE l.engine_id = ?"
        " UNION ALL SELECT max(n.seal) FROM planned_race n WHERE n.engine_id = ?"
        " UNION ALL SELECT max(h.seal) FROM shelving h WHERE h.engine_id = ?"
        " UNION ALL SELECT max(d.seal) FROM inspection i JOIN decision d ON d.inspection_id = i.id"
        " WHERE i.engine_id = ?"
        " UNION ALL SELECT max(b.number) FROM seal b WHERE b.record_id IS NULL AND b.row_count > 0"
        " AND b.subject IN ('migrated', 'imported', 'restored')) own)");
    std::optional<NotedSeal> newest;
    const auto onRow = [&](const QSqlQuery& query) -> Result<void> {
        newest = NotedSeal{query.value(0).toLongLong(), query.value(1).toString()};
        return {};
    };
    const QVariantList ids(sql.count(QLatin1Char('?')), engine.text());
    return connection.forEachRow(sql, ids, onRow).map([&] { return newest; });
}

Result<SealAnswer> askSeal(const Connection& connection, const NotedSeal& noted) {
    return connection
        .scalar(QStringLiteral("SELECT s.digest FROM seal s WHERE s.number = ?"),
                {QVariant::fromValue<qlonglong>(noted.number)})
        .map([&](const QVariant& digest) {
            if (!digest.isValid()) {
                return SealAnswer::NotThere;
            }
            return digest.toString().startsWith(noted.digest) ? SealAnswer::PassedThrough
                                                              : SealAnswer::Differs;
        });
}

Result<void> sealAnew(const Connection& connection, SealBeginning beginning) {
    Result<ChainEnd> end = chainEnd(connection);
    if (!end) {
        return tl::unexpected(end.error());
    }
    SealContent seal;
    seal.subject = nameOf(beginning);
    seal.rows = 0;
    QCryptographicHash all(QCryptographicHash::Sha256);
    for (const TableShape* shape : dataTables()) {
        const auto onRow = [&](const QSqlQuery& query) -> Result<void> {
            all.addData(rowDigest(shape->name, rowValues(*shape, query)));
            ++seal.rows;
            return {};
        };
        Result<void> read = connection.forEachRow(
            QStringLiteral("SELECT %1 FROM %2 r ORDER BY %3")
                .arg(columnList(*shape, QStringLiteral("r")), shape->name, shape->key),
            {}, onRow);
        if (!read) {
            return read;
        }
    }
    seal.content = all.result();
    return addSeal(connection, *end, seal);
}

} // namespace coilbook::storage
