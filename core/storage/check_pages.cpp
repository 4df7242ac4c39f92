#include "core/storage/checks.h"

namespace coilbook::storage {

Result<void> keepDamage(const Result<void>& checked, const QString& where, VerifyReport& report) {
    if (checked) {
        return checked;
    }
    const auto* fault = std::get_if<StorageFault>(&checked.error().fault);
    if (fault == nullptr ||
        (*fault != StorageFault::Damaged && *fault != StorageFault::NotALogbook)) {
        return checked;
    }
    const QString said = checked.error().detail.isEmpty() ? checked.error().arguments.value(0)
                                                          : checked.error().detail;
    report.add({FindingKind::Page, where, {said}, {}});
    return {};
}

Result<void> checkPages(const Connection& connection, VerifyReport& report) {
    const auto onRow = [&](const QSqlQuery& query) -> Result<void> {
        const QString text = query.value(0).toString();
        if (text != QLatin1String("ok")) {
            report.add({FindingKind::Page, QStringLiteral("file"), {text}, {}});
        }
        return {};
    };
    return connection.forEachRow(QStringLiteral("PRAGMA integrity_check"), {}, onRow);
}

} // namespace coilbook::storage
