#include "core/storage/packed_reading.h"

#include "core/storage/table.h"

#include <algorithm>

namespace coilbook::storage::PackedReading {

namespace {

// Where the numbers lie in their common one, from the lowest bit on: cylinder, exhaust, retest,
// newton, decimals, hit, digits. insertSql() and selectSql() have the same figures.
constexpr int kExhaustAt = 5;
constexpr int kRetestAt = 6;
constexpr int kNewtonAt = 7;
constexpr int kDecimalsAt = 8;
constexpr int kHitAt = 11;
constexpr int kDigitsAt = 30;

constexpr qsizetype kIdLength = 36;

constexpr int kMostHit = (1 << (kDigitsAt - kHitAt)) - 1;
constexpr qint64 kMostDigits = (qint64(1) << (63 - kDigitsAt)) - 1;

static_assert(Cylinder::kMost < 1 << kExhaustAt);
static_assert(TypedForce::kMostDecimals < 1 << (kHitAt - kDecimalsAt));

constexpr qint64 bit(bool isSet, int at) {
    return isSet ? qint64(1) << at : 0;
}

/// So many bytes from a place on, as far as there are any.
QByteArrayView part(QByteArrayView bytes, qsizetype from, qsizetype length) {
    const qsizetype start = std::min(from, bytes.size());
    return bytes.sliced(start, std::min(length, bytes.size() - start));
}

/// The columns that are empty in every reading that fits.
void addEmptyRest(CanonicalRow& row) {
    row.addUtf8({});  // note
    row.addNull();    // amends
    row.addNumber(0); // withdraws
    row.addUtf8({});  // who
    row.addUtf8({});  // at_utc
    row.addNumber(0); // at_offset_min
    row.addUtf8({});  // why
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
    addEmptyRest(row);
    return row.digest();
}

QString fitsSql() {
    return QStringLiteral(
        "r.amends IS NULL AND r.note = '' AND r.who = '' AND r.at_utc = ''"
        " AND r.why = '' AND r.at_offset_min = 0 AND r.withdraws = 0"
        " AND r.hit < 524288 AND r.digits < 8589934592"
        " AND length(r.sitting_id) = 36 AND length(r.id) = 36 AND length(r.spring_id) = 36");
}

QString selectSql() {
    return QStringLiteral(
               "SELECT CASE WHEN %1"
               " THEN CAST(r.sitting_id || r.id || r.spring_id || r.valve || r.unit AS BLOB) END,"
               " r.cylinder + r.retest * 64 + r.decimals * 256 + r.hit * 2048"
               " + r.digits * 1073741824, r.checksum, r.seal"
               " FROM reading r ORDER BY r.sitting_id, r.id")
        .arg(fitsSql());
}

Numbers unpacked(qint64 numbers) {
    const auto bits = [&](int at, int end) {
        return static_cast<int>((numbers >> at) & ((qint64(1) << (end - at)) - 1));
    };
    return {bits(0, kExhaustAt), bits(kRetestAt, kNewtonAt) == 1, bits(kDecimalsAt, kHitAt),
            bits(kHitAt, kDigitsAt), numbers >> kDigitsAt};
}

QByteArray digestOf(QByteArrayView texts, const Numbers& numbers) {
    CanonicalRow row(Rows<Reading>::shape().name);
    for (qsizetype id = 0; id < 3; ++id) {
        row.addUtf8(part(texts, id * kIdLength, kIdLength));
    }
    row.addNumber(numbers.cylinder);
    row.addUtf8(part(texts, 3 * kIdLength, 1));
    row.addNumber(numbers.hit);
    row.addNumber(numbers.retest ? 1 : 0);
    row.addNumber(numbers.digits);
    row.addNumber(numbers.decimals);
    row.addUtf8(part(texts, 3 * kIdLength + 1, texts.size()));
    addEmptyRest(row);
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
