#include "core/testers/calibration_picture.h"

#include "core/statistics/distributions.h"
#include "core/testers/tester_curve.h"

namespace coilbook {

namespace {

constexpr int kCurvePoints = 41;
constexpr double kUpperOfBand = 0.975;
constexpr double kClearly = 0.01;

CalibrationPicture::CurvePoint curvePoint(const statistics::PolynomialFit& fit,
                                          const std::optional<double>& t, double x) {
    CalibrationPicture::CurvePoint point;
    point.reference = Force::poundsForce(x);
    point.error = Force::poundsForce(fit.at(x) - x);
    const std::optional<double> se = fit.singleSe(x);
    if (t && se) {
        point.low95 = point.error - Force::poundsForce(*t * *se);
        point.high95 = point.error + Force::poundsForce(*t * *se);
    }
    return point;
}

} // namespace

CalibrationPicture pictureOf(const Calibration& calibration) {
    CalibrationPicture picture;
    const std::optional<TesterCurve> curve = TesterCurve::of(calibration);
    std::vector<double> references;
    std::vector<double> indications;
    for (const CalibrationPoint& point : calibration.points) {
        const Force reference = point.reference.force();
        const Force indication = point.indication.force();
        references.push_back(reference.inPoundsForce());
        indications.push_back(indication.inPoundsForce());
        const Force expected =
            curve ? Force::poundsForce(curve->fit().at(references.back())) : indication;
        picture.points.push_back({reference, indication - reference, indication - expected});
    }
    if (!curve) {
        return picture;
    }
    const statistics::PolynomialFit& fit = curve->fit();
    const auto t =
        statistics::studentTQuantile(kUpperOfBand, static_cast<double>(fit.degreesOfFreedom()));
    for (int i = 0; i < kCurvePoints; ++i) {
        const double share = static_cast<double>(i) / (kCurvePoints - 1);
        picture.curve.push_back(
            curvePoint(fit, t, fit.lowestX() + share * (fit.highestX() - fit.lowestX())));
    }
    if (const std::optional<double> sd = fit.residualSd()) {
        picture.scatter = Force::poundsForce(*sd);
    }
    const auto lack = statistics::lackOfFit(fit, references, indications);
    picture.curveDoesNotFit = lack && lack->pValue < kClearly;
    return picture;
}

} // namespace coilbook
