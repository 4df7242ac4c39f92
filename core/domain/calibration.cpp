#include "core/domain/calibration.h"

#include <QStringList>

#include <algorithm>
#include <set>

namespace coilbook {

namespace {

bool isWithin(const TypedForce& force, ForceUnit unit) {
    return force.unit() == unit && (force.digits() == 0 || force.isWithinBounds());
}

} // namespace

QString pointsToText(const std::vector<CalibrationPoint>& points) {
    QStringList lines;
    for (const CalibrationPoint& point : points) {
        lines << point.reference.text() + QLatin1Char(':') + point.indication.text();
    }
    return lines.join(QLatin1Char(' '));
}

std::optional<std::vector<CalibrationPoint>> pointsFromText(QStringView text, ForceUnit unit) {
    std::vector<CalibrationPoint> points;
    for (const QStringView line : text.split(QLatin1Char(' '), Qt::SkipEmptyParts)) {
        const qsizetype colon = line.indexOf(QLatin1Char(':'));
        if (colon < 0) {
            return std::nullopt;
        }
        const auto reference = TypedForce::parse(line.left(colon), unit);
        const auto indication = TypedForce::parse(line.mid(colon + 1), unit);
        if (!reference || !indication) {
            return std::nullopt;
        }
        points.push_back({*reference, *indication});
    }
    return points;
}

Result<void> checkCalibration(const Calibration& calibration) {
    std::set<Force> references;
    for (const CalibrationPoint& point : calibration.points) {
        for (const TypedForce& force : {point.reference, point.indication}) {
            if (!isWithin(force, calibration.unit)) {
                return fail(LogbookFault::ReadingOutOfBounds, {force.text()});
            }
        }
        references.insert(point.reference.force());
    }
    if (calibration.degree < 1 || calibration.degree > 2 ||
        references.size() <= static_cast<std::size_t>(calibration.degree)) {
        return fail(LogbookFault::CalibrationTooShort, {QString::number(calibration.degree + 1)});
    }
    const auto [least, most] =
        std::minmax_element(calibration.points.begin(), calibration.points.end(),
                            [](const CalibrationPoint& a, const CalibrationPoint& b) {
                                return a.reference.force() < b.reference.force();
                            });
    if (most->indication.force() <= least->indication.force()) {
        return fail(LogbookFault::CalibrationNotRising);
    }
    if (calibration.dueOn.isValid() && calibration.dueOn <= calibration.calibratedOn) {
        return fail(LogbookFault::CalibrationDueBefore,
                    {calibration.dueOn.toString(Qt::ISODate),
                     calibration.calibratedOn.toString(Qt::ISODate)});
    }
    return {};
}

const Calibration* newestCalibration(const std::vector<Calibration>& calibrations,
                                     const TesterId& tester, const QDate& day) {
    const Calibration* newest = nullptr;
    for (const Calibration& each : calibrations) {
        const bool counts = each.tester == tester && !each.withdrawn && each.calibratedOn <= day;
        if (counts && (newest == nullptr || newest->calibratedOn < each.calibratedOn ||
                       (newest->calibratedOn == each.calibratedOn && newest->id < each.id))) {
            newest = &each;
        }
    }
    return newest;
}

const Calibration* calibrationFor(const std::vector<Calibration>& calibrations,
                                  const TesterId& tester, const QDate& day) {
    if (const Calibration* newest = newestCalibration(calibrations, tester, day)) {
        return newest;
    }
    const Calibration* first = nullptr;
    for (const Calibration& each : calibrations) {
        if (each.tester == tester && !each.withdrawn &&
            (first == nullptr || each.calibratedOn < first->calibratedOn)) {
            first = &each;
        }
    }
    return first;
}

} // namespace coilbook
