#include "core/wording/amendment_words.h"

#include "core/wording/fact_words.h"
#include "core/wording/quantities.h"
#include "core/wording/words.h"

#include <QStringList>

#include <algorithm>

namespace coilbook::wording {

namespace {

template <class Record>
const Record* recordOf(const std::vector<Record>& records, const QUuid& id) {
    const auto found = std::find_if(records.begin(), records.end(),
                                    [&](const Record& record) { return record.id.uuid() == id; });
    return found == records.end() ? nullptr : &*found;
}

QString springLabel(const EngineLog& log, const SpringId& id) {
    const Spring* spring = recordOf(log.springs, id.uuid());
    return spring != nullptr ? spring->label : QString();
}

QString testerName(const EngineLog& log, const TesterId& id) {
    const Tester* tester = recordOf(log.testers, id.uuid());
    return tester != nullptr ? tester->name : QString();
}

QString dayOf(const EngineLog& log, const InspectionId& id) {
    const Inspection* inspection = recordOf(log.inspections, id.uuid());
    return inspection != nullptr ? inspection->inspectedOn.toString(Qt::ISODate) : QString();
}

QString recordName(const Amendment& amendment, const EngineLog& log) {
    switch (amendment.subject) {
    case Subject::Engine:
        return Words::tr("Engine");
    case Subject::Race:
        if (const Race* race = recordOf(log.races, amendment.record)) {
            return Words::tr("Race %1").arg(race->number);
        }
        return Words::tr("Race");
    case Subject::Inspection:
        return Words::tr("Inspection %1").arg(dayOf(log, InspectionId(amendment.record))).trimmed();
    case Subject::Sitting:
        if (const Sitting* sitting = recordOf(log.sittings, amendment.record)) {
            return Words::tr("Inspection %1").arg(dayOf(log, sitting->inspection)).trimmed();
        }
        return Words::tr("Inspection");
    case Subject::Spring:
        return Words::tr("Spring %1").arg(springLabel(log, SpringId(amendment.record))).trimmed();
    case Subject::Tester:
        if (const Tester* tester = recordOf(log.testers, amendment.record)) {
            return Words::tr("Tester %1").arg(tester->name);
        }
        return Words::tr("Tester");
    case Subject::Fitting:
        if (const Fitting* fitting = recordOf(log.fittings, amendment.record)) {
            return Words::tr("Swap at %1 to %2")
                .arg(placeText(fitting->place), springLabel(log, fitting->spring));
        }
        return Words::tr("Swap");
    case Subject::Running:
        if (const Running* running = recordOf(log.running, amendment.record)) {
            return Words::tr("Running of %1").arg(running->ranOn.toString(Qt::ISODate));
        }
        return Words::tr("Running");
    case Subject::LevelChange:
        if (const LevelChange* change = recordOf(log.levelChanges, amendment.record)) {
            return Words::tr("Level change of %1 on %2", "a spring, a day")
                .arg(springLabel(log, change->spring), change->changedOn.toString(Qt::ISODate));
        }
        return Words::tr("Level change");
    case Subject::Calibration:
        if (const Calibration* calibration = recordOf(log.calibrations, amendment.record)) {
            return Words::tr("Calibration of tester %1 on %2", "a name, a day")
                .arg(testerName(log, calibration->tester),
                     calibration->calibratedOn.toString(Qt::ISODate));
        }
        return Words::tr("Calibration");
    case Subject::Study:
        if (const RepeatabilityStudy* study = recordOf(log.studies, amendment.record)) {
            return Words::tr("Repeatability of tester %1 on %2", "a name, a day")
                .arg(testerName(log, study->tester), study->studiedOn.toString(Qt::ISODate));
        }
        return Words::tr("Repeatability study");
    case Subject::PlannedRace:
        if (const PlannedRace* race = recordOf(log.plannedRaces, amendment.record)) {
            return Words::tr("Planned race of %1").arg(race->plannedOn.toString(Qt::ISODate));
        }
        return Words::tr("Planned race");
    case Subject::Shelving:
        if (const Shelving* shelving = recordOf(log.shelvings, amendment.record)) {
            return Words::tr("Shelf: spring %1").arg(springLabel(log, shelving->spring));
        }
        return Words::tr("Shelf");
    }
    Q_UNREACHABLE();
}

QString orNone(const QString& value) {
    return value.isEmpty() ? Words::tr("(none)", "a fact that was not given") : value;
}

/// Both sides of what a correction changed, in the same order.
struct Differences {
    QStringList before;
    QStringList after;

    void add(const QString& was, const QString& is) {
        if (was != is) {
            before << orNone(was);
            after << orNone(is);
        }
    }
};

QString hitWords(int hit) {
    return Words::tr("hit %1").arg(hit);
}

QString retestWords(bool retest) {
    return retest ? Words::tr("re-test") : Words::tr("no re-test");
}

} // namespace

QString asTyped(const TypedForce& value) {
    return value.text() + QLatin1Char(' ') + Quantities(value.unit()).unitName();
}

AmendmentWords amendmentWords(const Amendment& amendment, const EngineLog& log) {
    const auto side = [&](const QString& stored) {
        return orNone(factValue(amendment.fact, stored, log));
    };
    return {Words::tr("%1, %2", "a record, one of its facts")
                .arg(recordName(amendment, log), factName(amendment.fact)),
            side(amendment.oldValue), side(amendment.newValue)};
}

AmendmentWords amendmentWords(const Reading& amendment, const EngineLog& log) {
    Q_ASSERT(amendment.amends);
    const Reading* known = recordOf(log.readings, amendment.amends->uuid());
    const Reading& before = known != nullptr ? *known : amendment;
    const Sitting* sitting = recordOf(log.sittings, before.sitting.uuid());
    const QString day = sitting != nullptr ? dayOf(log, sitting->inspection) : QString();

    AmendmentWords words;
    words.what = Words::tr("%1, %2 of %3", "a place, a hit, a day")
                     .arg(placeText(before.place), hitWords(before.hit), day);
    if (amendment.kind == ReadingKind::Withdrawal) {
        words.oldValue = asTyped(before.value);
        words.newValue = Words::tr("withdrawn");
        return words;
    }
    Differences differences;
    differences.add(asTyped(before.value), asTyped(amendment.value));
    differences.add(placeText(before.place), placeText(amendment.place));
    if (before.spring != amendment.spring) {
        differences.add(springLabel(log, before.spring), springLabel(log, amendment.spring));
    }
    differences.add(hitWords(before.hit), hitWords(amendment.hit));
    differences.add(retestWords(before.retest), retestWords(amendment.retest));
    differences.add(before.note, amendment.note);
    words.oldValue = differences.before.join(QStringLiteral(", "));
    words.newValue = differences.after.join(QStringLiteral(", "));
    return words;
}

} // namespace coilbook::wording
