#include "core/testers/tester_budget.h"

#include "core/statistics/distributions.h"
#include "core/statistics/uncertainty.h"
#include "core/testers/spring_temperature.h"

#include <cmath>
#include <numbers>

namespace coilbook {

namespace {

constexpr double kUsualSeatPressureLbf = 120.0;
constexpr double kFourToOne = 4.0;
constexpr double kTenToOne = 10.0;
constexpr double kUpper95 = 0.975;

class BudgetMaker {
public:
    BudgetMaker(const BudgetBasis& basis, Force limit)
        : m_basis(basis) {
        m_budget.at = judgingPressure(basis.tester);
        m_budget.atMidScale = basis.tester.range.has_value();
        m_budget.limit = limit;
    }

    TesterBudget make() {
        addGraduation();
        addTesterError();
        addStudy();
        addTemperature();
        combine();
        m_budget.suitability = suitability();
        return std::move(m_budget);
    }

private:
    void add(BudgetPart part, double lbf, std::optional<double> degreesOfFreedom = {}) {
        m_budget.lines.push_back({part, Force::poundsForce(lbf), degreesOfFreedom});
    }

    void addGraduation() {
        if (const auto& step = m_basis.tester.graduation) {
            add(BudgetPart::Graduation,
                statistics::resolutionUncertainty(step->force().inPoundsForce()));
        } else {
            m_budget.missing.push_back(BudgetPart::Graduation);
        }
    }

    void addTesterError() {
        if (addCalibration()) {
            return;
        }
        const Tester& tester = m_basis.tester;
        const std::optional<Force> error =
            tester.accuracy ? permittedError(*tester.accuracy, m_budget.at, tester.range)
                            : std::nullopt;
        if (!error) {
            m_budget.missing.push_back(BudgetPart::Accuracy);
            return;
        }
        m_budget.canBeOffBy = error;
        add(BudgetPart::Accuracy, statistics::rectangularUncertainty(error->inPoundsForce()));
    }

    bool addCalibration() {
        if (!m_basis.tester.corrects || !m_basis.curve) {
            return false;
        }
        const std::optional<Force> uncertainty = m_basis.curve->uncertainty(m_budget.at);
        if (!uncertainty) {
            return false;
        }
        const double degrees = m_basis.curve->degreesOfFreedom();
        add(BudgetPart::Calibration, uncertainty->inPoundsForce(), degrees);
        if (const auto t = statistics::studentTQuantile(kUpper95, degrees)) {
            m_budget.canBeOffBy = *uncertainty * *t;
        }
        return true;
    }

    void addStudy() {
        if (!m_basis.study) {
            m_budget.missing.push_back(BudgetPart::Repeatability);
            return;
        }
        add(BudgetPart::Repeatability, m_basis.study->tester.inPoundsForce(),
            m_basis.study->testerDegreesOfFreedom);
        if (!m_basis.study->onePerson) {
            add(BudgetPart::Persons, m_basis.study->persons.inPoundsForce());
        }
    }

    void addTemperature() {
        constexpr double kMillionth = 1e-6;
        const double off = m_budget.at.inPoundsForce() * m_basis.softeningPpm * kMillionth *
                           m_basis.temperatureWithin;
        if (off > 0.0) {
            add(BudgetPart::Temperature, statistics::rectangularUncertainty(off));
        }
    }

    void combine() {
        std::vector<statistics::UncertaintyComponent> components;
        for (const BudgetLine& line : m_budget.lines) {
            components.push_back({line.standard.inPoundsForce(), line.degreesOfFreedom});
        }
        const auto combined = statistics::combineUncertainties(components);
        if (!combined) {
            return;
        }
        // Twice the same sum: the effective degrees of freedom stay what they are.
        m_budget.reading = Force::poundsForce(combined->standard);
        m_budget.loss = m_budget.reading * std::numbers::sqrt2;
        m_budget.expandedLoss = m_budget.loss * combined->coverageFactor;
        m_budget.degreesOfFreedom = combined->degreesOfFreedom;
        if (m_budget.loss > Force()) {
            m_budget.ratio = m_budget.limit / m_budget.expandedLoss;
            m_budget.ratioToStandard = m_budget.limit / m_budget.loss;
        }
    }

    [[nodiscard]] Suitability suitability() const {
        if (!m_budget.canBeOffBy || m_budget.ratio <= 0.0) {
            return Suitability::Unknown;
        }
        if (*m_budget.canBeOffBy >= m_budget.limit || m_budget.ratio < 1.0) {
            return Suitability::CannotTell;
        }
        if (m_budget.ratio < kFourToOne) {
            return Suitability::Rough;
        }
        return m_budget.ratio < kTenToOne ? Suitability::FourToOne : Suitability::TenToOne;
    }

    const BudgetBasis& m_basis;
    TesterBudget m_budget;
};

} // namespace

BudgetBasis basisOf(const Tester& tester, const std::vector<Calibration>& calibrations,
                    const std::vector<RepeatabilityStudy>& studies, bool correctsTemperature) {
    BudgetBasis basis;
    basis.tester = tester;
    constexpr int kFarYear = 9999;
    if (const Calibration* newest =
            newestCalibration(calibrations, tester.id, QDate(kFarYear, 1, 1))) {
        basis.curve = TesterCurve::of(*newest);
    }
    if (const RepeatabilityStudy* study = newestStudy(studies, tester.id)) {
        basis.study = resultOf(*study);
    }
    basis.temperatureWithin =
        correctsTemperature ? kNotedTemperatureWithin : kUnknownTemperatureWithin;
    basis.softeningPpm = kSofteningOfSpringSteelPpm;
    return basis;
}

Force judgingPressure(const Tester& tester) {
    return tester.range ? tester.range->force() / 2.0 : Force::poundsForce(kUsualSeatPressureLbf);
}

TesterBudget budgetOf(const BudgetBasis& basis, Force limit) {
    return BudgetMaker(basis, limit).make();
}

} // namespace coilbook
