#include "core/services/sheet_content.h"

#include "core/services/sheet_content_amendments.h"
#include "core/services/sheet_content_says.h"
#include "core/services/sheet_content_testers.h"
#include "core/wording/wording.h"

#include <QDateTime>

#include <algorithm>

namespace coilbook {

namespace {

QString written(const std::optional<Force>& force, const Quantities& quantities) {
    return force ? quantities.force(*force) : QString();
}

/// Testers and persons of one inspection, each once, in order of first use.
void addSittings(SheetContent& content, const EngineLog& log, const HistoryInspection& inspection,
                 const Quantities& quantities) {
    for (const Sitting& sitting : log.sittings) {
        if (sitting.inspection != inspection.id) {
            continue;
        }
        if (!sitting.inspector.isEmpty() && !content.inspectors.contains(sitting.inspector)) {
            content.inspectors << sitting.inspector;
        }
        const auto tester =
            std::find_if(log.testers.begin(), log.testers.end(),
                         [&](const Tester& known) { return known.id == sitting.tester; });
        if (tester == log.testers.end()) {
            continue;
        }
        const SheetTester used = sheetTesterOf(*tester, log, inspection.on, quantities);
        if (std::find(content.testers.begin(), content.testers.end(), used) ==
            content.testers.end()) {
            content.testers.push_back(used);
        }
    }
}

SheetSpring sheetSpringOf(const SpringAssessment& spring, const EngineHistory& history,
                          const Assessment& assessment, const Quantities& quantities) {
    SheetSpring sheet;
    sheet.place = spring.place;
    sheet.label = spring.label;
    sheet.baseline = written(spring.baseline, quantities);
    sheet.latest = written(spring.latest, quantities);
    sheet.loss = written(spring.measuredLoss, quantities);
    if (!spring.latestOn.isNull() && spring.latestOn < history.inspections.back().on) {
        sheet.latestOn = quantities.date(spring.latestOn);
    }
    sheet.latestCorrected = correctedLatest(spring.id, history, quantities);
    sheet.standing = spring.standing;
    sheet.standingWords = wording::standing(spring.standing, assessment.rules.racesAhead);
    if (spring.measuredLoss && assessment.rules.limit > Force()) {
        sheet.usedOfLimit = *spring.measuredLoss / assessment.rules.limit;
    }
    sheet.pastBy = spring.pastBy;
    if (spring.loss && spring.pastBy == PastBy::Estimate) {
        sheet.estimatedLoss = quantities.forceWithUnit(spring.loss->mean);
    }
    sheet.offTrend = spring.offTrend;
    sheet.provisional = spring.provisional && spring.standing != Standing::NoTrend;
    sheet.chart = lossChartOf(history, assessment, spring);
    return sheet;
}

/// Every place of the plan, also those where no spring is noted.
void addSprings(SheetContent& content, const EngineHistory& history, const Assessment& assessment,
                const Quantities& quantities) {
    std::vector<LossChart> charts;
    for (const Bank& bank : content.layout.banks) {
        for (const Place& place : bank.places) {
            const auto spring = std::find_if(
                assessment.springs.begin(), assessment.springs.end(),
                [&](const SpringAssessment& assessed) { return assessed.place == place; });
            if (spring == assessment.springs.end()) {
                SheetSpring empty;
                empty.place = place;
                content.springs.push_back(std::move(empty));
                continue;
            }
            content.springs.push_back(sheetSpringOf(*spring, history, assessment, quantities));
            charts.push_back(content.springs.back().chart);
        }
    }
    content.range = commonRange(charts, assessment, quantities.unit());
    content.rangeLeast = quantities.forceWithUnit(content.range.least);
    content.rangeMost = quantities.forceWithUnit(content.range.most);
}

void addInspection(SheetContent& content, const EngineLog& log, const EngineHistory& history,
                   const Assessment& assessment, const Quantities& quantities) {
    if (history.inspections.empty()) {
        return;
    }
    const HistoryInspection& newest = history.inspections.back();
    content.inspectedOn = quantities.date(newest.on);
    content.inspectedAtRaces = QString::number(newest.races);
    addSittings(content, log, newest, quantities);
    content.testerNotes = testerNotesOf(log, history, quantities);
    content.shift = wording::newestShift(assessment, quantities);
    if (history.inspections.size() > 1) {
        content.amendedSince =
            quantities.date(history.inspections[history.inspections.size() - 2].on);
    }
}

} // namespace

SheetContent sheetContentOf(const EngineLog& log, const EngineHistory& history,
                            const Assessment& assessment, const Quantities& quantities,
                            const Moment& printedAt, const std::optional<NotedSeal>& seal) {
    SheetContent content;
    content.engine = log.engine.name;
    content.serial = log.engine.serial;
    content.asOf = quantities.date(assessment.asOf);
    content.racesRun = QString::number(assessment.racesNow);
    content.limit = quantities.forceWithUnit(assessment.rules.limit);
    content.unit = quantities.unitName();
    content.racesAhead = assessment.rules.racesAhead;
    content.layout = log.engine.layout;
    addInspection(content, log, history, assessment, quantities);
    addSprings(content, history, assessment, quantities);
    content.notCounted = notCountedOf(log, history, assessment, quantities);
    content.levelChanges = levelChangesOf(history, quantities);
    content.amendments = sheetAmendmentsOf(log, history, quantities);
    content.cautions = wording::cautions();
    content.printedAt = printedMoment(printedAt);
    content.seal = seal ? seal->shortText() : QString();
    return content;
}

QString printedMoment(const Moment& moment) {
    QDateTime at = QDateTime::fromString(moment.utc, Qt::ISODateWithMs);
    if (!at.isValid()) {
        return {};
    }
    at = at.addSecs(60LL * moment.utcOffsetMinutes);
    const int offset = std::abs(moment.utcOffsetMinutes);
    return QStringLiteral("%1 UTC%2%3:%4")
        .arg(at.toString(QStringLiteral("yyyy-MM-dd HH:mm")),
             moment.utcOffsetMinutes < 0 ? QString(QChar(0x2212)) : QStringLiteral("+"))
        .arg(offset / 60, 2, 10, QLatin1Char('0'))
        .arg(offset % 60, 2, 10, QLatin1Char('0'));
}

} // namespace coilbook
