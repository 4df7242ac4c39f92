#include "core/storage/row_values.h"
#include "core/storage/rows.h"

namespace coilbook::storage {

namespace {

/// Names and labels hold no line break: one a line.
QString onePerLine(const QStringList& names) {
    return names.join(QLatin1Char('\n'));
}

} // namespace

template <>
const TableShape& Rows<Calibration>::shape() {
    static const TableShape shape{QStringLiteral("calibration"),
                                  {QStringLiteral("id"), QStringLiteral("tester_id"),
                                   QStringLiteral("calibrated_on"), QStringLiteral("done_by"),
                                   QStringLiteral("certificate"), QStringLiteral("due_on"),
                                   QStringLiteral("degree"), QStringLiteral("unit"),
                                   QStringLiteral("points"), QStringLiteral("withdrawn")},
                                  QStringLiteral("id"),
                                  {}};
    return shape;
}

template <>
QVariantList Rows<Calibration>::values(const Calibration& record) {
    return {stored(record.id),       stored(record.tester),      stored(record.calibratedOn),
            stored(record.by),       stored(record.certificate), stored(record.dueOn),
            stored(record.degree),   stored(record.unit),        pointsToText(record.points),
            stored(record.withdrawn)};
}

template <>
Result<Calibration> Rows<Calibration>::record(const QVariantList& values) {
    RowReader row(values);
    Calibration calibration;
    calibration.id = row.id<CalibrationId>();
    calibration.tester = row.id<TesterId>();
    calibration.calibratedOn = row.date();
    calibration.by = row.text();
    calibration.certificate = row.text();
    calibration.dueOn = row.date();
    calibration.degree = row.number();
    calibration.unit = row.unit();
    auto points = pointsFromText(row.text(), calibration.unit);
    if (!points) {
        return fail(StorageFault::Damaged, {calibration.id.text()});
    }
    calibration.points = std::move(*points);
    calibration.withdrawn = row.flag();
    return calibration;
}

template <>
const TableShape& Rows<RepeatabilityStudy>::shape() {
    static const TableShape shape{QStringLiteral("study"),
                                  {QStringLiteral("id"), QStringLiteral("tester_id"),
                                   QStringLiteral("studied_on"), QStringLiteral("springs"),
                                   QStringLiteral("persons"), QStringLiteral("hits"),
                                   QStringLiteral("unit"), QStringLiteral("readings"),
                                   QStringLiteral("note"), QStringLiteral("withdrawn")},
                                  QStringLiteral("id"),
                                  {}};
    return shape;
}

template <>
QVariantList Rows<RepeatabilityStudy>::values(const RepeatabilityStudy& record) {
    return {stored(record.id),          stored(record.tester),
            stored(record.studiedOn),   onePerLine(record.springs),
            onePerLine(record.persons), stored(record.hits),
            stored(record.unit),        studyReadingsToText(record.readings),
            stored(record.note),        stored(record.withdrawn)};
}

template <>
Result<RepeatabilityStudy> Rows<RepeatabilityStudy>::record(const QVariantList& values) {
    RowReader row(values);
    RepeatabilityStudy study;
    study.id = row.id<StudyId>();
    study.tester = row.id<TesterId>();
    study.studiedOn = row.date();
    study.springs = row.text().split(QLatin1Char('\n'));
    study.persons = row.text().split(QLatin1Char('\n'));
    study.hits = row.number();
    study.unit = row.unit();
    auto readings = studyReadingsFromText(row.text(), study.unit);
    if (!readings) {
        return fail(StorageFault::Damaged, {study.id.text()});
    }
    study.readings = std::move(*readings);
    study.note = row.text();
    study.withdrawn = row.flag();
    return study;
}

} // namespace coilbook::storage
