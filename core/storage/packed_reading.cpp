#include "core/storage/packed_reading.h"

#include "core/storage/table.h"

namespace coilbook::storage::PackedReading {

namespace {

// Where the numbers lie in their common one, from the lowest bit on: cylinder, exhaust, retest,
// newton, decimals, hit, digits. insertSql() has the same figures.
constexpr int kExhaustAt = 5;
constexpr int kRetestAt = 6;
constexpr int kNewtonAt = 7;
constexpr int kDecimalsAt = 8;
constexpr int kHitAt = 11;
constexpr int kDigitsAt = 30;

constexpr int kMostHit = (1 << (kDigitsAt - kHitAt)) - 1;
constexpr qint64 kMostDigits = (qint64(1) << (63 - kDigitsAt)) - 1;

static_assert(Cylinder::kMost < 1 << kExhaustAt);
static_assert(TypedForce::kMostDecimals < 1 << (kHitAt - kDecimalsAt));

constexpr qint64 bit(bool isSet, int at) {
    return isSet ? qint64(1) << at : 0;
}

template <class Tag>
QByteArray bytesOf(const Id<Tag>& id) {
    return id.uuid().toByteArray(QUuid::WithoutBraces);
}

} // namespace

bool fits(const Reading& reading) {
    return reading.kind == ReadingKind::Original && !reading.amends && reading.note.isEmpty() &&
           reading.author == Authorship() && reading.hit <= kMostHit &&
           reading.value.digits() <= kMostDigits;
}

QByteArray digestOf(const Reading& reading) {
    // Without making the values, most of which are empty.
    CanonicalRow row(Rows<Reading>::shape().name);
    row.addUtf8(bytesOf(reading.sitting));
    row.addUtf8(bytesOf(reading.id));
    row.addUtf8(bytesOf(reading.spring));
    row.addNumber(reading.place.cylinder.number());
    row.addUtf8(reading.place.valve == Valve::Exhaust ? "E" : "I");
    row.addNumber(reading.hit);
    row.addNumber(reading.retest ? 1 : 0);
    row.addNumber(reading.value.digits());
    row.addNumber(reading.value.decimals());
    row.addUtf8(reading.value.unit() == ForceUnit::Newton ? "N" : "lbf");
    row.addUtf8({});  // note
    row.addNull();    // amends
    row.addNumber(0); // withdraws
    row.addUtf8({});  // who
    row.addUtf8({});  // at_utc
    row.addNumber(0); // at_offset_min
    row.addUtf8({});  // why
    return row.digest();
}

QVariantList values(const Reading& reading, const QByteArray& digest, qint64 seal) {
    const qint64 numbers =
        reading.place.cylinder.number() | bit(reading.place.valve == Valve::Exhaust, kExhaustAt) |
        bit(reading.retest, kRetestAt) | bit(reading.value.unit() == ForceUnit::Newton, kNewtonAt) |
        qint64(reading.value.decimals()) << kDecimalsAt | qint64(reading.hit) << kHitAt |
        reading.value.digits() << kDigitsAt;
    // Bytes rather than text: they are neither converted nor counted through on their way.
    const QByteArray ids = bytesOf(reading.sitting) + bytesOf(reading.id) +
                           bytesOf(reading.spring) + QByteArray::number(seal);
    return {ids, QVariant::fromValue<qlonglong>(numbers),
            QVariant::fromValue<qlonglong>(checksumOf(digest))};
}

QString insertSql() {
    return QStringLiteral(
        "INSERT INTO reading (sitting_id, id, spring_id, cylinder, valve, retest, unit, decimals,"
        " hit, digits, checksum, seal)"
        " SELECT CAST(substr(column1, 1, 36) AS TEXT), CAST(substr(column1, 37, 36) AS TEXT),"
        " CAST(substr(column1, 73, 36) AS TEXT), column2 & 31,"
        " CASE column2 >> 5 & 1 WHEN 0 THEN 'I' ELSE 'E' END, column2 >> 6 & 1,"
        " CASE column2 >> 7 & 1 WHEN 0 THEN 'lbf' ELSE 'N' END, column2 >> 8 & 7,"
        " column2 >> 11 & 524287, column2 >> 30, column3,"
        " CAST(substr(column1, 109) AS INTEGER)"
        " FROM (VALUES %1) v WHERE true ON CONFLICT (sitting_id, id) DO NOTHING");
}

} // namespace coilbook::storage::PackedReading
