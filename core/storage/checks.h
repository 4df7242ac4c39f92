#pragma once

#include "core/domain/verify_report.h"
#include "core/storage/connection.h"
#include "core/storage/rows.h"

#include <QSet>
#include <QString>

namespace coilbook::storage {

// The parts of verifyFile(), one file each. What is wrong with the data goes into the report; an
// Error means that the check itself could not be made.

class SealCheck;

/// Damage that stops a query becomes a finding, so that the other checks still run.
[[nodiscard]] Result<void> keepDamage(const Result<void>& checked, const QString& where,
                                      VerifyReport& report);

/// PRAGMA integrity_check.
[[nodiscard]] Result<void> checkPages(const Connection& connection, VerifyReport& report);

/// Checksum, seal and foreign keys of each row. Inspections whose hits may break a rule are added
/// to `suspects`, so that the others need not be loaded.
[[nodiscard]] Result<void> checkRows(const Connection& connection, SealCheck& seals,
                                     QSet<QString>& suspects, VerifyReport& report);

/// Amended facts: each old value is what the amendment before it left, and the newest one is what
/// the record says now.
[[nodiscard]] Result<void> checkAmendments(const Connection& connection, VerifyReport& report);

/// What core/domain says of a logbook: counts that never go back, lives of springs, hits of an
/// inspection (those of `suspects` only).
[[nodiscard]] Result<void> checkRules(const Connection& connection, const QSet<QString>& suspects,
                                      VerifyReport& report);

} // namespace coilbook::storage
