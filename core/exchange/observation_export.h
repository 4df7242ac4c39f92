#pragma once

#include "core/domain/engine_log.h"
#include "core/exchange/csv_writer.h"
#include "core/exchange/exchange_columns.h"

namespace coilbook {

/// The first record of a file of this kind: every column there is.
void writeHeader(CsvWriter& csv, ExchangeKind kind);

/// The races of one engine, by date, then number.
void writeRaces(CsvWriter& csv, const EngineLog& log);

/// The hits of one engine in their present form: by date, count of races, place, order of fitting
/// (the spring taken out before the one put in) and hit.
void writeReadings(CsvWriter& csv, const EngineLog& log);

} // namespace coilbook
