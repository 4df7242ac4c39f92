#include "core/storage/row_values.h"
#include "core/storage/rows.h"

namespace coilbook::storage {

template <>
const TableShape& Rows<Spring>::shape() {
    static const TableShape shape{QStringLiteral("spring"),
                                  {QStringLiteral("id"), QStringLiteral("label"),
                                   QStringLiteral("part"), QStringLiteral("batch"),
                                   QStringLiteral("note"), QStringLiteral("softening_ppm")},
                                  QStringLiteral("id"),
                                  {}};
    return shape;
}

template <>
QVariantList Rows<Spring>::values(const Spring& record) {
    return {stored(record.id),    stored(record.label), stored(record.part),
            stored(record.batch), stored(record.note),  stored(record.softeningPpm)};
}

template <>
Result<Spring> Rows<Spring>::record(const QVariantList& values) {
    RowReader row(values);
    Spring spring;
    spring.id = row.id<SpringId>();
    spring.label = row.text();
    spring.part = row.text();
    spring.batch = row.text();
    spring.note = row.text();
    spring.softeningPpm = row.optionalNumber();
    return spring;
}

template <>
const TableShape& Rows<Fitting>::shape() {
    static const TableShape shape{
        QStringLiteral("fitting"),
        {QStringLiteral("id"), QStringLiteral("engine_id"), QStringLiteral("spring_id"),
         QStringLiteral("cylinder"), QStringLiteral("valve"), QStringLiteral("fitted_on"),
         QStringLiteral("engine_races"), QStringLiteral("reason"), QStringLiteral("withdrawn")},
        QStringLiteral("id"),
        {}};
    return shape;
}

template <>
QVariantList Rows<Fitting>::values(const Fitting& record) {
    return {stored(record.id),          stored(record.engine),
            stored(record.spring),      stored(record.place.cylinder.number()),
            stored(record.place.valve), stored(record.fittedOn),
            stored(record.engineRaces), stored(record.reason),
            stored(record.withdrawn)};
}

template <>
Result<Fitting> Rows<Fitting>::record(const QVariantList& values) {
    RowReader row(values);
    Fitting fitting;
    fitting.id = row.id<FittingId>();
    fitting.engine = row.id<EngineId>();
    fitting.spring = row.id<SpringId>();
    fitting.place = row.place();
    fitting.fittedOn = row.date();
    fitting.engineRaces = row.number();
    fitting.reason = row.text();
    fitting.withdrawn = row.flag();
    return fitting;
}

} // namespace coilbook::storage
