#include "core/domain/log_rules.h"
#include "core/storage/change_applier.h"

namespace coilbook::storage {

// Calibrations and repeatability studies.

Result<void> ChangeApplier::checkFacts(const Calibration& calibration) const {
    return checkDay(calibration.calibratedOn, m_clock.today()).and_then([&] {
        return checkCalibration(calibration);
    });
}

Result<void> ChangeApplier::checkFacts(const RepeatabilityStudy& study) const {
    return checkDay(study.studiedOn, m_clock.today()).and_then([&] { return checkStudy(study); });
}

template <class Record>
Result<void> ChangeApplier::addFacts(const Record& record) const {
    const Result<bool> there = isStored(record);
    if (!there) {
        return tl::unexpected(there.error());
    }
    if (*there) {
        return {};
    }
    return checkFacts(record).and_then([&] { return insert(m_connection, record); });
}

template <class Record>
Result<void> ChangeApplier::amendFacts(const Record& record, const Authorship& author) const {
    const Result<Record> before = asStored<Record>(record.id);
    if (!before) {
        return tl::unexpected(before.error());
    }
    if (before->tester != record.tester) {
        return fail(LogbookFault::NothingToAmend);
    }
    return checkFacts(record).and_then([&] { return amendTo(*before, record, author); });
}

Result<void> ChangeApplier::operator()(const AddCalibration& change) const {
    return addFacts(change.calibration);
}

Result<void> ChangeApplier::operator()(const AmendCalibration& change) const {
    return amendFacts(change.calibration, change.author);
}

Result<void> ChangeApplier::operator()(const AddStudy& change) const {
    return addFacts(change.study);
}

Result<void> ChangeApplier::operator()(const AmendStudy& change) const {
    return amendFacts(change.study, change.author);
}

} // namespace coilbook::storage
