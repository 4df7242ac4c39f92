#include "core/storage/amend.h"

namespace coilbook::storage {

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
    return updateSealed(connection, shape, after);
}

} // namespace coilbook::storage
