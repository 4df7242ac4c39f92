#include "core/services/sheet_content_says.h"

#include "core/wording/say_words.h"

#include <algorithm>

namespace coilbook {

namespace {

/// Who made the decision that is in force; empty without one.
QString deciderOf(const EngineLog& log, const InspectionId& inspection, const SpringId& spring) {
    const auto newest =
        std::find_if(log.decisions.rbegin(), log.decisions.rend(), [&](const Decision& decision) {
            return decision.inspection == inspection && decision.spring == spring;
        });
    return newest == log.decisions.rend() ? QString() : newest->author.who;
}

const HistoryCell* cellOf(const EngineHistory& history, const SpringId& spring,
                          std::size_t inspection) {
    for (const HistoryLife& life : history.lives) {
        for (const HistoryCell& cell : life.cells) {
            if (life.spring == spring && cell.inspection == inspection) {
                return &cell;
            }
        }
    }
    return nullptr;
}

} // namespace

QStringList notCountedOf(const EngineLog& log, const EngineHistory& history,
                         const Assessment& assessment, const Quantities& quantities) {
    QStringList items;
    for (const SpringAssessment& spring : assessment.springs) {
        const wording::NamedSpring named{spring.place, spring.label};
        for (const EventFinding& event : spring.events) {
            const HistoryCell* cell = cellOf(history, spring.id, event.inspection);
            if (event.kind != EventFinding::Kind::Misread || cell == nullptr) {
                continue;
            }
            const HistoryInspection& inspection = history.inspections[event.inspection];
            items << wording::readingNotCounted(named, quantities.force(cell->mean()),
                                                quantities.date(inspection.on), cell->judgement,
                                                deciderOf(log, inspection.id, spring.id));
        }
        if (!spring.hitsSetAside.empty()) {
            items << wording::hitsNotCounted(named, static_cast<int>(spring.hitsSetAside.size()));
        }
    }
    return items;
}

QStringList levelChangesOf(const EngineHistory& history, const Quantities& quantities) {
    QStringList items;
    for (const std::size_t index : fittedLives(history)) {
        const HistoryLife& life = history.lives[index];
        for (const HistoryLevelChange& change : life.levelChanges) {
            items << wording::levelChanged({life.place, life.label}, change.kind,
                                           quantities.date(change.on));
        }
    }
    return items;
}

} // namespace coilbook
