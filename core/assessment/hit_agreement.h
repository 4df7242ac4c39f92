#pragma once

#include "core/domain/history.h"
#include "core/units/force.h"
#include "core/wear/hit_noise.h"

#include <optional>

namespace coilbook {

/// How far apart the hits of one spring may lie by the repeatability that a tester has shown. Where
/// it has shown too little (fewer than 16 degrees of freedom), by what the hit screen of the wear
/// model allows any tester: 4 lbf or one and a half graduations.
class HitAgreement {
public:
    HitAgreement() = default;

    explicit HitAgreement(const wear::HitNoise& tester);

    /// The critical range of `hits` hits at 95 % (ISO 5725-6), and never less than one graduation,
    /// the least step that a tester can show.
    [[nodiscard]] Force allowedRange(int hits) const;

    bool operator==(const HitAgreement&) const = default;

private:
    double m_graduation = 0.0; ///< lbf
    double m_hitSd = 0.0;      ///< lbf; 0: not known
};

/// By all that a tester of the history has read; `tester` empty: where none is noted.
[[nodiscard]] HitAgreement hitAgreementOf(const EngineHistory& history,
                                          std::optional<std::size_t> tester);

} // namespace coilbook
