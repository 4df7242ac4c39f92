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

QString movedBaseline(const ImportReport::MovedBaseline& moved) {
    return Words::tr("The baseline of spring “%1” of engine “%2” moved back from %3 to %4.")
        .arg(shown(moved.spring), shown(moved.engine), moved.from.toString(Qt::ISODate),
             moved.to.toString(Qt::ISODate));
}

} // namespace

QString importReport(const ImportReport& report) {
    QStringList lines;
    lines << Words::tr("Read %1 and %2.")
                 .arg(Words::tr("%n readings", nullptr, asInt(report.readingsRead)),
                      Words::tr("%n races", nullptr, asInt(report.racesRead)));
    if (report.changedNothing()) {
        lines << Words::tr("All of it was in the logbook already; nothing was changed.");
    } else {
        lines << Words::tr("Added %1 and %2.")
                     .arg(Words::tr("%n readings", nullptr, asInt(report.readingsAdded)),
                          Words::tr("%n races", nullptr, asInt(report.racesAdded)));
        const qint64 known = report.readingsKnown + report.racesKnown;
        if (known > 0) {
            lines << Words::tr("%n rows were in the logbook already.", nullptr, asInt(known));
        }
    }
    if (report.amendedOriginals > 0) {
        lines << Words::tr("%n rows hold what the logbook has amended since; the amendments stay.",
                           nullptr, asInt(report.amendedOriginals));
    }
    if (!report.enginesMade.isEmpty()) {
        QStringList names;
        for (const QString& name : report.enginesMade.mid(0, kMostTold)) {
            names << shown(name);
        }
        QString list = names.join(QStringLiteral(", "));
        if (report.enginesMade.size() > kMostTold) {
            list = Words::tr("%1 and %2 more")
                       .arg(list, QString::number(report.enginesMade.size() - kMostTold));
        }
        lines << Words::tr("Engines made with the usual settings: %1.").arg(list);
    }
    const auto moved = static_cast<qsizetype>(report.movedBaselines.size());
    for (qsizetype i = 0; i < std::min(moved, kMostTold); ++i) {
        lines << movedBaseline(report.movedBaselines[static_cast<std::size_t>(i)]);
    }
    if (moved > kMostTold) {
        lines << Words::tr("The baselines of %n more springs moved back.", nullptr,
                           asInt(moved - kMostTold));
    }
    return lines.join(QLatin1Char('\n'));
}

} // namespace coilbook::wording
