#include "core/wording/fault_sentences.h"
#include "core/wording/words.h"

#include <QStringList>

namespace coilbook::wording {

namespace {

QString unknownEngine(const Error& error) {
    QStringList known;
    for (qsizetype i = 1; i < error.arguments.size(); ++i) {
        known << argument(error, i);
    }
    if (known.isEmpty()) {
        return Words::tr("This logbook has no engine “%1”; it has none yet. Add one first.")
            .arg(argument(error, 0));
    }
    return Words::tr("This logbook has no engine “%1”. Choose one of: %2.")
        .arg(argument(error, 0), known.join(QStringLiteral(", ")));
}

QString emptyName(const QString& what) {
    if (what == QLatin1String("engine")) {
        return Words::tr("The engine needs a name. Type one.");
    }
    if (what == QLatin1String("spring")) {
        return Words::tr("The spring needs a label. Type what is marked on it, or number it.");
    }
    if (what == QLatin1String("tester")) {
        return Words::tr("The tester needs a name. Type one.");
    }
    return Words::tr("A name is missing here (%1). Type one.").arg(what);
}

QString nameTaken(const QString& what, const QString& name) {
    if (what == QLatin1String("spring")) {
        return Words::tr("This engine has a spring “%1” already. Choose another label.").arg(name);
    }
    if (what == QLatin1String("person")) {
        return Words::tr("“%1” is named twice. Give each person another name.").arg(name);
    }
    return Words::tr("There is a tester “%1” already. Choose another name.").arg(name);
}

} // namespace

QString sentenceOf(LogbookFault fault, const Error& error) {
    const QString first = argument(error, 0);
    const QString second = argument(error, 1);
    switch (fault) {
    case LogbookFault::UnknownEngine:
        return unknownEngine(error);
    case LogbookFault::EngineNameTaken:
        return Words::tr("There is an engine “%1” already. Choose another name.").arg(first);
    case LogbookFault::EmptyName:
        return emptyName(first);
    case LogbookFault::NameTaken:
        return nameTaken(first, second);
    case LogbookFault::NameDiffersInCaseOnly:
        return Words::tr("“%1” differs from “%2” in capital letters only. Write it the same way, "
                         "or choose a clearly different name.")
            .arg(first, second);
    case LogbookFault::BadLimit:
        return Words::tr("“%1” cannot be the limit. Give a loss above 0.").arg(first);
    case LogbookFault::BadRacesAhead:
        return Words::tr("“%1” cannot be the number of races to look ahead. Give a whole number "
                         "from 0 to 60.")
            .arg(first);
    case LogbookFault::BadCaution:
        return Words::tr("“%1” is no level of caution. Choose 0.3, 0.5 or 0.7.").arg(first);
    case LogbookFault::BadLayout:
        return Words::tr("The engine's layout does not add up at “%1”. Number the cylinders from 1 "
                         "without a gap, let each fire once, and give each one intake and one "
                         "exhaust spring.")
            .arg(first);
    case LogbookFault::DateInFuture:
        return Words::tr("The date %1 lies in the future. Check the day, the month and the year.")
            .arg(first);
    case LogbookFault::DateTooEarly:
        return Words::tr("The date %1 lies before 1950. Check the year.").arg(first);
    case LogbookFault::RacesGoBack:
        return Words::tr("A count of %1 does not fit what is written of %2, which counts %3: races "
                         "never become fewer. Check the count and the date.")
            .arg(races(error.arguments.value(0).toInt()), second, argument(error, 2));
    case LogbookFault::InspectionExists:
        return Words::tr("There is an inspection of %1 at %2 already. Go on with that one.")
            .arg(first, races(error.arguments.value(1).toInt()));
    case LogbookFault::RaceExists:
        return Words::tr("Race %1 is in the logbook already. Amend it there, or check the number.")
            .arg(first);
    case LogbookFault::RaceAfterInspection:
        return Words::tr("Race %1 of %2 comes after the inspection of %3, which counts it already. "
                         "Check the date of the race and the count of races at the inspection.")
            .arg(first, second, argument(error, 2));
    case LogbookFault::ReadingOutOfBounds:
        return Words::tr("A reading of %1 cannot be right: it must be above 0 and at most 1000 lbf "
                         "or 4448.22 N. Check the digits and the unit.")
            .arg(first);
    case LogbookFault::NotAReading:
        return Words::tr("“%1” is not a reading. Type the digits as on the tester, such as 117.5.")
            .arg(first);
    case LogbookFault::SpringElsewhere:
        return Words::tr("Spring “%1” stands at %2 in this inspection and cannot stand at two "
                         "places. Check the label and the place.")
            .arg(first, second);
    case LogbookFault::HitExists:
        return Words::tr("Hit %2 of spring “%1” is there already in this inspection. Give the next "
                         "number, or amend the one that is there.")
            .arg(first, second);
    case LogbookFault::NoSuchPlace:
        return Words::tr("This engine has no place “%1”. Check the cylinder and the valve.")
            .arg(first);
    case LogbookFault::NothingToAmend:
        return Words::tr("There is nothing to amend: the entry already reads like this, or it is "
                         "not in this logbook.");
    case LogbookFault::WhyMissing:
        return Words::tr("An amendment needs a reason. Write in a few words why it is made; the "
                         "old value stays in the logbook.");
    case LogbookFault::UnknownPlaceOfSpring:
        return Words::tr("Spring “%1” is not fitted anywhere in this engine. Fit it to a place "
                         "first.")
            .arg(first);
    case LogbookFault::SpringFitted:
        return Words::tr("Spring “%1” is fitted at %2. Put in another one, or swap that place "
                         "first.")
            .arg(first, second);
    case LogbookFault::BadLaps:
        return Words::tr("A race of %1 laps cannot be planned. Give 1 to 1000000 laps, or leave "
                         "them out.")
            .arg(argument(error, 0));
    case LogbookFault::SpringScrapped:
        return Words::tr("Spring %1 was thrown out. Put in another one, or take that back on the "
                         "shelf first.")
            .arg(argument(error, 0));
    case LogbookFault::NotInAnyPlace:
        return Words::tr("Spring %1 stands at %2. Swap it out before it goes on the shelf.")
            .arg(argument(error, 0), argument(error, 1));
    case LogbookFault::BadHeight:
        return Words::tr("A spring is not measured at %1 mm. Give the height of the tester's gap, "
                         "10 to 200 mm, or leave it out.")
            .arg(argument(error, 0));
    case LogbookFault::RunningUnclear:
        return Words::tr("Say how much the engine ran: either laps, or what part of a race it was "
                         "worth, from 0.001 to 10.");
    case LogbookFault::NothingToDecide:
        return Words::tr("Spring “%1” has no reading in the inspection of %2 that could be kept "
                         "or set aside. Choose an inspection in which it was read.")
            .arg(first, second);
    case LogbookFault::CalibrationTooShort:
        return Words::tr("This curve needs at least %1 different reference forces. Type more lines "
                         "of the certificate, or choose the straight line.")
            .arg(first);
    case LogbookFault::CalibrationNotRising:
        return Words::tr("The table shows no more under its largest force than under its smallest. "
                         "Check whether reference and reading stand in the right columns.");
    case LogbookFault::CalibrationDueBefore:
        return Words::tr("The next calibration cannot be due on %1, which is not after this one of "
                         "%2. Check both dates.")
            .arg(first, second);
    case LogbookFault::StudyTooSmall:
        return Words::tr("A study needs at least two springs, one person and two hits on each "
                         "spring, and at most fifty of each.");
    case LogbookFault::SealNotPassed:
        return Words::tr("This logbook did not pass through the state of seal %1. Check the number "
                         "and the digits; if they are right, this is another logbook, or one that "
                         "was rewritten since.")
            .arg(first);
    case LogbookFault::SwapBeforeReading:
        return Words::tr("A swap on %1 cannot be: spring “%2” was still there and read on %3. "
                         "Check the date and the count of races.")
            .arg(first, second, argument(error, 2));
    }
    Q_UNREACHABLE();
}

} // namespace coilbook::wording
