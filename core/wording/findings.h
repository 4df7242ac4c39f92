#pragma once

#include "core/domain/verify_report.h"

#include <QString>
#include <QStringList>

namespace coilbook::wording {

/// What is wrong, in one sentence; without the place. Text from the file is escaped.
[[nodiscard]] QString finding(const Finding& finding);

/// `reading 0197…: The row does not match its checksum: …`
[[nodiscard]] QString findingLine(const Finding& finding);

/// What was checked and where the chain of seals began, or began anew; the newest seal with its
/// whole digest. One sentence each.
[[nodiscard]] QStringList checked(const VerifyReport& report);

/// Whether the logbook went through what the noted seal is over. `report` is of the same logbook.
[[nodiscard]] QString sealAnswer(SealAnswer answer, const NotedSeal& noted,
                                 const VerifyReport& report);

/// What a seal can prove and what it cannot.
[[nodiscard]] QString whatSealsProve();

} // namespace coilbook::wording
