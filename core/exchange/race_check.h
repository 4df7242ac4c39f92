#pragma once

#include "core/domain/engine_log.h"
#include "core/exchange/engine_check.h"

namespace coilbook {

constexpr std::uint32_t kNoRow = UINT32_MAX;

/// Checks the race rows of one engine against each other and against the logbook, and adds those
/// that are new to the plan.
void checkRaces(const ExchangeInput& input, RowFaults& faults, const EngineRows& rows,
                const EngineLog& stored, ImportPlan& plan);

/// Over the dates of an engine its count of races never falls, running and level changes included,
/// and race n is not dated after an inspection that counts n or more. `firstRows` holds the first
/// reading row of each inspection of the plan, kNoRow where it has none.
void checkCourse(const ExchangeInput& input, RowFaults& faults, const EngineLog& stored,
                 const std::vector<std::uint32_t>& firstRows, const ImportPlan& plan);

} // namespace coilbook
