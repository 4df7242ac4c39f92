#pragma once

#include "core/units/typed_force.h"

#include <QString>
#include <QStringView>

#include <array>
#include <optional>
#include <variant>

namespace coilbook {

/// Grades of dial gauges by ASME B40.100, finest first.
enum class GaugeGrade { FourA, ThreeA, TwoA, OneA, A, B, C, D };

/// Permitted error of a grade in percent of span.
struct GradeRow {
    GaugeGrade grade = GaugeGrade::A;
    const char* name = "";
    double lowerQuarter = 0.0;
    double middleHalf = 0.0;
    double upperQuarter = 0.0;
};

/// ASME B40.100-2005, accuracy of Bourdon and like gauges; friction is not part of it. A and B are
/// seen in print (the 2-1-2 and 3-2-3 patterns); 4A to 1A, C and D are from memory.
inline constexpr std::array<GradeRow, 8> kGradeRows{{
    {GaugeGrade::FourA, "4A", 0.1, 0.1, 0.1},
    {GaugeGrade::ThreeA, "3A", 0.25, 0.25, 0.25},
    {GaugeGrade::TwoA, "2A", 0.5, 0.5, 0.5},
    {GaugeGrade::OneA, "1A", 1.0, 1.0, 1.0},
    {GaugeGrade::A, "A", 2.0, 1.0, 2.0},
    {GaugeGrade::B, "B", 3.0, 2.0, 3.0},
    {GaugeGrade::C, "C", 4.0, 3.0, 4.0},
    {GaugeGrade::D, "D", 5.0, 5.0, 5.0},
}};

/// A percentage as typed, in thousandths of a percent: above 0, at most 100 %.
struct Percentage {
    static constexpr int kMost = 100'000;

    int thousandths = 0;

    [[nodiscard]] double share() const { return thousandths / 100'000.0; }

    bool operator==(const Percentage&) const = default;
};

struct PercentOfSpan {
    Percentage percent;
    bool operator==(const PercentOfSpan&) const = default;
};

struct PercentOfReading {
    Percentage percent;
    bool operator==(const PercentOfReading&) const = default;
};

/// How far a tester may be off, as its maker says it: by grade, in percent, or as a force.
using TesterAccuracy = std::variant<GaugeGrade, PercentOfSpan, PercentOfReading, TypedForce>;

/// The error that `accuracy` permits at the force `at` (either way); nothing for a grade or a
/// percentage of span without a `span` (the range: testers begin at 0).
[[nodiscard]] std::optional<Force> permittedError(const TesterAccuracy& accuracy, Force at,
                                                  const std::optional<TypedForce>& span);

/// `grade 2A`, `1.5 % of span`, `1 % of reading`, `2 lbf`: what the logbook stores, and back.
[[nodiscard]] QString accuracyToText(const TesterAccuracy& accuracy);
[[nodiscard]] std::optional<TesterAccuracy> accuracyFromText(QStringView text);

/// A percentage typed with `.` or `,` and up to three decimals; nothing for anything else.
[[nodiscard]] std::optional<Percentage> percentageFromText(QStringView text);
[[nodiscard]] QString percentageToText(const Percentage& percentage); ///< `1.5`

} // namespace coilbook
