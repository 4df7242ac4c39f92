#include "core/wording/wording.h"

#include "core/wording/fault_sentences.h"
#include "core/wording/words.h"

#include <QStringList>

namespace coilbook::wording {

namespace {

/// Paths are shown whole: a cut path cannot be found again.
constexpr qsizetype kLongestPath = 4096;

QString position(const Error& error) {
    QStringList parts;
    if (error.line > 0) {
        parts << Words::tr("line %1").arg(error.line);
    }
    if (!error.column.isEmpty()) {
        parts << Words::tr("column %1").arg(shown(error.column));
    }
    const QString inside = parts.join(QStringLiteral(", "));
    QStringList all;
    for (const QString& part : {shown(error.file, kLongestPath), inside}) {
        if (!part.isEmpty()) {
            all << part;
        }
    }
    return all.join(QStringLiteral(": "));
}

} // namespace

QString sentence(const Error& error) {
    return std::visit([&](auto fault) { return sentenceOf(fault, error); }, error.fault);
}

QString line(const Error& error) {
    const QString where = position(error);
    QString text =
        where.isEmpty() ? sentence(error) : where + QStringLiteral(": ") + sentence(error);
    if (error.more > 0) {
        text += QLatin1Char(' ') + Words::tr("(and %1 more)").arg(error.more);
    }
    return text;
}

QString standing(Standing standing, int racesAhead) {
    switch (standing) {
    case Standing::PastLimit:
        return Words::tr("past the limit");
    case Standing::Due:
        return racesAhead == 0 ? Words::tr("due now")
                               : Words::tr("due within %1").arg(races(racesAhead));
    case Standing::Sound:
        return Words::tr("sound");
    case Standing::NoTrend:
        return Words::tr("no trend yet");
    }
    Q_UNREACHABLE();
}

QString standing(const SpringAssessment& spring, int racesAhead) {
    QString words = standing(spring.standing, racesAhead);
    if (spring.offTrend) {
        words = Words::tr("%1, off its trend", "a standing").arg(words);
    }
    if (spring.provisional && spring.standing != Standing::NoTrend) {
        words = Words::tr("%1, provisional", "a standing that rests on few inspections").arg(words);
    }
    return words;
}

QString valve(Valve valve) {
    return valve == Valve::Intake ? Words::tr("intake") : Words::tr("exhaust");
}

QString place(const Place& place) {
    const QString number = QString::number(place.cylinder.number());
    return place.valve == Valve::Intake ? Words::tr("Cylinder %1 intake").arg(number)
                                        : Words::tr("Cylinder %1 exhaust").arg(number);
}

} // namespace coilbook::wording
