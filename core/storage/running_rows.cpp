#include "core/storage/row_values.h"
#include "core/storage/rows.h"

namespace coilbook::storage {

template <>
const TableShape& Rows<Running>::shape() {
    static const TableShape shape{QStringLiteral("running"),
                                  {QStringLiteral("id"), QStringLiteral("engine_id"),
                                   QStringLiteral("ran_on"), QStringLiteral("engine_races"),
                                   QStringLiteral("laps"), QStringLiteral("race_thousandths"),
                                   QStringLiteral("note"), QStringLiteral("withdrawn")},
                                  QStringLiteral("id"),
                                  {}};
    return shape;
}

template <>
QVariantList Rows<Running>::values(const Running& record) {
    return {stored(record.id),          stored(record.engine),   stored(record.ranOn),
            stored(record.engineRaces), stored(record.laps),     stored(record.raceThousandths),
            stored(record.note),        stored(record.withdrawn)};
}

template <>
Result<Running> Rows<Running>::record(const QVariantList& values) {
    RowReader row(values);
    Running running;
    running.id = row.id<RunningId>();
    running.engine = row.id<EngineId>();
    running.ranOn = row.date();
    running.engineRaces = row.number();
    running.laps = row.optionalNumber();
    running.raceThousandths = row.optionalNumber();
    running.note = row.text();
    running.withdrawn = row.flag();
    return running;
}

} // namespace coilbook::storage
