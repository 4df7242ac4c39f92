// Any bytes as an exchange file: as records, and as the rows of an import.

#include "core/exchange/csv_reader.h"
#include "core/exchange/exchange_parser.h"
#include "core/wording/wording.h"
#include "tests/fuzz/target.h"
#include "tests/support/fixed_clock.h"

namespace coilbook {
namespace {

/// Whatever the file holds, the reader comes to an end, and lines never go back.
void readRecords(const QString& path, std::size_t size) {
    CsvReader reader(path);
    qint64 line = 0;
    for (std::size_t records = 0;; ++records) {
        fuzz::expect(records <= size + 1, "a record or fault takes at least one byte");
        const CsvReader::Outcome outcome = reader.next();
        if (outcome == CsvReader::Outcome::End) {
            return;
        }
        if (outcome == CsvReader::Outcome::Fault) {
            if (reader.fault().isFatal) {
                return;
            }
            continue;
        }
        fuzz::expect(reader.line() > line, "each record starts on a later line");
        line = reader.line();
        fuzz::expect(!reader.fields().empty(), "a record has a field");
        std::size_t length = 0;
        for (const std::string_view field : reader.fields()) {
            length += field.size();
        }
        fuzz::expect(length <= size, "fields are no longer than the file");
    }
}

/// What comes through as a row keeps what the contract says of its cells.
void readRows(const QString& path) {
    const testing::FixedClock clock(QDate(2026, 5, 2));
    ExchangeInput input;
    FaultLog faults;
    fuzz::expect(readExchangeFiles({path}, clock, {}, input, faults), "nobody stopped it");
    if (!faults.isEmpty()) {
        fuzz::expectPlain(wording::line(faults.first()));
    }
    for (const ReadingRow& row : input.readings) {
        fuzz::expect(row.value().isWithinBounds(), "a reading is within bounds");
        fuzz::expect(row.inspectedOn() <= clock.today().addDays(1), "no day after tomorrow");
        fuzz::expect(row.engine != kNoText && row.spring != kNoText, "names are given");
    }
    for (const RaceRow& row : input.races) {
        fuzz::expect(row.number >= 1 && row.engine != kNoText, "a race has an engine and a number");
    }
}

} // namespace
} // namespace coilbook

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    using namespace coilbook;
    const QString path = fuzz::writeInput("input.csv", data, size);
    readRecords(path, size);
    readRows(path);
    return 0;
}
