#pragma once

#include "core/domain/engine_log.h"
#include "core/exchange/import_plan.h"
#include "core/exchange/original_facts.h"
#include "core/exchange/row_faults.h"
#include "core/exchange/stored_hits.h"

#include <map>
#include <tuple>
#include <unordered_map>
#include <vector>

namespace coilbook {

/// The rows of one engine, by index in ExchangeInput, in the order of files and lines.
struct EngineRows {
    TextId engine = kNoText;
    std::vector<std::uint32_t> readings;
    std::vector<std::uint32_t> races;
};

/// Checks the rows of one engine against each other and against what the logbook holds, and plans
/// what is new. Everything wrong goes to the fault log; the plan then means nothing.
class EngineCheck {
public:
    /// `stored` is an empty log with the default layout for an engine that is not stored.
    EngineCheck(ExchangeInput& input, FaultLog& faults, const EngineRows& rows,
                const EngineLog& stored, bool isStored);

    [[nodiscard]] ImportPlan run();

private:
    /// A row with the records it belongs to, by index in the plan.
    struct PlacedRow {
        std::uint32_t inspection;
        std::uint32_t spring;
        std::int32_t hit;
        std::uint32_t row;

        auto operator<=>(const PlacedRow&) const = default;
    };

    using Group = std::span<const PlacedRow>;

    void takeStored();
    void checkPlaces();
    [[nodiscard]] std::vector<PlacedRow> placeRows();
    [[nodiscard]] std::uint32_t springOf(std::uint32_t row);
    [[nodiscard]] std::uint32_t inspectionOf(std::uint32_t row);
    [[nodiscard]] std::uint32_t sittingOf(const PlacedRow& placed);

    void checkGroup(Group group);
    [[nodiscard]] bool isEvenlyNumbered(Group group);
    [[nodiscard]] bool standsAtOnePlace(Group group, const std::vector<const StoredHit*>& stored);
    void matchNumbered(Group group, const std::vector<const StoredHit*>& stored);
    void matchUnnumbered(Group group, const std::vector<const StoredHit*>& stored);
    [[nodiscard]] bool isKnown(const ReadingRow& row, const StoredHit& hit,
                               const PlacedRow& placed);
    void contradict(const ReadingRow& row, const StoredHit& hit);
    void add(const PlacedRow& placed, std::int32_t hit);

    void findMovedBaselines();

    const ReadingRow& readingAt(std::uint32_t row) const { return m_input.readings[row]; }

    ExchangeInput& m_input;
    RowFaults m_faults;
    const EngineRows& m_rows;
    const EngineLog& m_stored;
    OriginalFacts m_originals;
    StoredHits m_hits;
    ImportPlan m_plan;
    std::unordered_map<TextId, std::uint32_t> m_springs;
    std::unordered_map<QString, TextId> m_labelsByCase;
    std::map<std::pair<std::int32_t, std::int32_t>, std::uint32_t> m_inspections;
    std::vector<std::uint32_t> m_firstRows; ///< of each inspection of the plan
    std::map<std::tuple<std::uint32_t, TextId, TextId, std::int32_t>, std::uint32_t> m_sittings;
};

} // namespace coilbook
