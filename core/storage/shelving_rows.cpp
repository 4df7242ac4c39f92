#include "core/storage/row_values.h"
#include "core/storage/rows.h"

namespace coilbook::storage {

namespace {

QString nameOf(Storage to) {
    return to == Storage::Scrap ? QStringLiteral("scrap") : QStringLiteral("shelf");
}

} // namespace

template <>
const TableShape& Rows<Shelving>::shape() {
    static const TableShape shape{QStringLiteral("shelving"),
                                  {QStringLiteral("id"), QStringLiteral("engine_id"),
                                   QStringLiteral("spring_id"), QStringLiteral("put_to"),
                                   QStringLiteral("shelved_on"), QStringLiteral("pressure"),
                                   QStringLiteral("height_uin"), QStringLiteral("races_before"),
                                   QStringLiteral("reason"), QStringLiteral("withdrawn")},
                                  QStringLiteral("id"),
                                  {}};
    return shape;
}

template <>
QVariantList Rows<Shelving>::values(const Shelving& record) {
    const QVariant height =
        record.height ? QVariant::fromValue<qlonglong>(record.height->inMicroInches()) : QVariant();
    return {stored(record.id),
            stored(record.engine),
            stored(record.spring),
            nameOf(record.to),
            stored(record.shelvedOn),
            stored(record.pressure),
            height,
            stored(record.racesBefore),
            stored(record.reason),
            stored(record.withdrawn)};
}

template <>
Result<Shelving> Rows<Shelving>::record(const QVariantList& values) {
    RowReader row(values);
    Shelving shelving;
    shelving.id = row.id<ShelvingId>();
    shelving.engine = row.id<EngineId>();
    shelving.spring = row.id<SpringId>();
    shelving.to = row.text() == nameOf(Storage::Scrap) ? Storage::Scrap : Storage::Shelf;
    shelving.shelvedOn = row.date();
    shelving.pressure = row.optionalForce();
    const std::optional<int> height = row.optionalNumber();
    if (height) {
        shelving.height = Length::microInches(*height);
    }
    shelving.racesBefore = row.optionalNumber();
    shelving.reason = row.text();
    shelving.withdrawn = row.flag();
    return shelving;
}

} // namespace coilbook::storage
