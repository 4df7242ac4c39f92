#include "core/storage/row_values.h"
#include "core/storage/rows.h"

namespace coilbook::storage {

template <>
const TableShape& Rows<PlannedRace>::shape() {
    static const TableShape shape{QStringLiteral("planned_race"),
                                  {QStringLiteral("id"), QStringLiteral("engine_id"),
                                   QStringLiteral("planned_on"), QStringLiteral("venue"),
                                   QStringLiteral("laps"), QStringLiteral("note"),
                                   QStringLiteral("withdrawn")},
                                  QStringLiteral("id"),
                                  {}};
    return shape;
}

template <>
QVariantList Rows<PlannedRace>::values(const PlannedRace& record) {
    return {stored(record.id),       stored(record.engine), stored(record.plannedOn),
            stored(record.venue),    stored(record.laps),   stored(record.note),
            stored(record.withdrawn)};
}

template <>
Result<PlannedRace> Rows<PlannedRace>::record(const QVariantList& values) {
    RowReader row(values);
    PlannedRace race;
    race.id = row.id<PlannedRaceId>();
    race.engine = row.id<EngineId>();
    race.plannedOn = row.date();
    race.venue = row.text();
    race.laps = row.optionalNumber();
    race.note = row.text();
    race.withdrawn = row.flag();
    return race;
}

} // namespace coilbook::storage
