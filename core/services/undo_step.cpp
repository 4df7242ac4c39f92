#include "core/services/undo_step.h"

#include "core/wording/undo_texts.h"

#include <algorithm>

namespace coilbook {

namespace {

/// The row now in force of the chain that `reading` belongs to.
ReadingId newestOf(const Reading& reading, const EngineLog& now) {
    ReadingId newest = reading.id;
    for (bool longer = true; longer;) {
        longer = false;
        for (const Reading& row : now.readings) {
            if (row.amends == newest) {
                newest = row.id;
                longer = true;
            }
        }
    }
    return newest;
}

/// A further row for a reading: its value struck, or in force again.
AmendReading furtherRow(Reading reading, ReadingKind kind, const Authorship& author,
                        const EngineLog& now) {
    reading.amends = newestOf(reading, now);
    reading.id = ReadingId::make();
    reading.kind = kind;
    reading.author = author;
    return {reading};
}

/// The record of that id among `records`, if it is there.
template <class Record>
std::optional<Record> recordOf(const std::vector<Record>& records, const Record& wanted) {
    const auto found = std::find_if(records.begin(), records.end(), [&](const Record& candidate) {
        return candidate.id == wanted.id;
    });
    return found == records.end() ? std::nullopt : std::optional(*found);
}

std::vector<Change> furtherRows(const std::vector<Reading>& readings, ReadingKind kind,
                                const Authorship& author, const EngineLog& now) {
    std::vector<Change> changes;
    for (const Reading& reading : readings) {
        changes.emplace_back(furtherRow(reading, kind, author, now));
    }
    return changes;
}

class StepMaker {
public:
    explicit StepMaker(const EngineLog& before)
        : m_before(before) {}

    std::optional<UndoStep> operator()(const AmendEngine& change) const {
        return amended(change, &AmendEngine::engine, std::optional(m_before.engine),
                       wording::undoEngine());
    }

    std::optional<UndoStep> operator()(const AmendRace& change) const {
        return amended(change, &AmendRace::race, recordOf(m_before.races, change.race),
                       wording::undoRace(change.race.number));
    }

    std::optional<UndoStep> operator()(const AmendInspection& change) const {
        return amended(change, &AmendInspection::inspection,
                       recordOf(m_before.inspections, change.inspection),
                       wording::undoInspection(change.inspection.inspectedOn));
    }

    std::optional<UndoStep> operator()(const AmendSitting& change) const {
        return amended(change, &AmendSitting::sitting, recordOf(m_before.sittings, change.sitting),
                       wording::undoSitting());
    }

    std::optional<UndoStep> operator()(const AmendSpring& change) const {
        return amended(change, &AmendSpring::spring, recordOf(m_before.springs, change.spring),
                       wording::undoSpring(change.spring.label));
    }

    std::optional<UndoStep> operator()(const AmendTester& change) const {
        return amended(change, &AmendTester::tester, recordOf(m_before.testers, change.tester),
                       wording::undoTester(change.tester.name));
    }

    std::optional<UndoStep> operator()(const AddCalibration& change) const {
        return added<AmendCalibration>(&AmendCalibration::calibration, change.calibration,
                                       wording::undoCalibration(change.calibration.calibratedOn));
    }

    std::optional<UndoStep> operator()(const AmendCalibration& change) const {
        return amended(change, &AmendCalibration::calibration,
                       recordOf(m_before.calibrations, change.calibration),
                       wording::undoCalibration(change.calibration.calibratedOn));
    }

    std::optional<UndoStep> operator()(const AddStudy& change) const {
        return added<AmendStudy>(&AmendStudy::study, change.study,
                                 wording::undoStudy(change.study.studiedOn));
    }

    std::optional<UndoStep> operator()(const AmendStudy& change) const {
        return amended(change, &AmendStudy::study, recordOf(m_before.studies, change.study),
                       wording::undoStudy(change.study.studiedOn));
    }

    std::optional<UndoStep> operator()(const RecordReadings& change) const {
        if (change.readings.empty()) {
            return std::nullopt;
        }
        return UndoStep{wording::undoReading(change.readings.front().place),
                        rows(change.readings, ReadingKind::Withdrawal),
                        rows(change.readings, ReadingKind::Correction)};
    }

    std::optional<UndoStep> operator()(const AmendReading& change) const {
        const auto earlier =
            std::find_if(m_before.readings.begin(), m_before.readings.end(),
                         [&](const Reading& row) { return row.id == change.reading.amends; });
        if (earlier == m_before.readings.end()) {
            return std::nullopt;
        }
        const ReadingKind earlierKind = earlier->kind == ReadingKind::Withdrawal
                                            ? ReadingKind::Withdrawal
                                            : ReadingKind::Correction;
        return UndoStep{wording::undoCorrection(change.reading.place),
                        rows({*earlier}, earlierKind), rows({change.reading}, change.reading.kind)};
    }

    std::optional<UndoStep> operator()(const FitSpring& change) const {
        const auto step = [change](ReadingKind kind, bool withdrawn) {
            return [change, kind, withdrawn](const Authorship& author, const EngineLog& now) {
                std::vector<Change> changes = furtherRows(change.baseline, kind, author, now);
                changes.emplace_back(WithdrawFitting{change.fitting.id, withdrawn, author});
                if (change.outgoing) {
                    Shelving outgoing = *change.outgoing;
                    outgoing.withdrawn = withdrawn;
                    changes.emplace_back(AmendShelving{outgoing, author});
                }
                return changes;
            };
        };
        return UndoStep{wording::undoSwap(change.fitting.place),
                        step(ReadingKind::Withdrawal, true), step(ReadingKind::Correction, false)};
    }

