#pragma once

#include "core/services/crank_step.h"
#include "core/services/typed_judgement.h"
#include "core/wording/quantities.h"

#include <QString>

namespace coilbook {

enum class JudgementTone { Calm, Good, Look, Stop };

/// What stands in large letters beside the reading.
struct BenchJudgement {
    QString words; ///< empty while there is nothing to say
    JudgementTone tone = JudgementTone::Calm;
};

/// `spread`: of the hits with the one being typed.
[[nodiscard]] BenchJudgement judgementWords(TypedJudgement judgement, const HitSpread& spread,
                                            const Quantities& quantities);

/// One sentence; both springs of that cylinder can then be tested.
[[nodiscard]] QString crankWords(const CrankStep& step);

} // namespace coilbook
