#include "core/domain/history.h"

#include <algorithm>

namespace coilbook {

Force HistoryCell::mean() const {
    Force sum;
    for (const HistoryHit& hit : hits) {
        sum = sum + hit.value.force();
    }
    return sum / static_cast<double>(hits.size());
}

Force measuredLossAt(const HistoryLife& life, std::size_t cell) {
    Force before;
    std::size_t start = 0;
    for (std::size_t c = 1; c <= cell; ++c) {
        if (life.cells[c].newLevel) {
            before = before + (life.cells[start].mean() - life.cells[c - 1].mean());
            start = c;
        }
    }
    return before + (life.cells[start].mean() - life.cells[cell].mean());
}

std::vector<std::size_t> fittedLives(const EngineHistory& history) {
    std::vector<std::size_t> fitted;
    for (std::size_t i = 0; i < history.lives.size(); ++i) {
        if (history.lives[i].fitted) {
            fitted.push_back(i);
        }
    }
    std::sort(fitted.begin(), fitted.end(), [&](std::size_t a, std::size_t b) {
        return history.lives[a].place < history.lives[b].place;
    });
    return fitted;
}

int racesWhileFitted(const std::vector<FittingSpan>& spans, int from, int to) {
    int races = 0;
    for (const FittingSpan& span : spans) {
        const int first = std::max(from, span.fittedRaces);
        const int last = std::min(to, span.endedRaces.value_or(to));
        races += std::max(0, last - first);
    }
    return races;
}

QDate newestDay(const EngineLog& log) {
    QDate newest;
    const auto consider = [&](const QDate& day) {
        if (newest.isNull() || day > newest) {
            newest = day;
        }
    };
    for (const Inspection& inspection : log.inspections) {
        consider(inspection.inspectedOn);
    }
    for (const Race& race : log.races) {
        consider(race.racedOn);
    }
    for (const Fitting& fitting : log.fittings) {
        if (!fitting.withdrawn) {
            consider(fitting.fittedOn);
        }
    }
    for (const Running& running : log.running) {
        if (!running.withdrawn) {
            consider(running.ranOn);
        }
    }
    for (const LevelChange& change : log.levelChanges) {
        if (!change.withdrawn) {
            consider(change.changedOn);
        }
    }
    return newest;
}

} // namespace coilbook
