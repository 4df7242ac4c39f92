#pragma once

#include "core/domain/seal.h"
#include "core/domain/verify_report.h"
#include "core/storage/connection.h"
#include "core/storage/rows.h"

#include <QByteArray>

#include <optional>

namespace coilbook::storage {

// The chain of seals. Each row written gets the next one, which holds the SHA-256 of the row's
// canonical form (row_checksum.h) and, over that and the digest of the seal before, a digest of its
// own: whoever noted a number and its digest knows every state of every row up to there.
//
// An import seals blocks of up to 2,000 new rows of one table instead. A row has a `seal` column
// besides its data; it names the seal of the row's present state.
//
// A beginning covers all rows as they are at that moment. It stands first, and again where rows
// came about in another way than by being written one after the other (SealBeginning).

/// One seal, as stored but for its own digest.
struct SealContent {
    QString subject; ///< table of the rows, or nameOf() a beginning
    QString record;  ///< id of the row; null for a block and for a beginning
    qint64 rows = 1;
    QByteArray content; ///< 32 bytes: digest of the row; else SHA-256 over those, in order of key
    /// Where the row was there before: digest of the state that this one replaces, and the seal of
    /// that state, 0 if it had none of its own.
    QByteArray replaced;
    qint64 replaces = 0;
};

/// The last link that there is, to which the next one is tied.
struct ChainEnd {
    qint64 number = 0;
    QString digest; ///< hexadecimal; empty before the first
};

[[nodiscard]] QString nameOf(SealBeginning beginning);

/// The beginning of that name, if it is one.
[[nodiscard]] std::optional<SealBeginning> beginningNamed(const QString& subject);

/// Hexadecimal digest of the seal that follows `previous`: SHA-256 over the canonical row `seal` of
/// previous digest, number, subject, record, rows, content, replaces and replaced.
[[nodiscard]] QString sealDigest(const ChainEnd& previous, const SealContent& seal);

[[nodiscard]] Result<ChainEnd> chainEnd(const Connection& connection);

/// Ties one more seal to the end of the chain and moves the end on.
[[nodiscard]] Result<void> addSeal(const Connection& connection, ChainEnd& end,
                                   const SealContent& seal);

/// Stores a row and seals it; one whose key is there already is left alone.
[[nodiscard]] Result<void> insertSealed(const Connection& connection, const TableShape& shape,
                                        const QVariantList& values);

/// Puts `values` in the place of the row of the same id, whose former state stays in the seal.
[[nodiscard]] Result<void> updateSealed(const Connection& connection, const TableShape& shape,
                                        const QVariantList& values);

/// The newest seal that covers data of an engine, whole digest.
[[nodiscard]] Result<std::optional<NotedSeal>> newestSealOf(const Connection& connection,
                                                            const EngineId& engine);

[[nodiscard]] Result<SealAnswer> askSeal(const Connection& connection, const NotedSeal& noted);

/// Goes through all rows and seals what is there, inside a transaction of the caller.
[[nodiscard]] Result<void> sealAnew(const Connection& connection, SealBeginning beginning);

} // namespace coilbook::storage
