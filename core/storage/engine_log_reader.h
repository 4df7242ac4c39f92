#pragma once

#include "core/domain/engine_log.h"
#include "core/storage/connection.h"

#include <vector>

namespace coilbook::storage {

/// One line per engine, by name; touches no reading.
[[nodiscard]] Result<std::vector<EngineSummary>> readEngines(const Connection& connection);

/// All testers, by name.
[[nodiscard]] Result<std::vector<Tester>> readTesters(const Connection& connection);

/// Those of all testers, by day.
[[nodiscard]] Result<std::vector<Calibration>> readCalibrations(const Connection& connection);
[[nodiscard]] Result<std::vector<RepeatabilityStudy>> readStudies(const Connection& connection);

/// An engine without its readings, springs, decisions and amendments: what the rules of most
/// changes need. LogbookFault::UnknownEngine if it is not there.
[[nodiscard]] Result<EngineLog> readOutline(const Connection& connection, const EngineId& engine);

/// The springs that have a reading or a fitting in an engine.
[[nodiscard]] Result<std::vector<Spring>> readSprings(const Connection& connection,
                                                      const EngineId& engine);

/// The engines in which a spring has a reading or a fitting. Looks through all readings.
[[nodiscard]] Result<std::vector<EngineId>> readEnginesOf(const Connection& connection,
                                                          const SpringId& spring);

/// The readings of one inspection in order of arrival.
[[nodiscard]] Result<std::vector<Reading>> readReadings(const Connection& connection,
                                                        const InspectionId& inspection);

/// An inspection with its sittings, readings and their springs.
[[nodiscard]] Result<EngineLog> readInspectionLog(const Connection& connection,
                                                  const Inspection& inspection);

/// Everything of one engine.
[[nodiscard]] Result<EngineLog> readEngineLog(const Connection& connection, const EngineId& engine);

} // namespace coilbook::storage
