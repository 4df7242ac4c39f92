#include "core/storage/amend.h"

namespace coilbook::storage {

namespace {

Result<void> update(const Connection& connection, const TableShape& shape,
                    const QVariantList& values) {
    QStringList assignments;
    for (const QString& column : shape.columns) {
        assignments.append(column + QStringLiteral(" = ?"));
    }
    const QString sql = QStringLiteral("UPDATE %1 SET %2, checksum = ? WHERE id = ?")
                            .arg(shape.name, assignments.join(QStringLiteral(", ")));
    QVariantList binds = withChecksum(shape, values);
    binds.append(values.front());
    return connection.run(sql, binds);
}

} // namespace

Result<void> amendValues(const Connection& connection, const TableShape& shape,
                         const QVariantList& before, const QVariantList& after,
                         const Authorship& author) {
    if (before == after) {
        return {};
    }
    for (qsizetype i = 0; i < after.size(); ++i) {
        const QString& fact = shape.columns.at(i);
        if (before.at(i) == after.at(i) || shape.silentFacts.contains(fact)) {
            continue;
        }
        if (author.why.trimmed().isEmpty()) {
            return fail(LogbookFault::WhyMissing, {}, connection.path());
        }
        const Amendment amendment{AmendmentId::make(),
                                  subjectOf(shape.name),
                                  QUuid::fromString(after.front().toString()),
                                  fact,
                                  before.at(i).toString(),
                                  after.at(i).toString(),
                                  author};
        if (Result<void> kept = insert(connection, amendment); !kept) {
            return kept;
        }
    }
    return update(connection, shape, after);
}

} // namespace coilbook::storage
