#include "core/storage/row_values.h"
#include "core/storage/rows.h"

#include <array>
#include <utility>

namespace coilbook::storage {

namespace {

const std::array<std::pair<Subject, const char*>, 13> kSubjects{{
    {Subject::Engine, "engine"},
    {Subject::Race, "race"},
    {Subject::Inspection, "inspection"},
    {Subject::Sitting, "sitting"},
    {Subject::Spring, "spring"},
    {Subject::Tester, "tester"},
    {Subject::Fitting, "fitting"},
    {Subject::Running, "running"},
    {Subject::LevelChange, "level_change"},
    {Subject::Calibration, "calibration"},
    {Subject::Study, "study"},
    {Subject::PlannedRace, "planned_race"},
    {Subject::Shelving, "shelving"},
}};

} // namespace

QString tableOf(Subject subject) {
    for (const auto& [candidate, name] : kSubjects) {
        if (candidate == subject) {
            return QString::fromLatin1(name);
        }
    }
    return {};
}

Subject subjectOf(const QString& table) {
    for (const auto& [subject, name] : kSubjects) {
        if (table == QLatin1String(name)) {
            return subject;
        }
    }
    return Subject::Engine;
}

template <>
const TableShape& Rows<Amendment>::shape() {
    static const TableShape shape{QStringLiteral("amendment"),
                                  {QStringLiteral("id"), QStringLiteral("subject"),
                                   QStringLiteral("record_id"), QStringLiteral("fact"),
                                   QStringLiteral("old_value"), QStringLiteral("new_value"),
                                   QStringLiteral("who"), QStringLiteral("at_utc"),
                                   QStringLiteral("at_offset_min"), QStringLiteral("why")},
                                  QStringLiteral("id"),
                                  {}};
    return shape;
}

template <>
QVariantList Rows<Amendment>::values(const Amendment& record) {
    return {stored(record.id),
            stored(tableOf(record.subject)),
            stored(Id<struct AnyTag>(record.record)),
            stored(record.fact),
            stored(record.oldValue),
            stored(record.newValue),
            stored(record.author.who),
            stored(record.author.at.utc),
            stored(record.author.at.utcOffsetMinutes),
            stored(record.author.why)};
}

template <>
Result<Amendment> Rows<Amendment>::record(const QVariantList& values) {
    RowReader row(values);
    Amendment amendment;
    amendment.id = row.id<AmendmentId>();
    amendment.subject = subjectOf(row.text());
    amendment.record = QUuid::fromString(row.text());
    amendment.fact = row.text();
    amendment.oldValue = row.text();
    amendment.newValue = row.text();
    amendment.author = row.authorship();
    return amendment;
}

} // namespace coilbook::storage
