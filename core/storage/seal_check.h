#pragma once

#include "core/domain/verify_report.h"
#include "core/storage/seals.h"

#include <QCryptographicHash>
#include <QHash>
#include <QUuid>

#include <array>
#include <map>
#include <memory>
#include <vector>

namespace coilbook::storage {

/// Holds the rows of a logbook against its chain of seals: readChain(), then addRow() for every row
/// of all tables in the order of dataTables() and of their keys, then finish(). Of a seal over one
/// row it keeps some 50 bytes in memory, of a block the state of its hash.
///
/// Rows are held against the seals since the newest migration, which may have given them another
/// form; those before are checked as links of the chain.
class SealCheck {
public:
    explicit SealCheck(VerifyReport& report)
        : m_report(report) {}

    SealCheck(const SealCheck&) = delete;
    SealCheck& operator=(const SealCheck&) = delete;
    SealCheck(SealCheck&&) = delete;
    SealCheck& operator=(SealCheck&&) = delete;
    ~SealCheck() = default;

    [[nodiscard]] Result<void> readChain(const Connection& connection);

    /// A row by its digest and the number in its `seal` column, 0 for none. That a row is not what
    /// its own seal is over goes without saying where its checksum has told so.
    void addRow(const TableShape& shape, QByteArrayView id, const QByteArray& digest, qint64 seal,
                bool isIntact);

    [[nodiscard]] Result<void> finish(const Connection& connection);

private:
    using Digest = std::array<char, 16>; ///< half of one: enough to tell rows apart

    enum class Kind : quint8 { Row, Block, Beginning };

    struct Link {
        qint64 number = 0;
        QUuid record;
        Digest content{};
        Kind kind = Kind::Row;
        bool isDone = false; ///< its row was seen, or is in another state by now
    };

    /// Seals of many rows: a block, or all rows at a beginning.
    struct Many {
        QString subject;
        QByteArray content;
        qint64 rows = 0;
        qint64 seen = 0;
        QCryptographicHash hash{QCryptographicHash::Sha256};
    };

    /// The state of a row before it was amended.
    struct Replaced {
        qint64 seal = 0; ///< 0: it had none of its own
        QByteArray digest;
    };

    void addLink(qint64 number, const SealContent& seal);
    void beginAnew(qint64 number);
    /// The state that this seal replaces is the one that was sealed before, of the same row.
    void supersede(qint64 number, const SealContent& seal);
    /// The state that a row has now against its own seal.
    void checkCurrent(Link& link, const QString& where, const QUuid& record,
                      const QByteArray& digest, bool isIntact);
    /// A state that was there from one seal until another, among all rows at the beginnings
    /// between.
    void addState(const QByteArray& digest, qint64 from, qint64 until);
    void checkMany(FindingKind kind, qint64 number, const Many& many);
    [[nodiscard]] Link* linkAt(qint64 number);
    [[nodiscard]] static Digest halfOf(const QByteArray& digest);

    VerifyReport& m_report;
    qint64 m_base = 0; ///< rows are held against this seal, a beginning, and those after it
    bool m_isEmptyBase = false; ///< there was no row by then, so each has a seal of its own
    std::vector<Link> m_links;  ///< by number, from m_base on
    std::map<qint64, std::unique_ptr<Many>> m_blocks;
    std::map<qint64, std::unique_ptr<Many>> m_beginnings;
    QHash<qint64, Replaced> m_replaced; ///< by the seal of the state after
};

} // namespace coilbook::storage
