#include "core/assessment/odds_ahead.h"
#include "core/wear/outputs.h"
#include "core/wear/session_check.h"
#include "tests/core/wear/reference_season.h"
#include "tests/support/csv_table.h"

#include <gtest/gtest.h>

#include <map>
#include <ostream>
#include <regex>
#include <string>
#include <vector>

namespace coilbook {
namespace {

using testing::CsvTable;
using testing::ReferenceSeason;

// Source: a second implementation, written from the specification of the model alone
// (tests/data/wear/SOURCE); tolerances of its section 12.
constexpr double kLoss = 0.01;
constexpr double kBound = 0.02;
constexpr double kRate = 0.003;
constexpr double kProbability = 0.005;

struct Names {
    const char* season;
    const char* expected;
};

void PrintTo(const Names& names, std::ostream* stream) {
    *stream << names.season;
}

class ReferenceSeasonsTest : public ::testing::TestWithParam<Names> {
protected:
    void SetUp() override {
        m_season = testing::referenceSeason(GetParam().season);
        m_fit = wear::fitSeason(season());
        ASSERT_TRUE(m_fit.has_value());
    }

    [[nodiscard]] CsvTable expected() const {
        return CsvTable(std::string("wear/") + GetParam().expected);
    }

    [[nodiscard]] const wear::Season& season() const { return m_season.arranged.season; }

