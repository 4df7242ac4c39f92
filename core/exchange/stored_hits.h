#pragma once

#include "core/domain/engine_log.h"
#include "core/exchange/exchange_rows.h"
#include "core/exchange/original_facts.h"

#include <optional>
#include <vector>

namespace coilbook {

/// One form of a stored hit, in the terms of a row of readings.csv.
struct HitForm {
    std::size_t inspection = 0; ///< index in EngineLog::inspections
    std::size_t spring = 0;     ///< index in EngineLog::springs
    Place place;
    int hit = 1;
    bool retest = false;
    TypedForce value{0, 0, ForceUnit::PoundForce};
    TextId note = kNoText;
    TextId tester = kNoText;
    TextId inspector = kNoText;
    std::int32_t milliCelsius = ReadingRow::kNoTemperature;

    /// The first column in which a row of the same inspection, spring and hit says something else;
    /// nothing if there is none. A cell that was left out says nothing, but for `retest`. Forces in
    /// one unit are compared by value, so 121.5 does not contradict 121.50.
    [[nodiscard]] std::optional<Column> differenceTo(const ReadingRow& row) const;
};

struct StoredHit {
    HitForm current;
    HitForm original;
    bool isAmended = false;
    bool isWithdrawn = false; ///< `current` is what was withdrawn
};

/// The hits that the logbook holds of one engine, to be found by inspection, spring and hit, both
/// as they are now and as they were first written.
class StoredHits {
public:
    StoredHits() = default;
    StoredHits(const EngineLog& log, const OriginalFacts& originals, TextPool& texts);

    /// Those that belong to one inspection of one spring now or did so first, by hit number.
    [[nodiscard]] std::vector<const StoredHit*> of(std::size_t inspection,
                                                   std::size_t spring) const;

    [[nodiscard]] const std::vector<StoredHit>& all() const { return m_hits; }

private:
    struct Key {
        std::size_t inspection;
        std::size_t spring;
        int hit;
        std::size_t index; ///< in m_hits

        auto operator<=>(const Key&) const = default;
    };

    std::vector<StoredHit> m_hits;
    std::vector<Key> m_keys; ///< sorted
};

/// As a row would have to write a value: `117.5 lbf`.
[[nodiscard]] QString textWithUnit(const TypedForce& value);

} // namespace coilbook
