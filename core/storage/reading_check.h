#pragma once

#include "core/domain/verify_report.h"
#include "core/storage/connection.h"
#include "core/storage/seal_check.h"

#include <QByteArray>
#include <QHash>
#include <QSet>

#include <vector>

namespace coilbook::storage {

/// The table of readings, which is nearly all of a big logbook, in one pass in the order of its
/// key: checksum and seal of each row, what it refers to, and that corrections lead to an original.
/// Inspections that hold corrections, several sittings, a hit number twice or a spring at two
/// places are `suspects`: the rule of hits is asked about those alone.
class ReadingCheck {
public:
    ReadingCheck(const Connection& connection, SealCheck& seals, QSet<QString>& suspects,
                 VerifyReport& report)
        : m_connection(connection)
        , m_seals(seals)
        , m_suspects(suspects)
        , m_report(report) {}

    [[nodiscard]] Result<void> run();

private:
    /// What is looked at beyond the row itself.
    struct Row {
        QByteArray id;
        QByteArray amends; ///< empty: an original
        int spring = 0;    ///< its number in m_springs
        int place = 0;     ///< cylinder and valve in one number
        int hit = 0;
    };

    [[nodiscard]] Result<void> readFrame();
    void takePacked(const QByteArray& ids, qint64 numbers, qint64 checksum, qint64 seal);
    /// A row in full: one with a note, an author, or that amends another.
    void takeWhole(const QVariantList& values, qint64 checksum, qint64 seal);
    void take(QByteArrayView sitting, QByteArrayView spring, Row row, const QByteArray& digest,
              qint64 checksum, qint64 seal);
    void endSitting();
    /// A hit number twice, or a spring at two places, within the sitting.
    [[nodiscard]] bool hitsClash() const;
    void checkOriginals();

    const Connection& m_connection;
    SealCheck& m_seals;
    QSet<QString>& m_suspects;
    VerifyReport& m_report;
    // Ids as they stand in the file; nothing is gained by reading them.
    QHash<QByteArray, int> m_springs;            ///< numbered
    QHash<QByteArray, QByteArray> m_inspections; ///< by sitting
    QSet<QByteArray> m_divided;                  ///< inspections of several sittings
    QByteArray m_sitting;
    bool m_isSittingThere = false;
    QByteArray m_spring; ///< of the row before
    int m_springNumber = 0;
    std::vector<Row> m_rows; ///< of that sitting
};

} // namespace coilbook::storage
