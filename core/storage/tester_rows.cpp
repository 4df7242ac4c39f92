#include "core/domain/force_text.h"
#include "core/storage/row_values.h"
#include "core/storage/rows.h"

namespace coilbook::storage {

template <>
const TableShape& Rows<Tester>::shape() {
    static const TableShape shape{QStringLiteral("tester"),
                                  {QStringLiteral("id"), QStringLiteral("name"),
                                   QStringLiteral("full_scale"), QStringLiteral("graduation"),
                                   QStringLiteral("calibrated_on"), QStringLiteral("note"),
                                   QStringLiteral("unit"), QStringLiteral("accuracy"),
                                   QStringLiteral("zero_offset"), QStringLiteral("corrects")},
                                  QStringLiteral("id"),
                                  {}};
    return shape;
}

template <>
QVariantList Rows<Tester>::values(const Tester& record) {
    return {stored(record.id),
            stored(record.name),
            stored(record.range),
            stored(record.graduation),
            stored(record.calibratedOn),
            stored(record.note),
            record.unit ? stored(*record.unit) : QVariant(),
            record.accuracy ? QVariant(accuracyToText(*record.accuracy)) : QVariant(),
            record.zeroOffset ? QVariant(zeroOffsetToText(*record.zeroOffset)) : QVariant(),
            stored(record.corrects)};
}

template <>
Result<Tester> Rows<Tester>::record(const QVariantList& values) {
    RowReader row(values);
    Tester tester;
    tester.id = row.id<TesterId>();
    tester.name = row.text();
    tester.range = row.optionalForce();
    tester.graduation = row.optionalForce();
    tester.calibratedOn = row.date();
    tester.note = row.text();
    tester.unit = unitFromText(row.text());
    tester.accuracy = accuracyFromText(row.text());
    tester.zeroOffset = zeroOffsetFromText(row.text());
    tester.corrects = row.flag();
    return tester;
}

} // namespace coilbook::storage
