#include "core/exchange/exchange_header.h"

#include <algorithm>
#include <set>

namespace coilbook {

namespace {

QString textOf(std::string_view name) {
    return QString::fromUtf8(name.data(), static_cast<qsizetype>(name.size()));
}

std::optional<Column> columnNamed(ExchangeKind kind, std::string_view name) {
    for (const ColumnRule& rule : columnsOf(kind)) {
        if (name == rule.name) {
            return rule.column;
        }
    }
    return std::nullopt;
}

/// The kind that more of the names belong to; nothing if none speaks for either.
std::optional<ExchangeKind> kindOf(std::span<const std::string_view> names) {
    std::ptrdiff_t votes = 0;
    for (const std::string_view name : names) {
        votes += columnNamed(ExchangeKind::Readings, name) ? 1 : 0;
        votes -= columnNamed(ExchangeKind::Races, name) ? 1 : 0;
    }
    if (votes == 0) {
        return std::nullopt;
    }
    return votes > 0 ? ExchangeKind::Readings : ExchangeKind::Races;
}

QString namesAllowed(ExchangeKind kind) {
    QStringList names;
    for (const ColumnRule& rule : columnsOf(kind)) {
        names.append(QString::fromLatin1(rule.name));
    }
    return names.join(QStringLiteral(", "));
}

} // namespace

bool ExchangeHeader::has(Column column) const {
    return fieldOf(column) < columns.size();
}

std::size_t ExchangeHeader::fieldOf(Column column) const {
    return static_cast<std::size_t>(std::find(columns.begin(), columns.end(), column) -
                                    columns.begin());
}

std::optional<ExchangeHeader> readHeader(std::span<const std::string_view> names,
                                         const QString& path, std::size_t file, qint64 line,
                                         FaultLog& faults) {
    bool isSound = true;
    const auto report = [&](std::size_t field, InputFault fault, const QStringList& arguments,
                            const QString& column) {
        isSound = false;
        faults.add({file, line, field}, Error{fault, arguments, path, line, column, 0, {}});
    };
    const std::optional<ExchangeKind> kind = kindOf(names);
    if (!kind) {
        report(0, InputFault::UnknownHeader, {}, {});
        return std::nullopt;
    }
    ExchangeHeader header{*kind, {}};
    std::set<std::string_view> seen;
    for (std::size_t field = 0; field < names.size(); ++field) {
        const QString name = textOf(names[field]);
        const std::optional<Column> column = columnNamed(*kind, names[field]);
        if (!column) {
            report(field, InputFault::UnknownColumn, {name, namesAllowed(*kind)}, name);
        } else if (!seen.insert(names[field]).second) {
            report(field, InputFault::DuplicateColumn, {name}, name);
        } else {
            header.columns.push_back(*column);
        }
    }
    for (const ColumnRule& rule : columnsOf(*kind)) {
        if (rule.needed == Needed::Yes && !header.has(rule.column)) {
            const QString name = QString::fromLatin1(rule.name);
            report(names.size(), InputFault::MissingColumn, {name}, name);
        }
    }
    if (*kind == ExchangeKind::Readings && !header.has(Column::ReadingLbf) &&
        !header.has(Column::ReadingN)) {
        const QString name = columnName(Column::ReadingLbf);
        report(names.size(), InputFault::MissingColumn, {name}, name);
    }
    return isSound ? std::optional(header) : std::nullopt;
}

} // namespace coilbook
