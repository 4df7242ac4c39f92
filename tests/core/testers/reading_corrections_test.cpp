#include "core/assessment/assessment.h"
#include "core/assessment/loss_chart.h"
#include "core/testers/reading_corrections.h"
#include "tests/support/history_builder.h"

#include <gtest/gtest.h>

#include <cmath>

namespace coilbook {
namespace {

using testing::exhaust;
using testing::HistoryBuilder;
using testing::intake;

constexpr int kRaces = 6;
constexpr double kPerRace = 0.4;

/// Shows 3 % and 2 lbf too much.
double shownByWrongTester(double lbf) {
    return 1.03 * lbf + 2.0;
}

/// An invented season: sixteen springs that lose 0.4 lbf a race, read by two testers. One is true;
/// the other shows about 5.6 lbf too much. They change sides of the engine at the third race.
class TwoTestersTest : public ::testing::Test {
protected:
    TwoTestersTest() {
        HistoryBuilder builder;
        for (int cylinder = 1; cylinder <= 8; ++cylinder) {
            for (const Place& place : {intake(cylinder), exhaust(cylinder)}) {
                std::vector<testing::At> readings;
                for (int race = 0; race <= kRaces; ++race) {
                    const double truth = 118.0 + cylinder - kPerRace * race;
                    const double shown =
                        isByWrongTester(cylinder, race) ? shownByWrongTester(truth) : truth;
                    readings.push_back({race, QString::number(shown, 'f', 1).toStdString()});
                }
                builder.spring(place, placeText(place).toUtf8().constData(), readings);
            }
        }
        m_log = builder.log();
        addTesters();
    }

    static bool isByWrongTester(int cylinder, int race) { return (cylinder <= 4) == (race >= 3); }

    void addTesters() {
        Tester truth;
        truth.id = TesterId::make();
        truth.name = QStringLiteral("True");
        Tester wrong = truth;
        wrong.id = TesterId::make();
        wrong.name = QStringLiteral("Wrong");
        m_log.testers = {truth, wrong};
        Calibration calibration;
        calibration.id = CalibrationId::make();
        calibration.tester = wrong.id;
        calibration.calibratedOn = QDate(2025, 12, 1);
        calibration.points =
            pointsFromText(QStringLiteral("40:43.2 80:84.4 120:125.6 160:166.8 160:166.8"),
                           ForceUnit::PoundForce)
                .value();
        m_log.calibrations = {calibration};
        std::vector<Sitting> further;
        for (Sitting& sitting : m_log.sittings) {
            sitting.tester = truth.id;
            Sitting other = sitting;
            other.id = SittingId::make();
            other.tester = wrong.id;
            for (Reading& reading : m_log.readings) {
                const int race = raceOf(sitting);
                if (reading.sitting == sitting.id &&
                    isByWrongTester(reading.place.cylinder.number(), race)) {
                    reading.sitting = other.id;
                }
            }
            further.push_back(other);
        }
        m_log.sittings.insert(m_log.sittings.end(), further.begin(), further.end());
    }

    [[nodiscard]] int raceOf(const Sitting& sitting) const {
        for (const Inspection& inspection : m_log.inspections) {
            if (inspection.id == sitting.inspection) {
                return inspection.engineRaces;
            }
        }
        return -1;
    }

    [[nodiscard]] double worstError(const Assessment& assessment) const {
        double worst = 0.0;
        for (const SpringAssessment& spring : assessment.springs) {
            const double estimate = spring.loss.value().mean.inPoundsForce();
            worst = std::max(worst, std::abs(estimate - kPerRace * kRaces));
        }
        return worst;
    }

