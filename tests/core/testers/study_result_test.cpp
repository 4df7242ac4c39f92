#include "core/testers/study_result.h"
#include "tests/support/csv_table.h"

#include <gtest/gtest.h>

#include <cmath>

namespace coilbook {
namespace {

/// The worked example of AIAG, Measurement Systems Analysis, 4th ed. 2010, chapter III, moved up by
/// 100 (forces are positive; variances stay) and taken as lbf; see tests/data/gauge/SOURCE.
RepeatabilityStudy workedExample() {
    RepeatabilityStudy study;
    for (int part = 1; part <= 10; ++part) {
        study.springs << QString::number(part);
    }
    study.persons = {QStringLiteral("A"), QStringLiteral("B"), QStringLiteral("C")};
    study.hits = 3;
    study.readings.resize(study.size());
    const testing::CsvTable data("gauge/aiag_grr_data.csv");
    for (std::size_t row = 0; row < data.rows(); ++row) {
        const auto hundredths = std::llround(100.0 * data.number(row, "y"));
        study.readings[study.at(static_cast<int>(data.number(row, "part")) - 1,
                                data.text(row, "appraiser").at(0) - 'A',
                                static_cast<int>(data.number(row, "trial")) - 1)] =
            TypedForce(10'000 + hundredths, 2, ForceUnit::PoundForce);
    }
    return study;
}

double published(const char* quantity) {
    const testing::CsvTable table("gauge/aiag_grr_reference.csv");
    for (std::size_t row = 0; row < table.rows(); ++row) {
        if (table.text(row, "section") == "anova_pooled" &&
            table.text(row, "quantity") == quantity) {
            return table.number(row, "computed_here");
        }
    }
    throw std::runtime_error(quantity);
}

TEST(StudyResultTest, SaysOfTheWorkedExampleWhatTheManualSays) {
    const StudyResult result = resultOf(workedExample()).value();
    EXPECT_NEAR(result.tester.inPoundsForce(), published("sd_EV"), 1e-9);
    EXPECT_NEAR(result.persons.inPoundsForce(), published("sd_AV"), 1e-9);
    EXPECT_NEAR(result.springs.inPoundsForce(), published("sd_PV"), 1e-9);
    EXPECT_NEAR(100.0 * (result.testerShare + result.personsShare),
                published("pct_contribution_GRR"), 1e-7);
    EXPECT_NEAR(result.testerShare + result.personsShare + result.springsShare, 1.0, 1e-12);
    EXPECT_EQ(result.grades, 4);
    EXPECT_FALSE(result.onePerson);
}

TEST(StudyResultTest, WaitsForTheLastReading) {
    RepeatabilityStudy study = workedExample();
    study.readings.back().reset();
    EXPECT_FALSE(resultOf(study).has_value());
    study.readings.pop_back();
    EXPECT_FALSE(resultOf(study).has_value());
}

TEST(StudyResultTest, OnePersonLeavesThePersonsOpen) {
    RepeatabilityStudy study;
    study.springs = {QStringLiteral("S-1"), QStringLiteral("S-2")};
    study.persons = {QStringLiteral("Kim")};
    study.hits = 2;
    for (const int lbf : {120, 121, 130, 129}) {
        study.readings.emplace_back(TypedForce(lbf, 0, ForceUnit::PoundForce));
    }
    const StudyResult result = resultOf(study).value();
    EXPECT_TRUE(result.onePerson);
    EXPECT_EQ(result.persons, Force());
    EXPECT_NEAR(result.tester.inPoundsForce(), std::sqrt(0.5), 1e-12);
}

} // namespace
} // namespace coilbook
