#include "core/storage/row_values.h"
#include "core/storage/rows.h"

namespace coilbook::storage {

template <>
const TableShape& Rows<Race>::shape() {
    static const TableShape shape{
        QStringLiteral("race"),
        {QStringLiteral("id"), QStringLiteral("engine_id"), QStringLiteral("number"),
         QStringLiteral("raced_on"), QStringLiteral("venue"), QStringLiteral("laps"),
         QStringLiteral("peak_rpm"), QStringLiteral("over_rev"), QStringLiteral("note")},
        QStringLiteral("id"),
        {}};
    return shape;
}

template <>
QVariantList Rows<Race>::values(const Race& record) {
    return {stored(record.id),      stored(record.engine),
            stored(record.number),  stored(record.racedOn),
            stored(record.venue),   stored(record.laps),
            stored(record.peakRpm), record.overRev ? stored(*record.overRev) : QVariant(),
            stored(record.note)};
}

template <>
Result<Race> Rows<Race>::record(const QVariantList& values) {
    RowReader row(values);
    Race race;
    race.id = row.id<RaceId>();
    race.engine = row.id<EngineId>();
    race.number = row.number();
    race.racedOn = row.date();
    race.venue = row.text();
    race.laps = row.optionalNumber();
    race.peakRpm = row.optionalNumber();
    race.overRev = row.optionalFlag();
    race.note = row.text();
    return race;
}

} // namespace coilbook::storage
