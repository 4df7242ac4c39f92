#include "core/storage/row_values.h"
#include "core/storage/rows.h"

namespace coilbook::storage {

template <>
const TableShape& Rows<Reading>::shape() {
    static const TableShape shape{
        QStringLiteral("reading"),
        {QStringLiteral("sitting_id"), QStringLiteral("id"), QStringLiteral("spring_id"),
         QStringLiteral("cylinder"), QStringLiteral("valve"), QStringLiteral("hit"),
         QStringLiteral("retest"), QStringLiteral("digits"), QStringLiteral("decimals"),
         QStringLiteral("unit"), QStringLiteral("note"), QStringLiteral("amends"),
         QStringLiteral("withdraws"), QStringLiteral("who"), QStringLiteral("at_utc"),
         QStringLiteral("at_offset_min"), QStringLiteral("why")},
        QStringLiteral("sitting_id, id"),
        {}};
    return shape;
}

template <>
QVariantList Rows<Reading>::values(const Reading& record) {
    return {stored(record.sitting),
            stored(record.id),
            stored(record.spring),
            stored(record.place.cylinder.number()),
            stored(record.place.valve),
            stored(record.hit),
            stored(record.retest),
            QVariant::fromValue<qlonglong>(record.value.digits()),
            stored(record.value.decimals()),
            stored(record.value.unit()),
            stored(record.note),
            stored(record.amends),
            stored(record.kind == ReadingKind::Withdrawal),
            stored(record.author.who),
            stored(record.author.at.utc),
            stored(record.author.at.utcOffsetMinutes),
            stored(record.author.why)};
}

template <>
Result<Reading> Rows<Reading>::record(const QVariantList& values) {
    RowReader row(values);
    Reading reading;
    reading.sitting = row.id<SittingId>();
    reading.id = row.id<ReadingId>();
    reading.spring = row.id<SpringId>();
    reading.place = row.place();
    reading.hit = row.number();
    reading.retest = row.flag();
    const qint64 digits = row.integer();
    const int decimals = row.number();
    reading.value = TypedForce(digits, decimals, row.unit());
    reading.note = row.text();
    reading.amends = row.optionalId<ReadingId>();
    const bool withdraws = row.flag();
    if (reading.amends) {
        reading.kind = withdraws ? ReadingKind::Withdrawal : ReadingKind::Correction;
    }
    reading.author = row.authorship();
    return reading;
}

} // namespace coilbook::storage
