#pragma once

#include "core/domain/changes.h"
#include "core/domain/engine_log.h"
#include "core/storage/amend.h"
#include "core/storage/connection.h"
#include "core/support/clock.h"

#include <vector>

namespace coilbook::storage {

/// Applies changes inside a transaction that the caller has begun. It goes in one order: check the
/// facts of the change, write, check the logbook as it stands then. A failure leaves half a change
/// behind, which the caller rolls back.
class ChangeApplier {
public:
    ChangeApplier(const Connection& connection, const Clock& clock)
        : m_connection(connection)
        , m_clock(clock) {}

    [[nodiscard]] Result<void> operator()(const AddEngine& change) const;
    [[nodiscard]] Result<void> operator()(const AmendEngine& change) const;
    [[nodiscard]] Result<void> operator()(const AddTester& change) const;
    [[nodiscard]] Result<void> operator()(const AmendTester& change) const;
    [[nodiscard]] Result<void> operator()(const AddRace& change) const;
    [[nodiscard]] Result<void> operator()(const AmendRace& change) const;
    [[nodiscard]] Result<void> operator()(const StartInspection& change) const;
    [[nodiscard]] Result<void> operator()(const StartSitting& change) const;
    [[nodiscard]] Result<void> operator()(const AmendInspection& change) const;
    [[nodiscard]] Result<void> operator()(const AmendSitting& change) const;
    [[nodiscard]] Result<void> operator()(const RecordReadings& change) const;
    [[nodiscard]] Result<void> operator()(const AmendReading& change) const;
    [[nodiscard]] Result<void> operator()(const FitSpring& change) const;
    [[nodiscard]] Result<void> operator()(const WithdrawFitting& change) const;
    [[nodiscard]] Result<void> operator()(const AmendSpring& change) const;
    [[nodiscard]] Result<void> operator()(const DecideReading& change) const;
    [[nodiscard]] Result<void> operator()(const AddRunning& change) const;
    [[nodiscard]] Result<void> operator()(const AmendRunning& change) const;
    [[nodiscard]] Result<void> operator()(const AddLevelChange& change) const;
    [[nodiscard]] Result<void> operator()(const AmendLevelChange& change) const;
    [[nodiscard]] Result<void> operator()(const AddCalibration& change) const;
    [[nodiscard]] Result<void> operator()(const AmendCalibration& change) const;
    [[nodiscard]] Result<void> operator()(const AddStudy& change) const;
    [[nodiscard]] Result<void> operator()(const AmendStudy& change) const;
    [[nodiscard]] Result<void> operator()(const AddPlannedRace& change) const;
    [[nodiscard]] Result<void> operator()(const AmendPlannedRace& change) const;
    [[nodiscard]] Result<void> operator()(const ShelveSpring& change) const;
    [[nodiscard]] Result<void> operator()(const AmendShelving& change) const;

private:
    // Parts that several changes share

    [[nodiscard]] Result<void> checkEngineName(const Engine& engine) const;
    [[nodiscard]] Result<void> checkTesterName(const Tester& tester) const;
    [[nodiscard]] Result<void> checkRace(const Race& race) const;
    [[nodiscard]] Result<void> checkInspection(const Inspection& inspection) const;
    [[nodiscard]] Result<void> checkFitting(const Fitting& fitting,
                                            const EngineLayout& layout) const;
    /// Every place in use is still there.
    [[nodiscard]] Result<void> checkPlacesInUse(const Engine& engine) const;
    /// The labels of an engine's springs, as stored.
    [[nodiscard]] Result<void> checkLabels(const EngineId& engine) const;
    [[nodiscard]] Result<void> checkFacts(const LevelChange& change) const;
    [[nodiscard]] Result<void> checkFacts(const Calibration& calibration) const;
    [[nodiscard]] Result<void> checkFacts(const RepeatabilityStudy& study) const;

    /// Calibrations and studies: what is checked is in the record itself.
    template <class Record>
    [[nodiscard]] Result<void> addFacts(const Record& record) const;
    template <class Record>
    [[nodiscard]] Result<void> amendFacts(const Record& record, const Authorship& author) const;

    [[nodiscard]] Result<void> checkFacts(const Shelving& shelving) const;
    /// Running and level changes of an engine beside its inspections, as stored.
    [[nodiscard]] Result<void> checkStoredMoments(const EngineId& engine) const;
    /// An inspection with its sittings, readings and their springs.
    [[nodiscard]] Result<EngineLog> logOf(const Inspection& inspection) const;
    /// Readings of an inspection as stored.
    [[nodiscard]] Result<void> checkStoredHits(const Inspection& inspection) const;

    [[nodiscard]] Result<void> addInspection(const Inspection& inspection) const;
    [[nodiscard]] Result<void> addReadings(const std::vector<Reading>& readings) const;

    [[nodiscard]] Result<Inspection> inspectionOf(const SittingId& sitting) const;

    /// The record as stored; LogbookFault::NothingToAmend if it is not there.
    template <class Record, class Tag>
    [[nodiscard]] Result<Record> asStored(const Id<Tag>& id) const {
        Result<std::optional<Record>> found = find<Record>(m_connection, id);
        if (!found) {
            return tl::unexpected(found.error());
        }
        if (!*found) {
            return fail(LogbookFault::NothingToAmend);
        }
        return std::move(**found);
    }

    /// Whether a record of this id is there; a change that adds it again changes nothing.
    template <class Record>
    [[nodiscard]] Result<bool> isStored(const Record& record) const {
        return find<Record>(m_connection, record.id).map([](const std::optional<Record>& found) {
            return found.has_value();
        });
    }

    /// amend() with the moment filled in.
    template <class Record>
    [[nodiscard]] Result<void> amendTo(const Record& before, const Record& after,
                                       Authorship author) const {
        if (author.at.utc.isEmpty()) {
            author.at = m_clock.now();
        }
        return amend(m_connection, before, after, author);
    }

    const Connection& m_connection;
    const Clock& m_clock;
};

} // namespace coilbook::storage
