#include "core/testers/tester_curve.h"

#include <algorithm>
#include <vector>

namespace coilbook {

std::optional<TesterCurve> TesterCurve::of(const Calibration& calibration) {
    std::vector<double> references;
    std::vector<double> indications;
    for (const CalibrationPoint& point : calibration.points) {
        references.push_back(point.reference.force().inPoundsForce());
        indications.push_back(point.indication.force().inPoundsForce());
    }
    const auto fit = statistics::PolynomialFit::of(references, indications, calibration.degree);
    // A parabola that turns inside the table would give two forces for one reading.
    const bool rises =
        fit && fit->slopeAt(fit->lowestX()) > 0.0 && fit->slopeAt(fit->highestX()) > 0.0;
    return rises ? std::optional(TesterCurve(*fit)) : std::nullopt;
}

double TesterCurve::withinTable(Force indication) const {
    return std::clamp(indication.inPoundsForce(), m_fit.at(m_fit.lowestX()),
                      m_fit.at(m_fit.highestX()));
}

Force TesterCurve::corrected(Force indication) const {
    const double within = withinTable(indication);
    const std::optional<double> force = m_fit.inverseAt(within);
    return force ? indication + Force::poundsForce(*force - within) : indication;
}

std::optional<Force> TesterCurve::uncertainty(Force indication) const {
    const auto inverse = m_fit.inverse(withinTable(indication));
    return inverse ? std::optional(Force::poundsForce(inverse->standardUncertainty)) : std::nullopt;
}

bool TesterCurve::covers(Force indication) const {
    return withinTable(indication) == indication.inPoundsForce();
}

} // namespace coilbook
