#include "tests/support/printers.h"
#include "ui/drawing/standing_mark.h"
#include "ui/models/standing_table_model.h"

#include <QAbstractItemModelTester>
#include <QSortFilterProxyModel>
#include <gtest/gtest.h>

namespace coilbook {
namespace {

Force lbf(double value) {
    return Force::poundsForce(value);
}

std::shared_ptr<const Assessment> threeSprings() {
    auto assessment = std::make_shared<Assessment>();
    SpringAssessment sound;
    sound.label = QStringLiteral("S-1");
    sound.place = {Cylinder(1), Valve::Intake};
    sound.standing = Standing::Sound;
    sound.inspections = 4;
    sound.measuredLoss = lbf(0.96);
    sound.loss = ForceEstimate{lbf(0.8), lbf(0.2), lbf(1.4)};
    sound.lossPerRace = ForceEstimate{lbf(0.104), lbf(0.0), lbf(0.2)};
    sound.racesLeft = RacesLeft{12, std::nullopt, std::nullopt};
    SpringAssessment past = sound;
    past.label = QStringLiteral("S-6");
    past.place = {Cylinder(3), Valve::Exhaust};
    past.standing = Standing::PastLimit;
    past.offTrend = true;
    past.measuredLoss = lbf(5.25);
    past.racesLeft = RacesLeft{0, 0, 2};
    SpringAssessment fresh;
    fresh.label = QStringLiteral("S-17");
    fresh.place = {Cylinder(2), Valve::Exhaust};
    fresh.standing = Standing::NoTrend;
    fresh.inspections = 1;
    assessment->springs = {sound, fresh, past};
    return assessment;
}

class StandingTableModelTest : public ::testing::Test {
protected:
    StandingTableModelTest() {
        model.setAssessment(threeSprings(), Quantities(ForceUnit::PoundForce, QLocale(QLocale::C)));
    }

    [[nodiscard]] QString text(int row, int column) const {
        return model.index(row, column).data().toString();
    }

    StandingTableModel model;
    QAbstractItemModelTester tester{&model, QAbstractItemModelTester::FailureReportingMode::Fatal};
};

TEST_F(StandingTableModelTest, ListsTheMostUrgentFirst) {
    ASSERT_EQ(model.rowCount(), 3);
    EXPECT_EQ(text(0, StandingTableModel::SpringColumn), QStringLiteral("S-6"));
    EXPECT_EQ(text(1, StandingTableModel::SpringColumn), QStringLiteral("S-1"));
    EXPECT_EQ(text(2, StandingTableModel::SpringColumn), QStringLiteral("S-17"));
    EXPECT_EQ(model.rowOf({Cylinder(1), Valve::Intake}), 1);
    EXPECT_EQ(model.rowOf({Cylinder(8), Valve::Intake}), -1);
}

TEST_F(StandingTableModelTest, WritesNumbersAsTheShopReadsThem) {
    EXPECT_EQ(text(1, StandingTableModel::PlaceColumn), QStringLiteral("1 I"));
    EXPECT_EQ(text(1, StandingTableModel::MeasuredColumn), QStringLiteral("1.0"));
    EXPECT_EQ(text(1, StandingTableModel::EstimatedColumn), QStringLiteral("0.8 (0.2 to 1.4)"));
    EXPECT_EQ(text(1, StandingTableModel::PerRaceColumn), QStringLiteral("0.10"));
    EXPECT_EQ(text(0, StandingTableModel::RacesLeftColumn), QStringLiteral("0 (0 to 2)"));
    EXPECT_EQ(text(1, StandingTableModel::RacesLeftColumn),
              QStringLiteral("over 60 (12 to over 60)"));
    EXPECT_EQ(text(2, StandingTableModel::RacesLeftColumn), QStringLiteral("–"));
    EXPECT_EQ(text(2, StandingTableModel::MeasuredColumn), QStringLiteral("–"));
}

TEST_F(StandingTableModelTest, SaysTheStandingInWordsWithItsFlagAndGivesItsMark) {
    EXPECT_EQ(text(0, StandingTableModel::StandingColumn),
              QStringLiteral("past the limit, off its trend"));
    EXPECT_EQ(text(2, StandingTableModel::StandingColumn), QStringLiteral("no trend yet"));
    const auto mark = model.index(0, StandingTableModel::StandingColumn)
                          .data(StandingTableModel::MarkRole)
                          .value<StandingMark>();
    EXPECT_EQ(mark.standing, Standing::PastLimit);
    ASSERT_TRUE(mark.used.has_value());
    EXPECT_NEAR(*mark.used, 1.05, 1e-12);
}

TEST_F(StandingTableModelTest, SortsByQuantityAndPutsTheUnknownLast) {
    QSortFilterProxyModel proxy;
    proxy.setSourceModel(&model);
    proxy.setSortRole(StandingTableModel::SortRole);
    const auto order = [&](int column) {
        proxy.sort(column);
        QStringList labels;
        for (int row = 0; row < proxy.rowCount(); ++row) {
            labels << proxy.index(row, StandingTableModel::SpringColumn).data().toString();
        }
        return labels.join(QLatin1Char(' '));
    };
    EXPECT_EQ(order(StandingTableModel::MeasuredColumn), QStringLiteral("S-1 S-6 S-17"));
    EXPECT_EQ(order(StandingTableModel::RacesLeftColumn), QStringLiteral("S-6 S-1 S-17"));
    EXPECT_EQ(order(StandingTableModel::PlaceColumn), QStringLiteral("S-1 S-17 S-6"));
    EXPECT_EQ(order(StandingTableModel::StandingColumn), QStringLiteral("S-6 S-1 S-17"));
}

TEST_F(StandingTableModelTest, EmptiesWithoutAnAssessment) {
    model.setAssessment(nullptr, Quantities());
    EXPECT_EQ(model.rowCount(), 0);
}

} // namespace
} // namespace coilbook
