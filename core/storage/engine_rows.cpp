#include "core/storage/row_values.h"
#include "core/storage/rows.h"

#include <cmath>

namespace coilbook::storage {

namespace {

/// The limit is kept in whole millionths of a pound-force.
constexpr double kMicro = 1e6;

QVariant microPoundsForce(Force force) {
    return QVariant::fromValue<qlonglong>(std::llround(force.inPoundsForce() * kMicro));
}

int percentOf(Caution caution) {
    return static_cast<int>(std::lround(probabilityOf(caution) * 100));
}

QString nameOf(ExposureUnit unit) {
    return unit == ExposureUnit::Laps ? QStringLiteral("laps") : QStringLiteral("races");
}

ExposureUnit exposureUnitNamed(const QString& name) {
    return name == nameOf(ExposureUnit::Laps) ? ExposureUnit::Laps : ExposureUnit::Races;
}

Caution cautionOf(int percent) {
    for (const Caution caution : {Caution::Cautious, Caution::Thrifty}) {
        if (percentOf(caution) == percent) {
            return caution;
        }
    }
    return Caution::Even;
}

} // namespace

template <>
const TableShape& Rows<Engine>::shape() {
    static const TableShape shape{
        QStringLiteral("engine"),
        {QStringLiteral("id"), QStringLiteral("name"), QStringLiteral("serial"),
         QStringLiteral("layout"), QStringLiteral("limit_ulbf"), QStringLiteral("races_ahead"),
         QStringLiteral("caution_percent"), QStringLiteral("rpm_ceiling"),
         QStringLiteral("retired"), QStringLiteral("springs_run_in"),
         QStringLiteral("exposure_unit"), QStringLiteral("corrects_temperature")},
        QStringLiteral("id"),
        {}};
    return shape;
}

template <>
QVariantList Rows<Engine>::values(const Engine& record) {
    return {stored(record.id),
            stored(record.name),
            stored(record.serial),
            stored(layoutToText(record.layout)),
            microPoundsForce(record.rules.limit),
            stored(record.rules.racesAhead),
            stored(percentOf(record.rules.caution)),
            stored(record.rpmCeiling),
            stored(record.retired),
            stored(record.springsRunIn),
            nameOf(record.exposureUnit),
            stored(record.correctsTemperature)};
}

template <>
Result<Engine> Rows<Engine>::record(const QVariantList& values) {
    RowReader row(values);
    Engine engine;
    engine.id = row.id<EngineId>();
    engine.name = row.text();
    engine.serial = row.text();
    Result<EngineLayout> layout = layoutFromText(row.text());
    if (!layout) {
        return tl::unexpected(layout.error());
    }
    engine.layout = std::move(*layout);
    engine.rules.limit = Force::poundsForce(static_cast<double>(row.integer()) / kMicro);
    engine.rules.racesAhead = row.number();
    engine.rules.caution = cautionOf(row.number());
    engine.rpmCeiling = row.optionalNumber();
    engine.retired = row.flag();
    engine.springsRunIn = row.flag();
    engine.exposureUnit = exposureUnitNamed(row.text());
    engine.correctsTemperature = row.flag();
    return engine;
}

} // namespace coilbook::storage
