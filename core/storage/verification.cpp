#include "core/storage/verification.h"

#include "core/storage/checks.h"
#include "core/storage/seal_check.h"
#include "core/storage/transaction.h"

#include <algorithm>

namespace coilbook::storage {

namespace {

std::ptrdiff_t damagesIn(const VerifyReport& report) {
    return std::count_if(report.findings.begin(), report.findings.end(),
                         [](const Finding& found) { return found.kind == FindingKind::Page; });
}

/// Rows and seals against each other. Where rows could not be read to the end, those that are left
/// over on the side of the seals say nothing.
Result<void> checkRowsAndSeals(const Connection& connection, QSet<QString>& suspects,
                               VerifyReport& report) {
    const std::ptrdiff_t damages = damagesIn(report);
    SealCheck seals(report);
    return keepDamage(seals.readChain(connection), QStringLiteral("seal"), report)
        .and_then([&] { return checkRows(connection, seals, suspects, report); })
        .and_then([&] {
            return damagesIn(report) == damages
                       ? keepDamage(seals.finish(connection), QStringLiteral("seal"), report)
                       : Result<void>();
        });
}

Result<void> checkAll(const Connection& connection, VerifyReport& report) {
    QSet<QString> suspects;
    const auto file = QStringLiteral("file");
    return keepDamage(checkPages(connection, report), file, report)
        .and_then([&] { return checkRowsAndSeals(connection, suspects, report); })
        .and_then([&] {
            return keepDamage(checkAmendments(connection, report), QStringLiteral("amendment"),
                              report);
        })
        .and_then(
            [&] { return keepDamage(checkRules(connection, suspects, report), file, report); });
}

} // namespace

Result<VerifyReport> verifyFile(const Connection& connection) {
    const Result<Transaction> view = Transaction::read(connection);
    if (!view) {
        return tl::unexpected(view.error());
    }
    VerifyReport report;
    if (Result<void> checked = checkAll(connection, report); !checked) {
        return tl::unexpected(checked.error());
    }
    return report;
}

} // namespace coilbook::storage
