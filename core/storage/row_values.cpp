#include "core/storage/row_values.h"

namespace coilbook::storage {

namespace {

const QString& nameOf(ForceUnit unit) {
    static const QString poundForce = QStringLiteral("lbf");
    static const QString newton = QStringLiteral("N");
    return unit == ForceUnit::PoundForce ? poundForce : newton;
}

ForceUnit unitNamed(const QString& name) {
    return name == nameOf(ForceUnit::Newton) ? ForceUnit::Newton : ForceUnit::PoundForce;
}

} // namespace

QVariant stored(const QString& text) {
    // Qt binds a null string as NULL.
    return text.isNull() ? QStringLiteral("") : text;
}

QVariant stored(const QDate& date) {
    return date.isValid() ? QVariant(date.toString(Qt::ISODate)) : QVariant();
}

QVariant stored(const std::optional<int>& number) {
    return number ? stored(*number) : QVariant();
}

QVariant stored(const std::optional<TypedForce>& force) {
    return force ? QVariant(force->text() + QLatin1Char(' ') + nameOf(force->unit())) : QVariant();
}

QVariant stored(Valve valve) {
    return valveLetter(valve);
}

QVariant stored(ForceUnit unit) {
    return nameOf(unit);
}

std::optional<int> RowReader::optionalNumber() {
    const QVariant& value = next();
    return value.isNull() ? std::nullopt : std::optional<int>(value.toInt());
}

std::optional<bool> RowReader::optionalFlag() {
    const std::optional<int> value = optionalNumber();
    return value ? std::optional<bool>(*value != 0) : std::nullopt;
}

std::optional<TypedForce> RowReader::optionalForce() {
    const QString value = text();
    const qsizetype space = value.indexOf(QLatin1Char(' '));
    if (space < 0) {
        return std::nullopt;
    }
    return TypedForce::parse(QStringView(value).left(space), unitNamed(value.mid(space + 1)));
}

QDate RowReader::date() {
    return QDate::fromString(text(), Qt::ISODate);
}

Place RowReader::place() {
    const int cylinder = number();
    const bool intake = text() == QLatin1String("I");
    return {Cylinder(cylinder), intake ? Valve::Intake : Valve::Exhaust};
}

ForceUnit RowReader::unit() {
    return unitNamed(text());
}

Authorship RowReader::authorship() {
    Authorship author;
    author.who = text();
    author.at.utc = text();
    author.at.utcOffsetMinutes = number();
    author.why = text();
    return author;
}

} // namespace coilbook::storage
