#pragma once

#include "core/domain/ids.h"
#include "core/support/result.h"
#include "core/units/typed_force.h"

#include <QDate>
#include <QString>

#include <optional>
#include <vector>

namespace coilbook {

/// One line of a calibration: a known force, and what the tester showed under it.
struct CalibrationPoint {
    TypedForce reference{0, 0, ForceUnit::PoundForce};
    TypedForce indication{0, 0, ForceUnit::PoundForce};

    bool operator==(const CalibrationPoint&) const = default;
};

/// A calibration of a tester. A withdrawn one is kept and counts no longer (undone).
struct Calibration {
    CalibrationId id;
    TesterId tester;
    QDate calibratedOn;
    QString by;
    QString certificate; ///< its number or text, as the certificate has it
    QDate dueOn;         ///< null: no due date
    int degree = 1;      ///< of the curve through the table: 1 or 2
    ForceUnit unit = ForceUnit::PoundForce;
    std::vector<CalibrationPoint> points; ///< all in `unit`, in the order of the certificate
    bool withdrawn = false;

    bool operator==(const Calibration&) const = default;
};

/// `20:20.5 40:41`: reference and indication of each point, as the logbook stores them.
[[nodiscard]] QString pointsToText(const std::vector<CalibrationPoint>& points);
/// Nothing for text that is no such table.
[[nodiscard]] std::optional<std::vector<CalibrationPoint>> pointsFromText(QStringView text,
                                                                          ForceUnit unit);

/// CalibrationTooShort unless the table has more different reference forces than its degree,
/// CalibrationNotRising unless it shows more under its largest force than under its smallest,
/// ReadingOutOfBounds for a point of the other unit or beyond a reading's bounds (0 is allowed),
/// CalibrationDueBefore for a due date that is not after the calibration.
[[nodiscard]] Result<void> checkCalibration(const Calibration& calibration);

/// The one that corrects what `tester` read on `day`: the newest in force done by then; before the
/// first one that one, which found the tester as it was. Null if there is none.
[[nodiscard]] const Calibration* calibrationFor(const std::vector<Calibration>& calibrations,
                                                const TesterId& tester, const QDate& day);

/// The newest in force of `tester` done by `day`; null if there is none.
[[nodiscard]] const Calibration* newestCalibration(const std::vector<Calibration>& calibrations,
                                                   const TesterId& tester, const QDate& day);

/// Whether a tester last calibrated so should have been calibrated again by `day`.
[[nodiscard]] inline bool isOverdue(const Calibration& calibration, const QDate& day) {
    return calibration.dueOn.isValid() && calibration.dueOn < day;
}

} // namespace coilbook
