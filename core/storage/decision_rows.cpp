#include "core/storage/row_values.h"
#include "core/storage/rows.h"

#include <algorithm>
#include <array>
#include <utility>

namespace coilbook::storage {

namespace {

constexpr std::array<std::pair<ReadingJudgement, const char*>, 5> kJudgements{{
    {ReadingJudgement::LeftToModel, "left_to_model"},
    {ReadingJudgement::Kept, "kept"},
    {ReadingJudgement::SetAside, "set_aside"},
    {ReadingJudgement::DropConfirmed, "drop_confirmed"},
    {ReadingJudgement::DropDenied, "drop_denied"},
}};

QString nameOf(ReadingJudgement judgement) {
    const auto* const found =
        std::find_if(kJudgements.begin(), kJudgements.end(),
                     [&](const auto& named) { return named.first == judgement; });
    return QString::fromLatin1(found->second);
}

ReadingJudgement judgementNamed(const QString& name) {
    const auto* const found =
        std::find_if(kJudgements.begin(), kJudgements.end(),
                     [&](const auto& named) { return name == QLatin1String(named.second); });
    return found == kJudgements.end() ? ReadingJudgement::LeftToModel : found->first;
}

} // namespace

template <>
const TableShape& Rows<Decision>::shape() {
    static const TableShape shape{QStringLiteral("decision"),
                                  {QStringLiteral("id"), QStringLiteral("inspection_id"),
                                   QStringLiteral("spring_id"), QStringLiteral("judgement"),
                                   QStringLiteral("who"), QStringLiteral("at_utc"),
                                   QStringLiteral("at_offset_min"), QStringLiteral("why")},
                                  QStringLiteral("id"),
                                  {}};
    return shape;
}

template <>
QVariantList Rows<Decision>::values(const Decision& record) {
    return {stored(record.id),
            stored(record.inspection),
            stored(record.spring),
            nameOf(record.judgement),
            stored(record.author.who),
            stored(record.author.at.utc),
            stored(record.author.at.utcOffsetMinutes),
            stored(record.author.why)};
}

template <>
Result<Decision> Rows<Decision>::record(const QVariantList& values) {
    RowReader row(values);
    Decision decision;
    decision.id = row.id<DecisionId>();
    decision.inspection = row.id<InspectionId>();
    decision.spring = row.id<SpringId>();
    decision.judgement = judgementNamed(row.text());
    decision.author = row.authorship();
    return decision;
}

} // namespace coilbook::storage
