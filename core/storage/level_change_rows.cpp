#include "core/storage/row_values.h"
#include "core/storage/rows.h"

#include <algorithm>
#include <array>
#include <utility>

namespace coilbook::storage {

namespace {

constexpr std::array<std::pair<LevelChangeKind, const char*>, 5> kKinds{{
    {LevelChangeKind::Shim, "shim"},
    {LevelChangeKind::ValveSeatWork, "valve_seat_work"},
    {LevelChangeKind::Retainer, "retainer"},
    {LevelChangeKind::Move, "move"},
    {LevelChangeKind::Other, "other"},
}};

QString nameOf(LevelChangeKind kind) {
    const auto* const found = std::find_if(kKinds.begin(), kKinds.end(),
                                           [&](const auto& named) { return named.first == kind; });
    return QString::fromLatin1(found->second);
}

LevelChangeKind kindNamed(const QString& name) {
    const auto* const found = std::find_if(kKinds.begin(), kKinds.end(), [&](const auto& named) {
        return name == QLatin1String(named.second);
    });
    return found == kKinds.end() ? LevelChangeKind::Other : found->first;
}

} // namespace

template <>
const TableShape& Rows<LevelChange>::shape() {
    static const TableShape shape{QStringLiteral("level_change"),
                                  {QStringLiteral("id"), QStringLiteral("engine_id"),
                                   QStringLiteral("spring_id"), QStringLiteral("kind"),
                                   QStringLiteral("changed_on"), QStringLiteral("engine_races"),
                                   QStringLiteral("note"), QStringLiteral("withdrawn")},
                                  QStringLiteral("id"),
                                  {}};
    return shape;
}

template <>
QVariantList Rows<LevelChange>::values(const LevelChange& record) {
    return {stored(record.id),   stored(record.engine),    stored(record.spring),
            nameOf(record.kind), stored(record.changedOn), stored(record.engineRaces),
            stored(record.note), stored(record.withdrawn)};
}

template <>
Result<LevelChange> Rows<LevelChange>::record(const QVariantList& values) {
    RowReader row(values);
    LevelChange change;
    change.id = row.id<LevelChangeId>();
    change.engine = row.id<EngineId>();
    change.spring = row.id<SpringId>();
    change.kind = kindNamed(row.text());
    change.changedOn = row.date();
    change.engineRaces = row.number();
    change.note = row.text();
    change.withdrawn = row.flag();
    return change;
}

} // namespace coilbook::storage
