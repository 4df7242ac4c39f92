#pragma once

#include "core/domain/history.h"
#include "tests/support/log_builder.h"

#include <QDate>
#include <QString>

#include <algorithm>
#include <optional>
#include <string>
#include <tuple>
#include <vector>

namespace coilbook::testing {

/// One reading of a spring when the engine had run so many races. A second inspection at the same
/// count has a later `day`.
struct At {
    int races = 0;
    std::string lbf;
    int day = 0;
};

/// Puts together an EngineHistory in few words, through the program's own historyOf(). Inspections
/// follow from the readings; the one after n races is on day 7 n of the season:
///     HistoryBuilder().spring(exhaust(3), "S-27", {{0, "121.5"}, {1, "121"}}).build()
/// Two springs read at one place in one inspection make a swap; several readings of one spring in
/// one inspection are its hits.
class HistoryBuilder {
public:
    HistoryBuilder& spring(const Place& place, const char* label, const std::vector<At>& readings) {
        for (const At& reading : readings) {
            m_readings.push_back({place, QString::fromUtf8(label), reading});
        }
        return *this;
    }

    /// A race on the day before the inspection that counts it.
    HistoryBuilder& race(int number, std::optional<int> peakRpm = {},
                         std::optional<int> laps = {}) {
        m_log.race(number, dayOf(number).addDays(-1), peakRpm);
        m_log.log().races.back().laps = laps;
        return *this;
    }

    /// Running that is no race, `day` days after the inspection that counts `races`.
    HistoryBuilder& running(int races, int day, std::optional<int> laps,
                            std::optional<int> thousandths = {}) {
        m_log.running(dayOf(races, day), races, laps, thousandths);
        return *this;
    }

    /// Work on a spring, `day` days after the inspection that counts `races`.
    HistoryBuilder& levelChange(const char* label, int races, int day,
                                LevelChangeKind kind = LevelChangeKind::Shim) {
        m_log.levelChange(QString::fromUtf8(label), dayOf(races, day), races, kind);
        return *this;
    }

    /// The user's say about a spring in the `inspection`-th inspection, from 0.
    HistoryBuilder& decide(const char* label, std::size_t inspection, ReadingJudgement judgement) {
        m_decisions.push_back({QString::fromUtf8(label), inspection, judgement});
        return *this;
    }

    HistoryBuilder& byLaps() {
        m_log.log().engine.exposureUnit = ExposureUnit::Laps;
        return *this;
    }

    HistoryBuilder& runIn() {
        m_log.log().engine.springsRunIn = true;
        return *this;
    }

    HistoryBuilder& rpmCeiling(int rpm) {
        m_log.log().engine.rpmCeiling = rpm;
        return *this;
    }

    static QDate dayOf(int races, int day = 0) {
        return QDate(2026, 1, 3).addDays(7 * races + day);
    }

    /// Call once, last.
    EngineLog log() {
        std::stable_sort(m_readings.begin(), m_readings.end(), [](const Row& a, const Row& b) {
            return std::tuple(a.at.races, a.at.day) < std::tuple(b.at.races, b.at.day);
        });
        std::optional<QDate> open;
        for (const Row& row : m_readings) {
            const QDate day = dayOf(row.at.races, row.at.day);
            if (open != day) {
                m_log.inspection(day, row.at.races);
                open = day;
            }
            m_log.reading(row.place, row.label, QString::fromStdString(row.at.lbf));
        }
        for (const Said& said : m_decisions) {
            m_log.decide(said.label, said.inspection, said.judgement);
        }
        return m_log.log();
    }

    EngineHistory build(std::optional<QDate> asOf = {}) { return historyOf(log(), asOf); }

private:
    struct Row {
        Place place;
        QString label;
        At at;
    };

    struct Said {
        QString label;
        std::size_t inspection = 0;
        ReadingJudgement judgement = ReadingJudgement::LeftToModel;
    };

    LogBuilder m_log;
    std::vector<Row> m_readings;
    std::vector<Said> m_decisions;
};

} // namespace coilbook::testing
