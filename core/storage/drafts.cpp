#include "core/storage/drafts.h"

#include "core/storage/row_values.h"

namespace coilbook::storage {

Result<std::optional<Draft>> readDraft(const Connection& connection, const EngineId& engine) {
    std::optional<Draft> draft;
    const auto onRow = [&](const QSqlQuery& query) -> Result<void> {
        const QVariantList values{query.value(0), query.value(1), query.value(2), query.value(3)};
        RowReader row(values);
        draft.emplace();
        draft->engine = engine;
        draft->inspection = row.id<InspectionId>();
        draft->place = row.place();
        draft->typed = row.text();
        return {};
    };
    const QString sql = QStringLiteral(
        "SELECT d.inspection_id, d.cylinder, d.valve, d.typed FROM draft d WHERE d.engine_id = ?");
    if (Result<void> read = connection.forEachRow(sql, {engine.text()}, onRow); !read) {
        return tl::unexpected(read.error());
    }
    return draft;
}

Result<void> writeDraft(const Connection& connection, const Draft& draft) {
    return connection.run(
        QStringLiteral("INSERT INTO draft (engine_id, inspection_id, cylinder, valve, typed)"
                       " VALUES (?, ?, ?, ?, ?) ON CONFLICT (engine_id) DO UPDATE SET"
                       " inspection_id = excluded.inspection_id, cylinder = excluded.cylinder,"
                       " valve = excluded.valve, typed = excluded.typed"),
        {stored(draft.engine), stored(draft.inspection), stored(draft.place.cylinder.number()),
         stored(draft.place.valve), stored(draft.typed)});
}

Result<void> removeDraft(const Connection& connection, const EngineId& engine) {
    return connection.run(QStringLiteral("DELETE FROM draft WHERE engine_id = ?"), {engine.text()});
}

} // namespace coilbook::storage
