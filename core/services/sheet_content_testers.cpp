#include "core/services/sheet_content_testers.h"

#include "core/testers/reading_corrections.h"
#include "core/wording/amendment_words.h"
#include "core/wording/tester_words.h"

#include <algorithm>
#include <set>

namespace coilbook {

namespace {

/// Testers that have a hit in the newest inspection, as indices, in order of the register.
std::set<std::size_t> testersOfNewest(const EngineHistory& history) {
    std::set<std::size_t> testers;
    for (const HistoryLife& life : history.lives) {
        if (life.cells.empty() || life.cells.back().inspection + 1 != history.inspections.size()) {
            continue;
        }
        for (const HistoryHit& hit : life.cells.back().hits) {
            if (hit.tester) {
                testers.insert(*hit.tester);
            }
        }
    }
    return testers;
}

bool anyTemperatureMissing(const EngineHistory& history) {
    const ReadingCorrections corrections(history);
    return std::any_of(history.lives.begin(), history.lives.end(), [&](const HistoryLife& life) {
        return !life.cells.empty() &&
               life.cells.back().inspection + 1 == history.inspections.size() &&
               corrections.of(life, life.cells.back()).temperatureMissing;
    });
}

} // namespace

SheetTester sheetTesterOf(const Tester& tester, const EngineLog& log, const QDate& day,
                          const Quantities& quantities) {
    const Calibration* calibration = newestCalibration(log.calibrations, tester.id, day);
    const QString on =
        quantities.date(calibration != nullptr ? calibration->calibratedOn : tester.calibratedOn);
    const bool overdue = calibration != nullptr && isOverdue(*calibration, day);
    return {tester.name, tester.range ? wording::asTyped(*tester.range) : QString(),
            overdue ? wording::overdueDate(on) : on};
}

QStringList testerNotesOf(const EngineLog& log, const EngineHistory& history,
                          const Quantities& quantities) {
    QStringList notes;
    if (history.inspections.empty()) {
        return notes;
    }
    const QDate day = history.inspections.back().on;
    QStringList corrections;
    for (const std::size_t index : testersOfNewest(history)) {
        const HistoryTester& tester = history.testers[index];
        if (const Calibration* newest = newestCalibration(log.calibrations, tester.id, day)) {
            notes << wording::overdueSentence(tester.name, *newest, day);
        }
        corrections << wording::testerCorrectionSentence(tester, day, quantities);
    }
    notes << corrections; // behind the warnings, which must not fall off the page
    if (history.correctsTemperature) {
        notes << wording::temperatureSentence(anyTemperatureMissing(history));
    }
    notes.removeAll(QString());
    return notes;
}

QString correctedLatest(const SpringId& spring, const EngineHistory& history,
                        const Quantities& quantities) {
    for (const HistoryLife& life : history.lives) {
        if (life.spring == spring && !life.cells.empty()) {
            const CorrectedReading reading =
                ReadingCorrections(history).of(life, life.cells.back());
            return reading.isCorrected() ? quantities.force(reading.counted()) : QString();
        }
    }
    return {};
}

} // namespace coilbook
