#pragma once

#include "core/domain/decision.h"
#include "core/domain/level_change.h"
#include "core/domain/place.h"

#include <QString>

/// The user's say in short, as lists on paper name it.
namespace coilbook::wording {

/// Where and which: a spring of the engine.
struct NamedSpring {
    Place place;
    QString label;
};

/// `3 E S-27, 117.3 of 2026-05-02 (set aside by Kim)`; without a judgement of the user it is the
/// trend that says so. `who` may be empty.
[[nodiscard]] QString readingNotCounted(const NamedSpring& spring, const QString& reading,
                                        const QString& day, ReadingJudgement judgement,
                                        const QString& who);

/// `3 E S-27, 1 hit (too far from the others)`.
[[nodiscard]] QString hitsNotCounted(const NamedSpring& spring, int hits);

/// `3 E S-27 on 2026-04-18 (shims)`.
[[nodiscard]] QString levelChanged(const NamedSpring& spring, LevelChangeKind kind,
                                   const QString& day);

/// `shims`, `valve seat`, …: what was worked on.
[[nodiscard]] QString levelChangeKind(LevelChangeKind kind);

} // namespace coilbook::wording