    ReferenceSeason m_season;
    std::optional<wear::Fit> m_fit;
};

/// Lives that stand in the engine, by name without the ordinal.
std::map<std::string, std::size_t> fittedLivesOf(const ReferenceSeason& season) {
    std::map<std::string, std::size_t> lives;
    for (std::size_t i = 0; i < season.arranged.season.lives.size(); ++i) {
        if (season.history.lives[season.arranged.lives[i]].fitted) {
            const std::string name = season.nameOf(i);
            lives[name.substr(0, name.find(" life"))] = i;
        }
    }
    return lives;
}

TEST_P(ReferenceSeasonsTest, EveryFittedSpringHasTheFiguresOfTheSecondImplementation) {
    const CsvTable table = expected();
    const auto lives = fittedLivesOf(m_season);
    ASSERT_EQ(table.rows(), lives.size());
    for (std::size_t row = 0; row < table.rows(); ++row) {
        const std::string name = table.text(row, "cylinder") + ' ' + table.text(row, "valve");
        SCOPED_TRACE(name);
        const wear::LifePosterior life = wear::posteriorOfLife(lives.at(name), season(), *m_fit);
        const wear::Mixture now = life.lossNow();
        const wear::Mixture rate = life.rate();
        const wear::Mixture ahead = life.lossAhead(3);
        const OddsAhead odds = life.oddsAhead(5.0);
        EXPECT_NEAR(now.mean(), table.number(row, "loss"), kLoss);
        EXPECT_NEAR(now.sd(), table.number(row, "loss_sd"), kLoss);
        EXPECT_NEAR(now.quantile(0.05), table.number(row, "loss_lo90"), kBound);
        EXPECT_NEAR(now.quantile(0.95), table.number(row, "loss_hi90"), kBound);
        EXPECT_NEAR(rate.mean(), table.number(row, "rate"), kRate);
        EXPECT_NEAR(rate.sd(), table.number(row, "rate_sd"), kRate);
        EXPECT_NEAR(odds.front(), table.number(row, "p_past"), kProbability);
        EXPECT_NEAR(oddsDueWithin(odds, 3), table.number(row, "p_due"), kProbability);
        EXPECT_NEAR(ahead.mean(), table.number(row, "loss_ahead"), kLoss);
        EXPECT_NEAR(ahead.sd(), table.number(row, "loss_ahead_sd"), kLoss);
        const RacesLeft left = racesLeftBy(odds);
        EXPECT_EQ(left.p10.value_or(-1), std::stoi(table.text(row, "left_q10")));
        EXPECT_EQ(left.median.value_or(-1), std::stoi(table.text(row, "left_q50")));
        EXPECT_EQ(left.p90.value_or(-1), std::stoi(table.text(row, "left_q90")));
    }
}

struct FoundEvent {
    std::string what; ///< where, which inspection, which kind
    double logOddsMisread = 0.0;
    double logOddsDrop = 0.0;
};

std::map<std::string, FoundEvent> expectedEvents(const CsvTable& table) {
    static const std::regex kEvent(
        R"(# event cyl (\d+ [IE] life \d+) inspection (\d+) type (\w+) pending (\d) )"
        R"(lo_ao (\S+) lo_ls (\S+))");
    std::map<std::string, FoundEvent> events;
    for (const std::string& remark : table.remarks()) {
        std::smatch match;
        if (std::regex_search(remark, match, kEvent)) {
            const std::string what = match.str(1) + " inspection " + match.str(2) + ' ' +
                                     match.str(3) + (match.str(4) == "1" ? " pending" : "");
            events[what] = {what, std::stod(match.str(5)), std::stod(match.str(6))};
        }
    }
    return events;
}

TEST_P(ReferenceSeasonsTest, TheSameEventsAreFound) {
    const std::map<std::string, FoundEvent> expectedByName = expectedEvents(expected());
    EXPECT_EQ(m_fit->design.events.size(), expectedByName.size());
    for (const wear::Event& event : m_fit->design.events) {
        const std::size_t session = season().lives[event.life].cells[event.cell].session;
        const std::string what = m_season.nameOf(event.life) + " inspection " +
                                 std::to_string(session + 1) +
                                 (event.kind == wear::Event::Kind::Drop ? " drop" : " misread") +
                                 (event.pending ? " pending" : "");
        SCOPED_TRACE(what);
        const auto found = expectedByName.find(what);
        ASSERT_NE(found, expectedByName.end());
        // The odds are those "last computed" on the way of the search, which in the long seasons
        // goes through modes that are only known to the search's own tolerance.
        if (std::string(GetParam().season).starts_with("case_")) {
            constexpr double kPrinted = 0.02;
            EXPECT_NEAR(event.logOddsMisread, found->second.logOddsMisread, kPrinted);
            EXPECT_NEAR(event.logOddsDrop, found->second.logOddsDrop, kPrinted);
        }
    }
}

TEST_P(ReferenceSeasonsTest, TheNewestInspectionHasTheSameShiftAndScore) {
    static const std::regex kShift(R"(# session_effect (\S+) sd (\S+) z_prev (\S+))");
    std::smatch match;
    const CsvTable table = expected();
    ASSERT_TRUE(std::regex_search(table.remarks().at(1), match, kShift));
    const wear::Mixture shift = wear::shiftOf(season().sessions.size() - 1, *m_fit);
    EXPECT_NEAR(shift.mean(), std::stod(match.str(1)), kLoss);
    EXPECT_NEAR(shift.sd(), std::stod(match.str(2)), kLoss);
    const std::optional<double> score = wear::sessionCheck(season(), *m_fit);
    ASSERT_TRUE(score.has_value());
    EXPECT_NEAR(*score, std::stod(match.str(3)), kLoss);
}

INSTANTIATE_TEST_SUITE_P(
    Engines, ReferenceSeasonsTest,
    ::testing::Values(Names{"engine01", "ref01_event.csv"}, Names{"engine02", "ref02_event.csv"},
                      Names{"engine05", "ref05_event.csv"}, Names{"engine09", "ref09_event.csv"},
                      Names{"engine10", "ref10_event.csv"}, Names{"engine11", "ref11_event.csv"}),
    [](const auto& names) { return std::string(names.param.season); });

INSTANTIATE_TEST_SUITE_P(
    SingleRules, ReferenceSeasonsTest,
    ::testing::Values(Names{"case_high_last", "case_high_last_event.csv"},
                      Names{"case_pending_drop", "case_pending_drop_event.csv"},
                      Names{"case_pending_small", "case_pending_small_event.csv"},
                      Names{"case_slip_three_hits", "case_slip_three_hits_event.csv"},
                      Names{"case_slip_two_hits", "case_slip_two_hits_event.csv"},
                      Names{"case_two_inspections", "case_two_inspections_event.csv"}),
    [](const auto& names) { return std::string(names.param.season); });

} // namespace
} // namespace coilbook
