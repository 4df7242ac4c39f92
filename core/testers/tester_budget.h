#pragma once

#include "core/domain/calibration.h"
#include "core/domain/repeatability_study.h"
#include "core/domain/tester.h"
#include "core/testers/study_result.h"
#include "core/testers/tester_curve.h"
#include "core/units/force.h"

#include <optional>
#include <vector>

namespace coilbook {

/// What makes a reading uncertain.
enum class BudgetPart {
    Graduation,  ///< reading to a division: rectangular, division/√12
    Accuracy,    ///< what the maker permits: rectangular, error/√3
    Calibration, ///< instead of the accuracy where the readings are corrected
    Repeatability,
    Persons,
    Temperature, ///< of the spring, as far as it is not known: rectangular
};

struct BudgetLine {
    BudgetPart part = BudgetPart::Graduation;
    Force standard;                         ///< standard uncertainty
    std::optional<double> degreesOfFreedom; ///< empty: as good as known exactly
};

/// How a tester stands to the loss that it shall tell.
enum class Suitability {
    Unknown,    ///< neither its accuracy nor a calibration is known
    CannotTell, ///< it may be off by the whole limit
    Rough,      ///< below 4 to 1
    FourToOne,  ///< the usual rule: ANSI/NCSL Z540 and MIL-STD-45662A, a quarter of the tolerance
    TenToOne,   ///< the older rule for gauges: MIL-STD-120, from memory
};

/// The uncertainty of a tester's readings by JCGM 100:2008 (GUM), and what it means for a limit.
struct TesterBudget {
    Force at; ///< the pressure it is made for
    bool atMidScale = false;
    Force limit;
    std::vector<BudgetLine> lines;   ///< what is known
    std::vector<BudgetPart> missing; ///< what is not, and would count
    std::optional<Force> canBeOffBy; ///< at that pressure, by its accuracy or calibration (95 %)
    Force reading;                   ///< combined standard uncertainty of one reading
    Force loss;                      ///< of a difference of two; see budgetOf()
    Force expandedLoss;              ///< with its coverage factor, 95 %
    std::optional<double> degreesOfFreedom; ///< effective; empty: infinite
    double ratio = 0.0;           ///< limit to expandedLoss, which is what the rules compare
    double ratioToStandard = 0.0; ///< limit to loss
    Suitability suitability = Suitability::Unknown;
};

struct BudgetBasis {
    Tester tester;
    std::optional<TesterCurve> curve; ///< of the calibration that corrects it now
    std::optional<StudyResult> study; ///< its newest
    double temperatureWithin = 0.0;   ///< ± °C within which the springs' temperature is known
    int softeningPpm = 0;             ///< of the springs, see spring_temperature.h
};

/// What is on record of a tester: its correction of today, its newest study, springs of spring
/// steel whose temperature is known where the readings are brought to 20 °C.
[[nodiscard]] BudgetBasis basisOf(const Tester& tester,
                                  const std::vector<Calibration>& calibrations,
                                  const std::vector<RepeatabilityStudy>& studies,
                                  bool correctsTemperature);

/// ± °C: how well a noted engine temperature tells the springs', and how far two inspections
/// without one may differ. Our own assumptions, no source.
inline constexpr double kNotedTemperatureWithin = 5.0;
inline constexpr double kUnknownTemperatureWithin = 15.0;

/// The pressure that a tester is judged at: the middle of its scale, or 120 lbf where its range is
/// not known (common practice, no source: a usual seat pressure).
[[nodiscard]] Force judgingPressure(const Tester& tester);

/// The two readings of a loss are taken as independent, also in what the tester itself is off by:
/// the careful side, since a tester's own error is partly the same in both and cancels.
[[nodiscard]] TesterBudget budgetOf(const BudgetBasis& basis, Force limit);

} // namespace coilbook
