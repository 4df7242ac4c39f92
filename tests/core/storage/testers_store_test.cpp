#include "core/exchange/export.h"
#include "tests/core/storage/logbook_fixture.h"

#include <QFile>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>

namespace coilbook {
namespace {

using testing::failedWith;
using testing::succeeded;

class TestersStoreTest : public testing::LogbookTest {
protected:
    void SetUp() override {
        testing::LogbookTest::SetUp();
        addEngine();
        m_tester.id = TesterId::make();
        m_tester.name = QStringLiteral("Small dial");
        m_tester.range = TypedForce(160, 0, ForceUnit::PoundForce);
        m_tester.unit = ForceUnit::PoundForce;
        m_tester.accuracy = PercentOfSpan{{1500}};
        m_tester.zeroOffset = ZeroOffset{TypedForce(50, 2, ForceUnit::PoundForce), true};
        m_tester.corrects = false;
        ASSERT_TRUE(succeeded(apply(AddTester{m_tester})));
        m_calibration.id = CalibrationId::make();
        m_calibration.tester = m_tester.id;
        m_calibration.calibratedOn = QDate(2026, 1, 10);
        m_calibration.by = QStringLiteral("Own bench");
        m_calibration.certificate = QStringLiteral("No. 7, weights of 2024");
        m_calibration.dueOn = QDate(2027, 1, 10);
        m_calibration.degree = 2;
        m_calibration.points =
            pointsFromText(QStringLiteral("20:20.50 80:81 140:142"), ForceUnit::PoundForce).value();
        m_study.id = StudyId::make();
        m_study.tester = m_tester.id;
        m_study.studiedOn = QDate(2026, 2, 1);
        m_study.springs = {QStringLiteral("S-1"), QStringLiteral("S-2")};
        m_study.persons = {QStringLiteral("Kim"), QStringLiteral("Alex")};
        m_study.hits = 2;
        m_study.readings.assign(8, TypedForce(12050, 2, ForceUnit::PoundForce));
        m_study.readings.back().reset();
        m_study.note = QStringLiteral("cold");
    }

