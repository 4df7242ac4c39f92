#include "core/storage/reading_check.h"

#include "core/storage/packed_reading.h"
#include "core/storage/table.h"

#include <algorithm>
#include <optional>
#include <tuple>
#include <utility>

namespace coilbook::storage {

namespace {

constexpr qsizetype kIdLength = 36;

const TableShape& readings() {
    return Rows<Reading>::shape();
}

/// The readings that do not fit a packed one, read beside the others and in the same order; begun
/// at the first of them.
class WholeRows {
public:
    explicit WholeRows(const Connection& connection)
        : m_connection(connection) {}

    /// The next row: the columns, its checksum and seal. Empty when there is none any more.
    Result<QVariantList> next() {
        if (!m_query) {
            Result<QSqlQuery> query = m_connection.prepare(
                QStringLiteral("SELECT %1, r.seal FROM reading r WHERE NOT (%2) ORDER BY %3")
                    .arg(columnList(readings(), QStringLiteral("r")), PackedReading::fitsSql(),
                         readings().key));
            if (!query) {
                return tl::unexpected(query.error());
            }
            if (Result<void> begun = m_connection.execute(*query); !begun) {
                return tl::unexpected(begun.error());
            }
            m_query = std::move(*query);
        }
        QVariantList values;
        if (m_query->next()) {
            for (int i = 0; i < static_cast<int>(readings().columns.size()) + 2; ++i) {
                values.append(m_query->value(i));
            }
        }
        return values;
    }

private:
    const Connection& m_connection;
    std::optional<QSqlQuery> m_query;
};

} // namespace

Result<void> ReadingCheck::readFrame() {
    const auto onSpring = [&](const QSqlQuery& query) -> Result<void> {
        m_springs.insert(query.value(0).toString().toUtf8(),
                         static_cast<int>(m_springs.size()) + 1);
        return {};
    };
    QSet<QByteArray> seen;
    const auto onSitting = [&](const QSqlQuery& query) -> Result<void> {
        const QByteArray inspection = query.value(1).toString().toUtf8();
        m_inspections.insert(query.value(0).toString().toUtf8(), inspection);
        if (seen.contains(inspection)) {
            m_divided.insert(inspection);
        }
        seen.insert(inspection);
        return {};
    };
    return m_connection.forEachRow(QStringLiteral("SELECT s.id FROM spring s"), {}, onSpring)
        .and_then([&] {
            return m_connection.forEachRow(
                QStringLiteral("SELECT s.id, s.inspection_id FROM sitting s"), {}, onSitting);
        });
}

Result<void> ReadingCheck::run() {
    WholeRows whole(m_connection);
    const auto onRow = [&](const QSqlQuery& query) -> Result<void> {
        ++m_report.rowsChecked;
        if (!query.value(0).isNull()) {
            takePacked(query.value(0).toByteArray(), query.value(1).toLongLong(),
                       query.value(2).toLongLong(), query.value(3).toLongLong());
            return {};
        }
        const Result<QVariantList> row = whole.next();
        if (!row) {
            return tl::unexpected(row.error());
        }
        const qsizetype columns = readings().columns.size();
        if (row->size() < columns + 2) {
            return fail(StorageFault::Damaged, {readings().name}, m_connection.path());
        }
        takeWhole(row->mid(0, columns), row->at(columns).toLongLong(),
                  row->at(columns + 1).toLongLong());
        return {};
    };
    return readFrame()
        .and_then([&] { return m_connection.forEachRow(PackedReading::selectSql(), {}, onRow); })
        .map([&] { endSitting(); });
}

void ReadingCheck::takePacked(const QByteArray& ids, qint64 numbers, qint64 checksum, qint64 seal) {
    const PackedReading::Numbers unpacked = PackedReading::unpacked(numbers);
    const QByteArrayView all(ids);
    if (ids.size() < 3 * kIdLength + 1) {
        m_report.add({FindingKind::Checksum, readings().name, {}, {}});
        return;
    }
    Row row;
    row.id = ids.mid(kIdLength, kIdLength);
    row.place = unpacked.cylinder * 2 + (ids.at(3 * kIdLength) == 'E' ? 1 : 0);
    row.hit = unpacked.hit;
    take(all.first(kIdLength), all.sliced(2 * kIdLength, kIdLength), std::move(row),
         PackedReading::digestOf(ids, unpacked), checksum, seal);
}

void ReadingCheck::takeWhole(const QVariantList& values, qint64 checksum, qint64 seal) {
    Row row;
    row.id = values.at(1).toString().toUtf8();
    row.place = values.at(3).toInt() * 2 + (values.at(4).toString() == QLatin1String("E") ? 1 : 0);
    row.hit = values.at(5).toInt();
    row.amends =
        values.at(readings().columns.indexOf(QStringLiteral("amends"))).toString().toUtf8();
    take(values.at(0).toString().toUtf8(), values.at(2).toString().toUtf8(), std::move(row),
         rowDigest(readings().name, values), checksum, seal);
}

void ReadingCheck::take(QByteArrayView sitting, QByteArrayView spring, Row row,
                        const QByteArray& digest, qint64 checksum, qint64 seal) {
    const auto where = [&] {
        return readings().name + QLatin1Char(' ') + QString::fromUtf8(row.id);
    };
    const bool isIntact = checksum == checksumOf(digest);
    if (!isIntact) {
        m_report.add({FindingKind::Checksum, where(), {}, {}});
    }
    m_seals.addRow(readings(), row.id, digest, seal, isIntact);
    if (sitting != m_sitting) {
        endSitting();
        m_sitting = sitting.toByteArray();
        m_isSittingThere = m_inspections.contains(m_sitting);
    }
    if (spring != m_spring) {
        m_spring = spring.toByteArray();
        m_springNumber = m_springs.value(m_spring);
    }
    if (!m_isSittingThere) {
        m_report.add({FindingKind::NoSuchRow, where(), {QStringLiteral("sitting")}, {}});
    }
    if (m_springNumber == 0) {
        m_report.add({FindingKind::NoSuchRow, where(), {QStringLiteral("spring")}, {}});
    }
    row.spring = m_springNumber;
    m_rows.push_back(std::move(row));
}

bool ReadingCheck::hitsClash() const {
    std::vector<std::tuple<int, int, int>> hits;
    hits.reserve(m_rows.size());
    for (const Row& row : m_rows) {
        hits.emplace_back(row.spring, row.hit, row.place);
    }
    std::sort(hits.begin(), hits.end());
    for (std::size_t i = 1; i < hits.size(); ++i) {
        const auto& [spring, hit, place] = hits[i - 1];
        const auto& [nextSpring, nextHit, nextPlace] = hits[i];
        if (spring == nextSpring && (hit == nextHit || place != nextPlace)) {
            return true;
        }
    }
    return false;
}

void ReadingCheck::checkOriginals() {
    QHash<QByteArray, std::size_t> rows;
    for (std::size_t i = 0; i < m_rows.size(); ++i) {
        rows.insert(m_rows[i].id, i);
    }
    // Each row is walked over once: `reached` tells by which start, or that its way ends well.
    constexpr std::size_t kNotYet = 0;
    constexpr std::size_t kEndsWell = 1;
    std::vector<std::size_t> reached(m_rows.size(), kNotYet);
    for (std::size_t start = 0; start < m_rows.size(); ++start) {
        const std::size_t mark = start + 2;
        std::vector<std::size_t> way;
        bool endsWell = false;
        for (std::size_t at = start;;) {
            if (reached[at] != kNotYet) {
                endsWell = reached[at] == kEndsWell;
                break;
            }
            reached[at] = mark;
            way.push_back(at);
            if (m_rows[at].amends.isEmpty()) {
                endsWell = true;
                break;
            }
            const auto next = rows.constFind(m_rows[at].amends);
            if (next == rows.constEnd()) {
                break;
            }
            at = *next;
        }
        for (const std::size_t row : way) {
            if (endsWell) {
                reached[row] = kEndsWell;
            } else {
                m_report.add({FindingKind::NoOriginal,
                              QStringLiteral("reading ") + QString::fromUtf8(m_rows[row].id),
                              {},
                              {}});
            }
        }
    }
}

void ReadingCheck::endSitting() {
    if (m_rows.empty()) {
        return;
    }
    const bool amends = std::any_of(m_rows.begin(), m_rows.end(),
                                    [](const Row& row) { return !row.amends.isEmpty(); });
    if (amends) {
        checkOriginals();
    }
    const QByteArray inspection = m_inspections.value(m_sitting);
    if (amends || m_divided.contains(inspection) || hitsClash()) {
        m_suspects.insert(QString::fromUtf8(inspection));
    }
    m_rows.clear();
}

} // namespace coilbook::storage
