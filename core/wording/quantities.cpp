#include "core/wording/quantities.h"

#include "core/wording/words.h"

#include <cmath>

namespace coilbook {

namespace {

using wording::Words;

/// Rounded as shown, without a sign on zero and with a real minus sign.
QString number(double value, int decimals, const QLocale& locale) {
    const double scale = std::pow(10.0, decimals);
    const double rounded = std::round(value * scale) / scale;
    const QString digits = locale.toString(std::abs(rounded), 'f', decimals);
    return rounded < 0.0 ? QChar(0x2212) + digits : digits;
}

} // namespace

Quantities::Quantities(ForceUnit unit, const QLocale& locale)
    : m_unit(unit)
    , m_locale(locale) {
    m_locale.setNumberOptions(QLocale::OmitGroupSeparator);
}

QString Quantities::force(Force value) const {
    return number(value.in(m_unit), m_unit == ForceUnit::PoundForce ? 1 : 0, m_locale);
}

QString Quantities::forceWithUnit(Force value) const {
    return withUnit(force(value));
}

QString Quantities::rate(Force perRace) const {
    return number(perRace.in(m_unit), m_unit == ForceUnit::PoundForce ? 2 : 1, m_locale);
}

QString Quantities::rateWithUnit(Force perRace) const {
    return withUnit(rate(perRace));
}

QString Quantities::unitName() const {
    return m_unit == ForceUnit::PoundForce ? QStringLiteral("lbf") : QStringLiteral("N");
}

QString Quantities::date(const QDate& date) const {
    return date.toString(Qt::ISODate);
}

QString Quantities::percent(double probability) const {
    if (probability < 0.01) {
        return Words::tr("under 1 %");
    }
    if (probability > 0.99) {
        return Words::tr("over 99 %");
    }
    return Words::tr("%1 %", "a probability").arg(number(100.0 * probability, 0, m_locale));
}

QString Quantities::withUnit(const QString& digits) const {
    return digits + QLatin1Char(' ') + unitName();
}

} // namespace coilbook
