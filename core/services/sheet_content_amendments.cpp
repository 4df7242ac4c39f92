#include "core/services/sheet_content_amendments.h"

#include "core/wording/amendment_words.h"

#include <QDateTime>
#include <QSet>

#include <algorithm>

namespace coilbook {

namespace {

QDate localDay(const Moment& moment) {
    const QDateTime at = QDateTime::fromString(moment.utc, Qt::ISODateWithMs);
    return at.isValid() ? at.addSecs(60LL * moment.utcOffsetMinutes).date() : QDate();
}

/// Ids of the inspections, sittings and races that the history leaves out.
QSet<QUuid> beyondHistory(const EngineLog& log, const EngineHistory& history) {
    QSet<QUuid> beyond;
    for (const Inspection& inspection : log.inspections) {
        if (inspection.inspectedOn > history.asOf) {
            beyond.insert(inspection.id.uuid());
        }
    }
    for (const Sitting& sitting : log.sittings) {
        if (beyond.contains(sitting.inspection.uuid())) {
            beyond.insert(sitting.id.uuid());
        }
    }
    for (const Race& race : log.races) {
        if (race.racedOn > history.asOf) {
            beyond.insert(race.id.uuid());
        }
    }
    return beyond;
}

struct Dated {
    QString utc;
    SheetAmendment amendment;
};

} // namespace

std::vector<SheetAmendment> sheetAmendmentsOf(const EngineLog& log, const EngineHistory& history,
                                              const Quantities& quantities) {
    const std::size_t inspections = history.inspections.size();
    const QDate since = inspections > 1 ? history.inspections[inspections - 2].on : QDate();
    const QSet<QUuid> beyond = beyondHistory(log, history);

    std::vector<Dated> found;
    const auto add = [&](const QUuid& record, const Authorship& author,
                         const wording::AmendmentWords& words) {
        const QDate day = localDay(author.at);
        const bool older = !since.isNull() && !day.isNull() && day < since;
        if (!older && !beyond.contains(record)) {
            found.push_back({author.at.utc,
                             {quantities.date(day), words.what, words.oldValue, words.newValue,
                              author.who, author.why}});
        }
    };
    for (const Amendment& amendment : log.amendments) {
        add(amendment.record, amendment.author, wording::amendmentWords(amendment, log));
    }
    for (const Reading& reading : log.readings) {
        if (reading.amends) {
            add(reading.sitting.uuid(), reading.author, wording::amendmentWords(reading, log));
        }
    }
    std::stable_sort(found.begin(), found.end(),
                     [](const Dated& a, const Dated& b) { return a.utc > b.utc; });

    std::vector<SheetAmendment> amendments;
    amendments.reserve(found.size());
    for (Dated& dated : found) {
        amendments.push_back(std::move(dated.amendment));
    }
    return amendments;
}

} // namespace coilbook