    std::optional<UndoStep> operator()(const WithdrawFitting& change) const {
        const auto fitting =
            std::find_if(m_before.fittings.begin(), m_before.fittings.end(),
                         [&](const Fitting& candidate) { return candidate.id == change.fitting; });
        if (fitting == m_before.fittings.end() || fitting->withdrawn == change.withdrawn) {
            return std::nullopt;
        }
        const auto step = [id = change.fitting](bool withdrawn) {
            return [id, withdrawn](const Authorship& author, const EngineLog& /*now*/) {
                return std::vector<Change>{WithdrawFitting{id, withdrawn, author}};
            };
        };
        return UndoStep{wording::undoSwap(fitting->place), step(!change.withdrawn),
                        step(change.withdrawn)};
    }

    std::optional<UndoStep> operator()(const DecideReading& change) const {
        const auto saying = [decision = change.decision](ReadingJudgement judgement) {
            return [decision, judgement](const Authorship& author, const EngineLog& /*now*/) {
                return std::vector<Change>{DecideReading{
                    {DecisionId::make(), decision.inspection, decision.spring, judgement, author}}};
            };
        };
        return UndoStep{wording::undoDecision(labelOf(change.decision.spring)),
                        saying(judgementInForce(m_before.decisions, change.decision.inspection,
                                                change.decision.spring)),
                        saying(change.decision.judgement)};
    }

    std::optional<UndoStep> operator()(const AddRunning& change) const {
        return added<AmendRunning>(&AmendRunning::running, change.running,
                                   wording::undoRunning(change.running.ranOn));
    }

    std::optional<UndoStep> operator()(const AmendRunning& change) const {
        return amended(change, &AmendRunning::running, recordOf(m_before.running, change.running),
                       wording::undoRunning(change.running.ranOn));
    }

    std::optional<UndoStep> operator()(const AddLevelChange& change) const {
        return added<AmendLevelChange>(&AmendLevelChange::change, change.change,
                                       wording::undoLevelChange(labelOf(change.change.spring)));
    }

    std::optional<UndoStep> operator()(const AmendLevelChange& change) const {
        return amended(change, &AmendLevelChange::change,
                       recordOf(m_before.levelChanges, change.change),
                       wording::undoLevelChange(labelOf(change.change.spring)));
    }

    std::optional<UndoStep> operator()(const AddPlannedRace& change) const {
        return added<AmendPlannedRace>(&AmendPlannedRace::race, change.race,
                                       wording::undoPlannedRace(change.race.plannedOn));
    }

    std::optional<UndoStep> operator()(const AmendPlannedRace& change) const {
        return amended(change, &AmendPlannedRace::race,
                       recordOf(m_before.plannedRaces, change.race),
                       wording::undoPlannedRace(change.race.plannedOn));
    }

    std::optional<UndoStep> operator()(const ShelveSpring& change) const {
        const QString label =
            change.newSpring ? change.newSpring->label : labelOf(change.shelving.spring);
        return added<AmendShelving>(&AmendShelving::shelving, change.shelving,
                                    wording::undoShelving(label));
    }

    std::optional<UndoStep> operator()(const AmendShelving& change) const {
        return amended(change, &AmendShelving::shelving,
                       recordOf(m_before.shelvings, change.shelving),
                       wording::undoShelving(labelOf(change.shelving.spring)));
    }

    /// A new engine, race, tester, inspection or sitting: its facts can be amended.
    template <class Other>
    std::optional<UndoStep> operator()(const Other& /*change*/) const {
        return std::nullopt;
    }

private:
    template <class Amend, class Record>
    static std::optional<UndoStep> amended(const Amend& change, Record Amend::*record,
                                           const std::optional<Record>& old, const QString& text) {
        if (!old || *old == change.*record) {
            return std::nullopt;
        }
        return UndoStep{text, backTo(record, *old), backTo(record, change.*record)};
    }

    /// A record that can be withdrawn.
    template <class Amend, class Record>
    static UndoStep added(Record Amend::*record, Record value, const QString& text) {
        Record withdrawn = value;
        withdrawn.withdrawn = true;
        return {text, backTo(record, withdrawn), backTo(record, value)};
    }

    template <class Amend, class Record>
    static UndoStep::Changes backTo(Record Amend::*record, const Record& value) {
        return [record, value](const Authorship& author, const EngineLog& /*now*/) {
            Amend amend;
            amend.*record = value;
            amend.author = author;
            return std::vector<Change>{amend};
        };
    }

    [[nodiscard]] QString labelOf(const SpringId& spring) const {
        const auto found =
            std::find_if(m_before.springs.begin(), m_before.springs.end(),
                         [&](const Spring& candidate) { return candidate.id == spring; });
        return found == m_before.springs.end() ? QString() : found->label;
    }

    static UndoStep::Changes rows(const std::vector<Reading>& readings, ReadingKind kind) {
        return [readings, kind](const Authorship& author, const EngineLog& now) {
            return furtherRows(readings, kind, author, now);
        };
    }

    const EngineLog& m_before;
};

} // namespace

std::optional<UndoStep> undoStepOf(const Change& change, const EngineLog& before) {
    return std::visit(StepMaker(before), change);
}

} // namespace coilbook
