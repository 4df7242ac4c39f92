#pragma once

#include "core/units/force.h"

#include <QDate>
#include <QLocale>
#include <QString>

namespace coilbook {

/// How quantities are written for people: the user's unit and locale. Forces have one decimal in
/// lbf and none in N; a minus sign is U+2212.
class Quantities {
public:
    explicit Quantities(ForceUnit unit = ForceUnit::PoundForce, const QLocale& locale = QLocale());

    [[nodiscard]] ForceUnit unit() const { return m_unit; }

    [[nodiscard]] QString force(Force value) const;          ///< `117.3`
    [[nodiscard]] QString forceWithUnit(Force value) const;  ///< `117.3 lbf`
    [[nodiscard]] QString rate(Force perRace) const;         ///< `0.42`, one decimal more
    [[nodiscard]] QString rateWithUnit(Force perRace) const; ///< `0.42 lbf`
    [[nodiscard]] QString unitName() const;                  ///< `lbf` or `N`
    [[nodiscard]] QString date(const QDate& date) const;     ///< ISO 8601, empty for a null date
    [[nodiscard]] QString percent(double probability) const; ///< `19 %`, `under 1 %`, `over 99 %`

private:
    [[nodiscard]] QString withUnit(const QString& digits) const;

    ForceUnit m_unit;
    QLocale m_locale;
};

} // namespace coilbook
