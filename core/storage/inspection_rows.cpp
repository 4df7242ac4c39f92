#include "core/storage/row_values.h"
#include "core/storage/rows.h"

namespace coilbook::storage {

template <>
const TableShape& Rows<Inspection>::shape() {
    static const TableShape shape{QStringLiteral("inspection"),
                                  {QStringLiteral("id"), QStringLiteral("engine_id"),
                                   QStringLiteral("inspected_on"), QStringLiteral("engine_races"),
                                   QStringLiteral("closed")},
                                  QStringLiteral("id"),
                                  {QStringLiteral("closed")}};
    return shape;
}

template <>
QVariantList Rows<Inspection>::values(const Inspection& record) {
    return {stored(record.id), stored(record.engine), stored(record.inspectedOn),
            stored(record.engineRaces), stored(record.closed)};
}

template <>
Result<Inspection> Rows<Inspection>::record(const QVariantList& values) {
    RowReader row(values);
    Inspection inspection;
    inspection.id = row.id<InspectionId>();
    inspection.engine = row.id<EngineId>();
    inspection.inspectedOn = row.date();
    inspection.engineRaces = row.number();
    inspection.closed = row.flag();
    return inspection;
}

template <>
const TableShape& Rows<Sitting>::shape() {
    static const TableShape shape{QStringLiteral("sitting"),
                                  {QStringLiteral("id"), QStringLiteral("inspection_id"),
                                   QStringLiteral("tester_id"), QStringLiteral("inspector"),
                                   QStringLiteral("engine_temp_mc")},
                                  QStringLiteral("id"),
                                  {}};
    return shape;
}

template <>
QVariantList Rows<Sitting>::values(const Sitting& record) {
    const std::optional<Temperature>& temperature = record.engineTemperature;
    return {stored(record.id), stored(record.inspection), stored(record.tester),
            stored(record.inspector),
            temperature ? stored(temperature->inMilliCelsius()) : QVariant()};
}

template <>
Result<Sitting> Rows<Sitting>::record(const QVariantList& values) {
    RowReader row(values);
    Sitting sitting;
    sitting.id = row.id<SittingId>();
    sitting.inspection = row.id<InspectionId>();
    sitting.tester = row.optionalId<TesterId>();
    sitting.inspector = row.text();
    if (const std::optional<int> milliCelsius = row.optionalNumber()) {
        sitting.engineTemperature = Temperature::milliCelsius(*milliCelsius);
    }
    return sitting;
}

} // namespace coilbook::storage
