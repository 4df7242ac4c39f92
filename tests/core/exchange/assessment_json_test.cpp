#include "core/exchange/assessment_json.h"

#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <gtest/gtest.h>

#include <cmath>

namespace coilbook {
namespace {

/// The example of the contract, section 4, but for its reasons.
Assessment contractExample() {
    Assessment assessment;
    assessment.engine = QStringLiteral("Blue");
    assessment.asOf = QDate(2026, 5, 2);
    assessment.racesNow = 9;
    const auto lbf = [](double value) {
        return Force::poundsForce(value);
    };
    assessment.inspections.push_back({InspectionId(), QDate(2026, 5, 2), 9,
                                      ForceEstimate{lbf(-1.7), lbf(-2.4), lbf(-1.0)}, true});
    SpringAssessment spring;
    spring.label = QStringLiteral("S-27");
    spring.place = {Cylinder(3), Valve::Exhaust};
    spring.inspections = 7;
    spring.exposure = 9;
    spring.latestOn = QDate(2026, 5, 2);
    spring.racesAtLatest = 9;
    spring.baseline = lbf(121.5);
    spring.latest = lbf(117.25);
    spring.measuredLoss = lbf(4.25);
    spring.loss = ForceEstimate{lbf(3.1), lbf(2.2), lbf(4.0)};
    spring.lossPerRace = ForceEstimate{lbf(0.34), lbf(0.24), lbf(0.45)};
    spring.pPastLimit = 0.001;
    spring.pDue = 0.19;
    spring.racesLeft = RacesLeft{3, 5, 9};
    spring.standing = Standing::Sound;
    assessment.springs.push_back(spring);
    return assessment;
}

std::string jsonOf(const std::vector<Assessment>& assessments) {
    return assessmentsToJson(assessments).toStdString();
}

TEST(AssessmentJsonTest, WritesTheContractsExampleWithItsKeysInOrder) {
    EXPECT_EQ(jsonOf({contractExample()}), R"([
  {
    "format": "coilbook-assessment/1",
    "engine": "Blue",
    "as_of": "2026-05-02",
    "engine_races": 9,
    "limit_lbf": 5.0000,
    "races_ahead": 3,
    "caution": 0.500000,
    "inspections": [
      {"inspected_on": "2026-05-02", "engine_races": 9, "shift_lbf": -1.7000, "shift_low90": -2.4000, "shift_high90": -1.0000, "shifted": true}
    ],
    "springs": [
      {
        "cylinder": 3,
        "valve": "E",
        "spring": "S-27",
        "inspections": 7,
        "races": 9,
        "latest_on": "2026-05-02",
        "races_at_latest": 9,
        "baseline_lbf": 121.5000,
        "latest_lbf": 117.2500,
        "measured_loss_lbf": 4.2500,
        "loss_lbf": {"mean": 3.1000, "low90": 2.2000, "high90": 4.0000},
        "loss_per_race_lbf": {"mean": 0.3400, "low90": 0.2400, "high90": 0.4500},
        "p_past_limit": 0.001000,
        "p_due": 0.190000,
        "races_left": {"p10": 3, "median": 5, "p90": 9},
        "status": "sound",
        "past_by": null,
        "off_trend": false,
        "reasons": []
      }
    ]
  }
]
)");
}

TEST(AssessmentJsonTest, WritesNullForWhatCannotBeTold) {
    Assessment assessment;
    assessment.engine = QStringLiteral("Empty");
    SpringAssessment spring;
    spring.pDue = std::nan("");
    spring.racesLeft = RacesLeft{4, {}, {}};
    assessment.springs.push_back(spring);
    const QJsonDocument document = QJsonDocument::fromJson(assessmentsToJson({&assessment, 1}));
    const QJsonValue engine = document[0];
    EXPECT_TRUE(engine[QStringLiteral("as_of")].isNull());
    EXPECT_TRUE(engine[QStringLiteral("inspections")].toArray().isEmpty());
    const QJsonValue written = engine[QStringLiteral("springs")][0];
    EXPECT_TRUE(written[QStringLiteral("latest_on")].isNull());
    EXPECT_TRUE(written[QStringLiteral("baseline_lbf")].isNull());
    EXPECT_TRUE(written[QStringLiteral("loss_lbf")].isNull());
    EXPECT_TRUE(written[QStringLiteral("loss_per_race_lbf")].isNull());
    EXPECT_TRUE(written[QStringLiteral("p_due")].isNull());
    EXPECT_EQ(written[QStringLiteral("races_left")][QStringLiteral("p10")].toInt(), 4);
    EXPECT_TRUE(written[QStringLiteral("races_left")][QStringLiteral("median")].isNull());
    EXPECT_EQ(written[QStringLiteral("status")].toString(), QStringLiteral("no-trend"));
}

TEST(AssessmentJsonTest, WritesNeitherExponentNorNegativeZero) {
    Assessment assessment = contractExample();
    assessment.springs.front().measuredLoss = Force::poundsForce(-1e-9);
    assessment.springs.front().pPastLimit = 1e-12;
    const std::string json = jsonOf({assessment});
    EXPECT_NE(json.find("\"measured_loss_lbf\": 0.0000,"), std::string::npos);
    EXPECT_NE(json.find("\"p_past_limit\": 0.000000,"), std::string::npos);
}

TEST(AssessmentJsonTest, PutsEnginesInOrderOfCodePointsAndReasonsInEnglish) {
    // U+E000 comes before U+1F600, although the UTF-16 of the latter begins with the lower unit.
    std::vector<Assessment> assessments(3, contractExample());
    assessments[0].engine = QString::fromUtf8("\xF0\x9F\x98\x80");
    assessments[1].engine = QString::fromUtf8("\xEE\x80\x80");
    assessments[2].engine = QStringLiteral("a\"\\\n\x01");
    assessments[2].springs.front().reasons.push_back({ReasonKind::TestAgainBeforeSwapping, {}, {}});
    const QJsonDocument document = QJsonDocument::fromJson(assessmentsToJson(assessments));
    EXPECT_EQ(document[0][QStringLiteral("engine")].toString(), assessments[2].engine);
    EXPECT_EQ(document[1][QStringLiteral("engine")].toString(), assessments[1].engine);
    const QString reason =
        document[0][QStringLiteral("springs")][0][QStringLiteral("reasons")][0].toString();
    EXPECT_TRUE(reason.contains(QStringLiteral("again"))) << reason.toStdString();
}

TEST(AssessmentJsonTest, WritesAnEmptyArrayForNoEngines) {
    EXPECT_EQ(jsonOf({}), "[]\n");
}

} // namespace
} // namespace coilbook