    Tester m_tester;
    Calibration m_calibration;
    RepeatabilityStudy m_study;
};

TEST_F(TestersStoreTest, EveryFactComesBack) {
    ASSERT_TRUE(succeeded(apply(AddCalibration{m_calibration})));
    ASSERT_TRUE(succeeded(apply(AddStudy{m_study})));
    ASSERT_TRUE(succeeded(apply(AddCalibration{m_calibration}))) << "again changes nothing";
    const EngineLog read = log();
    EXPECT_EQ(read.testers, std::vector<Tester>{m_tester});
    EXPECT_EQ(read.calibrations, std::vector<Calibration>{m_calibration});
    EXPECT_EQ(read.studies, std::vector<RepeatabilityStudy>{m_study});
    EXPECT_EQ(store().calibrations().value(), read.calibrations);
    EXPECT_EQ(store().studies().value(), read.studies);
}

TEST_F(TestersStoreTest, TesterGradesInNewtonsAndUnknownsComeBackToo) {
    for (const std::optional<TesterAccuracy>& accuracy :
         {std::optional<TesterAccuracy>(GaugeGrade::TwoA), std::optional<TesterAccuracy>(),
          std::optional<TesterAccuracy>(TypedForce(95, 1, ForceUnit::Newton))}) {
        Tester tester = m_tester;
        tester.accuracy = accuracy;
        tester.unit = ForceUnit::Newton;
        tester.zeroOffset.reset();
        tester.corrects = true;
        ASSERT_TRUE(succeeded(apply(AmendTester{tester, author()})));
        EXPECT_EQ(log().testers.front(), tester);
    }
}

TEST_F(TestersStoreTest, AmendmentsKeepTheOldValues) {
    ASSERT_TRUE(succeeded(apply(AddCalibration{m_calibration})));
    Calibration amended = m_calibration;
    amended.points.pop_back();
    amended.degree = 1;
    ASSERT_TRUE(succeeded(apply(AmendCalibration{amended, author()})));
    ASSERT_TRUE(succeeded(apply(AddStudy{m_study})));
    RepeatabilityStudy taken = m_study;
    taken.withdrawn = true;
    ASSERT_TRUE(succeeded(apply(AmendStudy{taken, author()})));
    const EngineLog read = log();
    EXPECT_EQ(read.calibrations.front(), amended);
    EXPECT_TRUE(read.studies.front().withdrawn);
    QStringList facts;
    for (const Amendment& amendment : read.amendments) {
        facts << amendment.fact + QLatin1Char('=') + amendment.oldValue;
    }
    facts.sort();
    EXPECT_EQ(facts, (QStringList{QStringLiteral("degree=2"),
                                  QStringLiteral("points=20:20.50 80:81 140:142"),
                                  QStringLiteral("withdrawn=0")}));
    const Result<VerifyReport> report = store().verify();
    ASSERT_TRUE(succeeded(report));
    EXPECT_TRUE(report->findings.empty());
}

TEST_F(TestersStoreTest, WhatDoesNotHoldIsRefused) {
    Calibration calibration = m_calibration;
    calibration.calibratedOn = QDate(2027, 1, 1);
    EXPECT_TRUE(failedWith(LogbookFault::DateInFuture, apply(AddCalibration{calibration})));
    calibration = m_calibration;
    calibration.points.resize(2);
    EXPECT_TRUE(failedWith(LogbookFault::CalibrationTooShort, apply(AddCalibration{calibration})));
    EXPECT_TRUE(
        failedWith(LogbookFault::NothingToAmend, apply(AmendCalibration{m_calibration, author()})));
    RepeatabilityStudy study = m_study;
    study.readings.pop_back();
    EXPECT_TRUE(failedWith(LogbookFault::StudyTooSmall, apply(AddStudy{study})));
    EXPECT_TRUE(log().calibrations.empty());
    EXPECT_TRUE(log().studies.empty());
}

TEST_F(TestersStoreTest, ATouchedTableIsFound) {
    ASSERT_TRUE(succeeded(apply(AddCalibration{m_calibration})));
    closeStore();
    ASSERT_TRUE(
        succeeded(runBeside(QStringLiteral("UPDATE calibration SET points = '20:19 80:81'"))));
    Result<LogbookStore> opened = LogbookStore::open(path(), OpenMode::ReadWrite);
    ASSERT_TRUE(succeeded(opened));
    const Result<VerifyReport> report = opened->verify();
    ASSERT_TRUE(succeeded(report));
    ASSERT_FALSE(report->findings.empty());
    EXPECT_TRUE(report->findings.front().where.startsWith(QStringLiteral("calibration")));
}

TEST_F(TestersStoreTest, SpringAndEngineKeepTheirTemperatureSettings) {
    startInspection();
    ASSERT_TRUE(succeeded(apply(RecordReadings{{reading(1, 1215)}, {m_spring}})));
    Spring spring = m_spring;
    spring.softeningPpm = 400;
    ASSERT_TRUE(succeeded(apply(AmendSpring{spring, author()})));
    Engine engine = m_engine;
    engine.correctsTemperature = true;
    ASSERT_TRUE(succeeded(apply(AmendEngine{engine, author()})));
    EXPECT_EQ(log().springs.front().softeningPpm, 400);
    EXPECT_TRUE(log().engine.correctsTemperature);
}

TEST_F(TestersStoreTest, TheJsonFileHoldsTestersWithTheirCalibrationsAndStudies) {
    ASSERT_TRUE(succeeded(apply(AddCalibration{m_calibration})));
    ASSERT_TRUE(succeeded(apply(AddStudy{m_study})));
    Calibration taken = m_calibration;
    taken.withdrawn = true;
    ASSERT_TRUE(succeeded(apply(AmendCalibration{taken, author()})));
    const QString folder = path(QStringLiteral("out"));
    ASSERT_TRUE(succeeded(exportLogbook(store(), folder)));
    QFile file(folder + QStringLiteral("/logbook.json"));
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    const QJsonObject all = QJsonDocument::fromJson(file.readAll()).object();
    const auto first = [&](const char* list) {
        return all[QLatin1String(list)].toArray().first().toObject();
    };
    EXPECT_EQ(first("testers")[QStringLiteral("accuracy")].toString(),
              QStringLiteral("1.5 % of span"));
    EXPECT_EQ(first("testers")[QStringLiteral("zero_offset")].toString(),
              QStringLiteral("-0.50 lbf"));
    const QJsonArray points = first("calibrations")[QStringLiteral("points")].toArray();
    ASSERT_EQ(points.size(), 3);
    EXPECT_EQ(points.first().toObject()[QStringLiteral("indication")].toString(),
              QStringLiteral("20.50"));
    EXPECT_EQ(first("studies")[QStringLiteral("persons")].toArray().size(), 2);
    EXPECT_TRUE(first("studies")[QStringLiteral("readings")].toArray().last().isNull());
    EXPECT_EQ(all[QStringLiteral("tester_amendments")].toArray().size(), 1);
}

} // namespace
} // namespace coilbook
