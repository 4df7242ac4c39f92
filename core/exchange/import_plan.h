#pragma once

#include "core/domain/engine.h"
#include "core/domain/ids.h"
#include "core/exchange/import_report.h"
#include "core/exchange/text_pool.h"

#include <cstdint>
#include <vector>

namespace coilbook {

/// What an import does to one engine: the records its rows belong to, those stored already (with
/// their id) and those still to be made (with a null id). Records refer to each other by index.
struct ImportPlan {
    struct Spring {
        SpringId id;
        TextId label = kNoText;
    };

    struct Inspection {
        InspectionId id;
        std::int32_t day = 0;
        std::int32_t engineRaces = 0;
    };

    struct Sitting {
        SittingId id;
        std::uint32_t inspection = 0;
        TextId tester = kNoText;
        TextId inspector = kNoText;
        std::int32_t milliCelsius = 0;
    };

    /// A row of ExchangeInput::readings that is new.
    struct Reading {
        std::uint32_t row = 0;
        std::uint32_t sitting = 0;
        std::uint32_t spring = 0;
        std::int32_t hit = 1;
    };

    TextId name = kNoText;
    EngineId id; ///< null: to be made with defaults
    std::vector<Spring> springs;
    std::vector<Inspection> inspections;
    std::vector<Sitting> sittings;
    std::vector<Reading> readings;
    std::vector<std::uint32_t> races; ///< rows of ExchangeInput::races that are new
    ImportReport report;              ///< of this engine alone

    [[nodiscard]] bool changesNothing() const { return readings.empty() && races.empty(); }
};

} // namespace coilbook
