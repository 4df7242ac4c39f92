#include "tests/core/wear/flat_model.h"
#include "tests/core/wear/reference_season.h"

#include <gtest/gtest.h>

#include <cmath>
#include <map>
#include <string>

namespace coilbook {
namespace {

using testing::FlatModel;
using testing::MixedModelData;

class MixedModelTest : public ::testing::TestWithParam<const char*> {
protected:
    static MixedModelData data() {
        const std::string name = GetParam();
        if (name.starts_with("engine")) {
            return MixedModelData(testing::referenceSeason(name).arranged.season);
        }
        return name == "sleepstudy"
                   ? MixedModelData("mixed/sleepstudy.csv", "Subject", "Days", "Days", "Reaction")
                   : MixedModelData("mixed/" + name + ".csv", "spring", "session", "x", "y");
    }
};

// Source: lme4 (Bates, Maechler, Bolker and Walker, Journal of Statistical Software 67 (2015) 1),
// run live. Tolerance 1e-5 relative; an effect that is nearly nothing, relative to its SD.
TEST_P(MixedModelTest, WithFlatPriorsTheModelIsTheOneLme4Fits) {
    const MixedModelData mixed = data();
    const auto expected = testing::runLme4(mixed);
    if (!expected) {
        GTEST_SKIP() << "Rscript or its package lme4 is not installed";
    }
    const double sigma = expected->at("sigma");
    FlatModel model(mixed);
    const FlatModel::Logs logs = model.optimum();
    constexpr double kRelative = 1e-5;
    const auto expectSd = [&](double found, double sd, const char* name) {
        if (sd < 1e-6 * sigma) {
            EXPECT_LT(found, 1e-3 * sigma) << name << " is 0";
        } else {
            EXPECT_NEAR(found, sd, kRelative * sd) << name;
        }
    };
    expectSd(std::exp(logs[0]), sigma, "sigma");
    expectSd(std::exp(logs[1]), expected->at("sigma_c"), "sigma_c");
    expectSd(std::exp(logs[2]), expected->at("tau"), "tau");
    for (std::size_t life = 0; life < mixed.lives().size(); ++life) {
        const double slope = expected->at("slope:" + mixed.lives()[life]);
        const double scale = std::max(std::abs(slope), expected->at("tau"));
        EXPECT_NEAR(model.slope(life), slope, kRelative * scale) << mixed.lives()[life];
    }
    for (std::size_t session = 0; session < mixed.sessions().size(); ++session) {
        const double shift = expected->at("shift:" + mixed.sessions()[session]);
        const double sigmaC = expected->at("sigma_c");
        const double tolerance = sigmaC < 1e-6 * sigma
                                     ? 1e-3 * sigma // there is none, within the spread allowed
                                     : kRelative * std::max(std::abs(shift), sigmaC);
        EXPECT_NEAR(model.shift(session), shift, tolerance) << mixed.sessions()[session];
    }
}

INSTANTIATE_TEST_SUITE_P(Sets, MixedModelTest,
                         ::testing::Values("sim_balanced", "sim_staggered", "sleepstudy",
                                           "engine05", "engine09"),
                         [](const auto& name) { return std::string(name.param); });

} // namespace
} // namespace coilbook
