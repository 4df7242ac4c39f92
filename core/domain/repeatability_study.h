#pragma once

#include "core/domain/ids.h"
#include "core/support/result.h"
#include "core/units/typed_force.h"

#include <QDate>
#include <QString>
#include <QStringList>

#include <optional>
#include <vector>

namespace coilbook {

/// A study of how far a tester and its users can be trusted: a few springs, each read several times
/// by each person. A withdrawn one is kept and counts no longer (undone).
struct RepeatabilityStudy {
    StudyId id;
    TesterId tester;
    QDate studiedOn;
    QStringList springs; ///< labels as the shop has them
    QStringList persons;
    int hits = 3; ///< of each person on each spring
    ForceUnit unit = ForceUnit::PoundForce;
    /// By spring, then person, then hit; empty where nothing was read yet.
    std::vector<std::optional<TypedForce>> readings;
    QString note;
    bool withdrawn = false;

    /// Where a reading stands in `readings`.
    [[nodiscard]] std::size_t at(int spring, int person, int hit) const;

    [[nodiscard]] std::size_t size() const;

    bool operator==(const RepeatabilityStudy&) const = default;
};

/// `121.5 122 - 120`: the readings in their order, a dash where there is none, and back.
[[nodiscard]] QString studyReadingsToText(const std::vector<std::optional<TypedForce>>& readings);
[[nodiscard]] std::optional<std::vector<std::optional<TypedForce>>>
studyReadingsFromText(QStringView text, ForceUnit unit);

/// StudyTooSmall with fewer than two springs, one person or two hits, or another number of readings
/// than they make; EmptyName and NameTaken for its springs and persons; ReadingOutOfBounds.
[[nodiscard]] Result<void> checkStudy(const RepeatabilityStudy& study);

/// The newest in force of `tester` with all its readings; null if there is none.
[[nodiscard]] const RepeatabilityStudy* newestStudy(const std::vector<RepeatabilityStudy>& studies,
                                                    const TesterId& tester);

} // namespace coilbook
