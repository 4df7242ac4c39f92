#include "core/wording/import_report.h"

#include "core/wording/words.h"

#include <QStringList>

namespace coilbook::wording {

namespace {

/// So many names are told; of a longer list the rest is counted.
constexpr qsizetype kMostTold = 10;

/// Counts beyond an int do not come from files that fit a disk of today.
int asInt(qint64 number) {
    return static_cast<int>(number);
}

QString readings(qint64 count) {
    return count == 1 ? Words::tr("1 reading") : Words::tr("%n readings", nullptr, asInt(count));
}

QString rowsKnown(qint64 count) {
    return count == 1 ? Words::tr("1 row was in the logbook already.")
                      : Words::tr("%n rows were in the logbook already.", nullptr, asInt(count));
}

QString amendedOriginals(qint64 count) {
    return count == 1
               ? Words::tr("1 row holds what the logbook has amended since; the amendment stays.")
               : Words::tr("%n rows hold what the logbook has amended since; the amendments stay.",
                           nullptr, asInt(count));
}

QString enginesMade(const QStringList& engines) {
    QStringList names;
    for (const QString& name : engines.mid(0, kMostTold)) {
        names << shown(name);
    }
    const QString list = names.join(QStringLiteral(", "));
    if (engines.size() <= kMostTold) {
        return Words::tr("Engines made with the usual settings: %1.").arg(list);
    }
    return Words::tr("Engines made with the usual settings: %1 and %2 more.")
        .arg(list, QString::number(engines.size() - kMostTold));
}

QString movedBaseline(const ImportReport::MovedBaseline& moved) {
    return Words::tr("The baseline of spring “%1” of engine “%2” moved back from %3 to %4.")
        .arg(shown(moved.spring), shown(moved.engine), moved.from.toString(Qt::ISODate),
             moved.to.toString(Qt::ISODate));
}

} // namespace

QString importReport(const ImportReport& report) {
    QStringList lines;
    lines << Words::tr("Read %1 and %2.")
                 .arg(readings(report.readingsRead), races(asInt(report.racesRead)));
    const qint64 known = report.readingsKnown + report.racesKnown;
    if (report.changedNothing()) {
        lines << (known > 0
                      ? Words::tr("All of it was in the logbook already; nothing was changed.")
                      : Words::tr("There were no rows, so nothing was changed."));
    } else {
        lines << Words::tr("Added %1 and %2.")
                     .arg(readings(report.readingsAdded), races(asInt(report.racesAdded)));
        if (known > 0) {
            lines << rowsKnown(known);
        }
    }
    if (report.amendedOriginals > 0) {
        lines << amendedOriginals(report.amendedOriginals);
    }
    if (!report.enginesMade.isEmpty()) {
        lines << enginesMade(report.enginesMade);
    }
    qsizetype told = 0;
    for (const ImportReport::MovedBaseline& moved : report.movedBaselines) {
        if (told++ < kMostTold) {
            lines << movedBaseline(moved);
        }
    }
    if (told > kMostTold) {
        lines
            << Words::tr("The baselines of further springs moved back: %1.").arg(told - kMostTold);
    }
    return lines.join(QLatin1Char('\n'));
}

} // namespace coilbook::wording
