#include "core/wording/fact_words.h"

#include "core/wording/quantities.h"
#include "core/wording/words.h"

#include <QStringList>

#include <array>

namespace coilbook::wording {

namespace {

struct NamedFact {
    const char* column;
    const char* name;
};

// Columns whose own words do not say it; the others read well with blanks.
constexpr std::array kNamed{
    NamedFact{"layout", QT_TRANSLATE_NOOP("coilbook::wording::Words", "cylinders")},
    NamedFact{"limit_ulbf", QT_TRANSLATE_NOOP("coilbook::wording::Words", "limit")},
    NamedFact{"caution_percent", QT_TRANSLATE_NOOP("coilbook::wording::Words", "caution")},
    NamedFact{"engine_temp_mc",
              QT_TRANSLATE_NOOP("coilbook::wording::Words", "engine temperature")},
    NamedFact{"engine_races", QT_TRANSLATE_NOOP("coilbook::wording::Words", "races run")},
    NamedFact{"over_rev", QT_TRANSLATE_NOOP("coilbook::wording::Words", "over-revved")},
    NamedFact{"tester_id", QT_TRANSLATE_NOOP("coilbook::wording::Words", "tester")},
    NamedFact{"height_uin", QT_TRANSLATE_NOOP("coilbook::wording::Words", "measured at height")},
    NamedFact{"put_to", QT_TRANSLATE_NOOP("coilbook::wording::Words", "put to")},
    NamedFact{"race_thousandths", QT_TRANSLATE_NOOP("coilbook::wording::Words", "part of a race")},
    NamedFact{"spring_id", QT_TRANSLATE_NOOP("coilbook::wording::Words", "spring")},
    NamedFact{"springs_run_in",
              QT_TRANSLATE_NOOP("coilbook::wording::Words", "broken in before the baseline")},
    NamedFact{"exposure_unit", QT_TRANSLATE_NOOP("coilbook::wording::Words", "wear goes by")},
    NamedFact{"corrects", QT_TRANSLATE_NOOP("coilbook::wording::Words", "readings corrected")},
    NamedFact{"corrects_temperature",
              QT_TRANSLATE_NOOP("coilbook::wording::Words", "corrected for temperature")},
    NamedFact{"softening_ppm",
              QT_TRANSLATE_NOOP("coilbook::wording::Words", "softening with temperature")},
    NamedFact{"done_by", QT_TRANSLATE_NOOP("coilbook::wording::Words", "by")},
    NamedFact{"points", QT_TRANSLATE_NOOP("coilbook::wording::Words", "table")},
    NamedFact{"peak_rpm", QT_TRANSLATE_NOOP("coilbook::wording::Words", "peak rpm")},
};

QString yesOrNo(bool yes) {
    return yes ? Words::tr("yes") : Words::tr("no");
}

QString layoutWords(const QString& stored) {
    const Result<EngineLayout> layout = layoutFromText(stored);
    if (!layout) {
        return stored;
    }
    QStringList banks;
    for (const Bank& bank : layout->banks) {
        QStringList places;
        for (const Place& place : bank.places) {
            places << placeText(place).remove(QLatin1Char(' '));
        }
        banks << bank.name + QLatin1Char(' ') + places.join(QLatin1Char(' '));
    }
    QStringList order;
    for (const Cylinder& cylinder : layout->firingOrder) {
        order << QString::number(cylinder.number());
    }
    QStringList facts{Words::tr("%1; fires %2", "banks with their places; a firing order")
                          .arg(banks.join(QStringLiteral(", ")), order.join(QLatin1Char('-')))};
    QStringList intervals;
    for (const int tenths : layout->firingIntervals) {
        intervals << QString::number(tenths / 10.0) + QChar(0x00B0);
    }
    if (!intervals.empty()) {
        facts << Words::tr("at %1", "crank angles").arg(intervals.join(QLatin1Char(' ')));
    }
    QStringList round;
    for (const Place& place : layout->ownRound) {
        round << placeText(place).remove(QLatin1Char(' '));
    }
    if (!round.empty()) {
        facts << Words::tr("round %1", "places").arg(round.join(QLatin1Char(' ')));
    }
    return facts.join(QStringLiteral("; "));
}

QString springLabel(const QString& stored, const EngineLog& log) {
    const SpringId id = SpringId::fromText(stored);
    for (const Spring& spring : log.springs) {
        if (spring.id == id) {
            return spring.label;
        }
    }
    return stored;
}

QString testerName(const QString& stored, const EngineLog& log) {
    const TesterId id = TesterId::fromText(stored);
    for (const Tester& tester : log.testers) {
        if (tester.id == id) {
            return tester.name;
        }
    }
    return stored;
}

} // namespace

QString factName(const QString& fact) {
    for (const NamedFact& named : kNamed) {
        if (fact == QLatin1String(named.column)) {
            return Words::tr(named.name);
        }
    }
    QString name = fact;
    return name.replace(QLatin1Char('_'), QLatin1Char(' '));
}

QString factValue(const QString& fact, const QString& stored, const EngineLog& log) {
    constexpr double kMicro = 1e6;
    constexpr double kMilli = 1e3;
    constexpr double kMicroOfPercentPer100 = 100.0; // 1e-6 per °C is 0.01 % per 100 °C
    bool isNumber = false;
    const qint64 number = stored.toLongLong(&isNumber);
    if (fact == QLatin1String("layout") && !stored.isEmpty()) {
        return layoutWords(stored);
    }
    if (fact == QLatin1String("tester_id") && !stored.isEmpty()) {
        return testerName(stored, log);
    }
    if (fact == QLatin1String("spring_id") && !stored.isEmpty()) {
        return springLabel(stored, log);
    }
    if (!isNumber) {
        return stored;
    }
    const auto value = static_cast<double>(number);
    if (fact == QLatin1String("limit_ulbf")) {
        return Quantities(ForceUnit::PoundForce).forceWithUnit(Force::poundsForce(value / kMicro));
    }
    if (fact == QLatin1String("caution_percent")) {
        return Words::tr("%1 %", "a probability").arg(number);
    }
    if (fact == QLatin1String("engine_temp_mc")) {
        return QStringLiteral("%1 °C").arg(value / kMilli);
    }
    if (fact == QLatin1String("over_rev") || fact == QLatin1String("retired") ||
        fact == QLatin1String("closed") || fact == QLatin1String("withdrawn") ||
        fact == QLatin1String("springs_run_in") || fact == QLatin1String("corrects") ||
        fact == QLatin1String("corrects_temperature")) {
        return yesOrNo(number != 0);
    }
    if (fact == QLatin1String("softening_ppm")) {
        return Words::tr("%1 % per 100 °C").arg(value / kMicroOfPercentPer100);
    }
    if (fact == QLatin1String("height_uin")) {
        return Words::tr("%1 in", "inches").arg(QString::number(value / kMicro));
    }
    if (fact == QLatin1String("race_thousandths")) {
        return QString::number(value / kMilli);
    }
    return stored;
}

} // namespace coilbook::wording
