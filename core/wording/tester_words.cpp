#include "core/wording/tester_words.h"

#include "core/wording/words.h"

#include <QLocale>

#include <cmath>

namespace coilbook::wording {

namespace {

/// Cut, not rounded: 3.97 to 1 is not 4 to 1.
QString ratioText(double ratio) {
    constexpr double kWhole = 10.0;
    return ratio < kWhole ? QLocale().toString(std::floor(ratio * kWhole) / kWhole, 'f', 1)
                          : QLocale().toString(std::floor(ratio), 'f', 0);
}

/// `6.0 lbf at mid-scale`.
QString offBy(const TesterBudget& budget, const Quantities& quantities) {
    const QString off = quantities.forceWithUnit(*budget.canBeOffBy);
    return budget.atMidScale ? Words::tr("%1 at mid-scale").arg(off)
                             : Words::tr("%1 at %2", "a force at a pressure")
                                   .arg(off, quantities.forceWithUnit(budget.at));
}

QString partName(BudgetPart part) {
    switch (part) {
    case BudgetPart::Graduation:
        return Words::tr("Reading to a division");
    case BudgetPart::Accuracy:
        return Words::tr("The tester's accuracy");
    case BudgetPart::Calibration:
        return Words::tr("The tester's calibration");
    case BudgetPart::Repeatability:
        return Words::tr("Hit to hit");
    case BudgetPart::Persons:
        return Words::tr("Person to person");
    case BudgetPart::Temperature:
        return Words::tr("Temperature of the spring");
    }
    Q_UNREACHABLE();
}

} // namespace

QString accuracyWords(const TesterAccuracy& accuracy) {
    if (const auto* span = std::get_if<PercentOfSpan>(&accuracy)) {
        return Words::tr("%1 % of span").arg(percentageToText(span->percent));
    }
    if (const auto* reading = std::get_if<PercentOfReading>(&accuracy)) {
        return Words::tr("%1 % of reading").arg(percentageToText(reading->percent));
    }
    return accuracyToText(accuracy);
}

QString suitabilitySentence(const TesterBudget& budget, const Quantities& quantities) {
    const QString limit = quantities.forceWithUnit(budget.limit);
    if (budget.suitability == Suitability::Unknown || !budget.canBeOffBy) {
        return Words::tr("How far this gauge can be off is not known, so nobody can say whether it "
                         "tells a loss of %1: note its grade or accuracy, or calibrate it.")
            .arg(limit);
    }
    const QString off = offBy(budget, quantities);
    const QString ratio = ratioText(budget.ratio);
    switch (budget.suitability) {
    case Suitability::Unknown:
        break;
    case Suitability::CannotTell:
        return Words::tr("This gauge can be off by %1: it cannot tell a loss of %2.")
            .arg(off, limit);
    case Suitability::Rough:
        return Words::tr("This gauge can be off by %1: it tells a loss of %2 only "
                         "roughly, %3 to 1 where 4 to 1 is usual.")
            .arg(off, limit, ratio);
    case Suitability::FourToOne:
        return Words::tr("This gauge can be off by %1: it tells a loss of %2 by the "
                         "usual rule of 4 to 1 (it has %3 to 1), though not by the old one of 10 "
                         "to 1.")
            .arg(off, limit, ratio);
    case Suitability::TenToOne:
        return Words::tr("This gauge can be off by %1: it tells a loss of %2 well, %3 "
                         "to 1.")
            .arg(off, limit, ratio);
    }
    Q_UNREACHABLE();
}

QString pressureSentence(const Tester& tester, Force pressure, const Quantities& quantities) {
    if (!tester.accuracy) {
        return {};
    }
    const auto there = permittedError(*tester.accuracy, pressure, tester.range);
    const auto middle = permittedError(*tester.accuracy, judgingPressure(tester), tester.range);
    if (!there || there == middle) {
        return {};
    }
    return Words::tr("At %1, where these springs read, it can be off by %2.")
        .arg(quantities.forceWithUnit(pressure), quantities.forceWithUnit(*there));
}

QStringList missingSentences(const TesterBudget& budget) {
    QStringList sentences;
    for (const BudgetPart part : budget.missing) {
        if (part == BudgetPart::Graduation) {
            sentences << Words::tr("Its smallest division is not noted.");
        } else if (part == BudgetPart::Accuracy) {
            sentences << Words::tr("Its accuracy is not noted, or its range is missing for it.");
        } else if (part == BudgetPart::Repeatability) {
            sentences << Words::tr(
                "Its repeatability was never measured: hit a few springs several "
                "times under “Repeatability”.");
        }
    }
    return sentences;
}

QStringList budgetLines(const TesterBudget& budget, const Quantities& quantities) {
    const auto force = [&](Force value) {
        return quantities.rateWithUnit(value);
    };
    QStringList lines;
    for (const BudgetLine& line : budget.lines) {
        lines << Words::tr("%1: %2", "part of an uncertainty, its size")
                     .arg(partName(line.part), force(line.standard));
    }
    lines << Words::tr("One reading, all together: %1 (standard uncertainty)")
                 .arg(force(budget.reading));
    lines << Words::tr("A loss, which takes two readings: %1; with 95 % certainty within %2")
                 .arg(force(budget.loss), force(budget.expandedLoss));
    if (budget.ratio > 0.0) {
        lines << Words::tr("The limit of %1 against these: %2 to 1 and %3 to 1")
                     .arg(quantities.forceWithUnit(budget.limit), ratioText(budget.ratioToStandard),
                          ratioText(budget.ratio));
    }
    return lines;
}

QStringList studySentences(const StudyResult& result, const Quantities& quantities) {
    const auto give = [&](Force sd) {
        return quantities.rateWithUnit(sd);
    };
    QStringList sentences;
    sentences << Words::tr("The tester: hits on the same spring by the same hand lie about %1 "
                           "apart from their mean (%2 of all that varied).")
                     .arg(give(result.tester), quantities.percent(result.testerShare));
    if (result.onePerson) {
        sentences << Words::tr("The person: one person alone cannot tell; let a second one read "
                               "the same springs.");
    } else {
        sentences << Words::tr("The person: from hand to hand readings differ by about %1 (%2).")
                         .arg(give(result.persons), quantities.percent(result.personsShare));
    }
    sentences << Words::tr("The springs: they really differ by about %1 (%2).")
                     .arg(give(result.springs), quantities.percent(result.springsShare));
    if (!result.grades) {
        sentences << Words::tr("All hits on a spring read alike: with this division the study "
                               "cannot show how finely the tester tells springs apart.");
    } else if (*result.grades >= StudyResult::kGradesWanted) {
        sentences << Words::tr("It tells %1 grades of these springs apart; 5 are asked for.")
                         .arg(*result.grades);
    } else if (*result.grades > 1) {
        sentences << Words::tr("It tells only %1 grades of these springs apart where 5 are asked "
                               "for: take more hits a spring, one person, or a finer tester.")
                         .arg(*result.grades);
    } else {
        sentences << Words::tr("It cannot tell these springs apart: take springs that differ more, "
                               "or a finer tester.");
    }
    return sentences;
}

QString correctionSentence(const CorrectedReading& reading, const Quantities& quantities) {
    QStringList parts;
    if (reading.byTester) {
        const QString by = quantities.forceWithUnit(*reading.byTester);
        parts << (reading.testerUncertainty
                      ? Words::tr("%1 by the tester's calibration, give or take %2")
                            .arg(by, quantities.rateWithUnit(*reading.testerUncertainty * 2.0))
                      : Words::tr("%1 corrected for the tester").arg(by));
    }
    if (reading.at20) {
        parts << Words::tr("%1 at 20 °C").arg(quantities.forceWithUnit(*reading.at20));
    } else if (reading.temperatureMissing) {
        parts << Words::tr("no engine temperature noted, so not brought to 20 °C");
    }
    if (parts.isEmpty()) {
        return {};
    }
    return Words::tr("Read %1; %2", "a force, what was made of it")
        .arg(quantities.forceWithUnit(reading.asRead), parts.join(QStringLiteral("; ")));
}

QStringList calibrationSentences(const Calibration& calibration, const CalibrationPicture& picture,
                                 const Quantities& quantities) {
    const std::optional<TesterCurve> curve = TesterCurve::of(calibration);
    if (!curve || picture.curve.empty()) {
        return {Words::tr("The curve comes with %1 different reference forces under which the "
                          "tester shows more and more.")
                    .arg(calibration.degree + 1)};
    }
    const CalibrationPicture::CurvePoint& middle = picture.curve[picture.curve.size() / 2];
    const Force shown = middle.reference + middle.error;
    QStringList sentences;
    sentences << Words::tr("At %1 it shows %2: a reading there is corrected to %1.")
                     .arg(quantities.forceWithUnit(middle.reference),
                          quantities.forceWithUnit(shown));
    if (const std::optional<Force> uncertainty = curve->uncertainty(shown)) {
        sentences << Words::tr("The corrected reading is good to about %1 (twice its standard "
                               "uncertainty); the references count as exact.")
                         .arg(quantities.rateWithUnit(*uncertainty * 2.0));
    } else {
        sentences << Words::tr("One more line would show how good the correction is.");
    }
    if (picture.curveDoesNotFit) {
        sentences << (calibration.degree == 1
                          ? Words::tr("The points bend away from the straight line: choose the "
                                      "curve.")
                          : Words::tr("The points do not follow this curve: look for a slip of the "
                                      "pen in the table."));
    }
    return sentences;
}

QString calibrationWords(const Calibration& calibration, const QDate& day) {
    QString on = calibration.calibratedOn.toString(Qt::ISODate);
    if (!calibration.dueOn.isValid()) {
        return on;
    }
    const QString due = calibration.dueOn.toString(Qt::ISODate);
    return isOverdue(calibration, day) ? Words::tr("%1, OVERDUE since %2").arg(on, due)
                                       : Words::tr("%1, due %2").arg(on, due);
}

QString overdueDate(const QString& calibratedOn) {
    return Words::tr("%1 OVERDUE", "the date of a calibration").arg(calibratedOn);
}

QString testerCorrectionSentence(const HistoryTester& tester, const QDate& day,
                                 const Quantities& quantities) {
    if (!tester.corrects) {
        return {};
    }
    const Calibration* calibration = calibrationFor(tester.calibrations, tester.id, day);
    if (calibration == nullptr) {
        return tester.zeroOffset
                   ? Words::tr("Tester %1: the trends use its readings less its zero of %2; the "
                               "readings stand here as read.")
                         .arg(tester.name, quantities.forceWithUnit(tester.zeroOffset->force()))
                   : QString();
    }
    const CalibrationPicture picture = pictureOf(*calibration);
    const std::optional<TesterCurve> curve = TesterCurve::of(*calibration);
    if (!curve || picture.curve.empty()) {
        return {};
    }
    const CalibrationPicture::CurvePoint& middle = picture.curve[picture.curve.size() / 2];
    const QString what =
        Words::tr("Tester %1: the trends use its readings corrected by the calibration of %2, by "
                  "%3 at %4; the readings stand here as read.")
            .arg(tester.name, calibration->calibratedOn.toString(Qt::ISODate),
                 quantities.forceWithUnit(-middle.error),
                 quantities.forceWithUnit(middle.reference + middle.error));
    const std::optional<Force> uncertainty = curve->uncertainty(middle.reference + middle.error);
    return uncertainty ? Words::tr("%1 The correction is good to about %2.")
                             .arg(what, quantities.rateWithUnit(*uncertainty * 2.0))
                       : what;
}

QString temperatureSentence(bool missing) {
    return missing
               ? Words::tr("The trends shall go by forces at 20 °C, and some readings have no "
                           "engine temperature: note it with the inspection.")
               : Words::tr("The trends go by forces at 20 °C; the readings stand here as read.");
}

QString overdueSentence(const QString& tester, const Calibration& calibration, const QDate& day) {
    if (!isOverdue(calibration, day)) {
        return {};
    }
    return Words::tr("The calibration of tester %1 was due on %2: have it calibrated before you "
                     "rely on its readings.")
        .arg(tester, calibration.dueOn.toString(Qt::ISODate));
}

} // namespace coilbook::wording