    EngineLog m_log;
};

TEST_F(TwoTestersTest, TheEstimateComesOutRightOnceTheyAreCorrected) {
    const Assessment corrected = assess(historyOf(m_log), {});
    ASSERT_EQ(corrected.springs.size(), 16U);
    // All springs wear alike and readings are rounded to 0.1 lbf; the prior for break-in and the
    // common shift cost some tenths.
    EXPECT_LT(worstError(corrected), 0.7);
    m_log.testers[1].corrects = false;
    EXPECT_GT(worstError(assess(historyOf(m_log), {})), 2.0) << "switched off: testers mix";
}

TEST_F(TwoTestersTest, TheRuleOfRecordStaysAsRead) {
    const Assessment corrected = assess(historyOf(m_log), {});
    m_log.testers[1].corrects = false;
    const Assessment plain = assess(historyOf(m_log), {});
    for (std::size_t i = 0; i < plain.springs.size(); ++i) {
        EXPECT_EQ(corrected.springs[i].baseline, plain.springs[i].baseline);
        EXPECT_EQ(corrected.springs[i].latest, plain.springs[i].latest);
        EXPECT_EQ(corrected.springs[i].measuredLoss, plain.springs[i].measuredLoss);
    }
}

TEST_F(TwoTestersTest, AChartPointShowsTheReadingBothWays) {
    const EngineHistory history = historyOf(m_log);
    const Assessment assessment = assess(history, {});
    const LossChart chart = lossChartOf(history, assessment, assessment.springs.front());
    bool anyWrong = false;
    for (const LossChart::Point& point : chart.readings) {
        const bool wrong = point.tester == QStringLiteral("Wrong");
        EXPECT_EQ(point.reading.byTester.has_value(), wrong);
        EXPECT_EQ(point.reading.asRead, point.pressure);
        if (wrong) {
            anyWrong = true;
            EXPECT_NEAR(shownByWrongTester(point.reading.byTester->inPoundsForce()),
                        point.pressure.inPoundsForce(), 1e-6);
            EXPECT_TRUE(point.reading.testerUncertainty.has_value());
        }
    }
    EXPECT_TRUE(anyWrong);
}

TEST_F(TwoTestersTest, WhatIsExpectedIsSaidAsTheTesterInHandWouldShowIt) {
    const EngineHistory history = historyOf(m_log);
    const ReadingCorrections corrections(history);
    const HistoryLife& life = history.lives.front();
    const HistoryHit& newest = life.cells.back().hits.back();
    const bool wrong = newest.tester == 1U;
    const Force counted = Force::poundsForce(116.0);
    const double expected = wrong ? shownByWrongTester(116.0) : 116.0;
    EXPECT_NEAR(corrections.asReadNow(life, counted).inPoundsForce(), expected, 1e-6);
    EXPECT_TRUE(wrong) << "the last inspection reads the first bank with the wrong tester";
}

EngineLog oneReading(const char* lbf) {
    return HistoryBuilder().spring(intake(1), "S-1", {{0, lbf}}).log();
}

CorrectedReading onlyReading(const EngineLog& log) {
    const EngineHistory history = historyOf(log);
    return ReadingCorrections(history).of(history.lives.front(),
                                          history.lives.front().cells.front());
}

TEST(ReadingCorrectionsTest, WithoutACalibrationTheZeroIsTakenOff) {
    EngineLog log = oneReading("120.0");
    Tester tester;
    tester.id = TesterId::make();
    tester.zeroOffset = ZeroOffset{TypedForce(15, 1, ForceUnit::PoundForce), true};
    log.testers = {tester};
    log.sittings.front().tester = tester.id;
    EXPECT_EQ(onlyReading(log).byTester, Force::poundsForce(121.5)) << "it shows 1.5 too little";
    log.testers.front().corrects = false;
    EXPECT_FALSE(onlyReading(log).isCorrected());
}

TEST(ReadingCorrectionsTest, TemperatureCountsWhereTheEngineAsksForItAndItWasNoted) {
    EngineLog log = oneReading("117.0");
    log.sittings.front().engineTemperature = Temperature::milliCelsius(120'000);
    EXPECT_FALSE(onlyReading(log).isCorrected()) << "off by default";
    log.engine.correctsTemperature = true;
    EXPECT_NEAR(onlyReading(log).at20.value().inPoundsForce(), 120.0, 1e-9);
    log.springs.front().softeningPpm = 0;
    EXPECT_NEAR(onlyReading(log).at20.value().inPoundsForce(), 117.0, 1e-9);
    log.sittings.front().engineTemperature.reset();
    EXPECT_FALSE(onlyReading(log).at20.has_value());
    EXPECT_TRUE(onlyReading(log).temperatureMissing);
}

TEST(ReadingCorrectionsTest, TesterAndTemperatureGoTogether) {
    EngineLog log = oneReading("119.0");
    Tester tester;
    tester.id = TesterId::make();
    tester.zeroOffset = ZeroOffset{TypedForce(2, 0, ForceUnit::PoundForce), false};
    log.testers = {tester};
    log.sittings.front().tester = tester.id;
    log.sittings.front().engineTemperature = Temperature::milliCelsius(120'000);
    log.engine.correctsTemperature = true;
    const CorrectedReading reading = onlyReading(log);
    EXPECT_EQ(reading.asRead, Force::poundsForce(119.0));
    EXPECT_EQ(reading.byTester, Force::poundsForce(117.0));
    EXPECT_NEAR(reading.counted().inPoundsForce(), 120.0, 1e-9);
}

} // namespace
} // namespace coilbook
