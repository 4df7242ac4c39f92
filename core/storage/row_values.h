#pragma once

#include "core/domain/inspection.h"
#include "core/support/result.h"
#include "core/units/typed_force.h"

#include <QDate>
#include <QVariant>

#include <optional>

namespace coilbook::storage {

// How single values stand in the columns. Only INTEGER and TEXT; NULL means "not known".

[[nodiscard]] QVariant stored(const QString& text);
[[nodiscard]] QVariant stored(const QDate& date); ///< ISO 8601; NULL for a null date
[[nodiscard]] QVariant stored(const std::optional<int>& number);
[[nodiscard]] QVariant stored(const std::optional<TypedForce>& force); ///< `600 lbf`
[[nodiscard]] QVariant stored(Valve valve);
[[nodiscard]] QVariant stored(ForceUnit unit);

[[nodiscard]] inline QVariant stored(int number) {
    return QVariant::fromValue<qlonglong>(number);
}

[[nodiscard]] inline QVariant stored(bool flag) {
    return QVariant::fromValue<qlonglong>(flag ? 1 : 0);
}

template <class Tag>
[[nodiscard]] QVariant stored(const Id<Tag>& id) {
    return id.text();
}

template <class Tag>
[[nodiscard]] QVariant stored(const std::optional<Id<Tag>>& id) {
    return id ? QVariant(id->text()) : QVariant();
}

/// Reads the values of a row one after the other, in the order of the columns.
class RowReader {
public:
    explicit RowReader(const QVariantList& values)
        : m_values(values) {}

    [[nodiscard]] QString text() { return next().toString(); }

    [[nodiscard]] qint64 integer() { return next().toLongLong(); }

    [[nodiscard]] int number() { return static_cast<int>(integer()); }

    [[nodiscard]] bool flag() { return integer() != 0; }

    [[nodiscard]] std::optional<int> optionalNumber();
    [[nodiscard]] std::optional<bool> optionalFlag();
    [[nodiscard]] std::optional<TypedForce> optionalForce();
    [[nodiscard]] QDate date();
    [[nodiscard]] Place place(); ///< two columns: cylinder, valve
    [[nodiscard]] ForceUnit unit();
    [[nodiscard]] Authorship authorship(); ///< four columns: who, at_utc, at_offset_min, why

    template <class SomeId>
    [[nodiscard]] SomeId id() {
        return SomeId::fromText(text());
    }

    template <class SomeId>
    [[nodiscard]] std::optional<SomeId> optionalId() {
        const QVariant& value = next();
        return value.isNull() ? std::nullopt
                              : std::optional<SomeId>(SomeId::fromText(value.toString()));
    }

private:
    [[nodiscard]] const QVariant& next() { return m_values.at(m_next++); }

    const QVariantList& m_values;
    qsizetype m_next = 0;
};

} // namespace coilbook::storage
