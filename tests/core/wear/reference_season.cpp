#include "tests/core/wear/reference_season.h"

#include "tests/support/csv_table.h"
#include "tests/support/log_builder.h"

#include <stdexcept>

namespace coilbook::testing {

namespace {

QDate dayOf(const std::string& text) {
    return QDate::fromString(QString::fromStdString(text), Qt::ISODate);
}

void addReadings(LogBuilder& builder, const CsvTable& table) {
    QDate open;
    for (std::size_t row = 0; row < table.rows(); ++row) {
        const QDate day = dayOf(table.text(row, "inspected_on"));
        if (day != open) {
            builder.inspection(day, std::stoi(table.text(row, "engine_races")));
            open = day;
        }
        const int cylinder = std::stoi(table.text(row, "cylinder"));
        builder.reading(table.text(row, "valve") == "I" ? intake(cylinder) : exhaust(cylinder),
                        QString::fromStdString(table.text(row, "spring")),
                        QString::fromStdString(table.text(row, "reading_lbf")));
    }
}

void addRaces(LogBuilder& builder, const CsvTable& table) {
    for (std::size_t row = 0; row < table.rows(); ++row) {
        builder.race(std::stoi(table.text(row, "race")), dayOf(table.text(row, "raced_on")));
        builder.log().races.back().overRev = table.text(row, "over_rev") == "1";
    }
}

} // namespace

std::string ReferenceSeason::nameOf(std::size_t life) const {
    const std::size_t index = arranged.lives[life];
    const Place& place = history.lives[index].place;
    int ordinal = 1;
    for (std::size_t i = 0; i < index; ++i) {
        ordinal += history.lives[i].place == place ? 1 : 0;
    }
    return std::to_string(place.cylinder.number()) + (place.valve == Valve::Intake ? " I" : " E") +
           " life " + std::to_string(ordinal);
}

ReferenceSeason referenceSeason(const std::string& name) {
    LogBuilder builder;
    addReadings(builder, CsvTable("wear/" + name + "_readings.csv"));
    addRaces(builder, CsvTable("wear/" + name + "_races.csv"));
    ReferenceSeason season;
    season.history = historyOf(builder.log(), builder.log().inspections.back().inspectedOn);
    season.arranged = wear::seasonOf(season.history);
    return season;
}

wear::Fit fitAt(const wear::Season& season, const wear::Hyperparameters& theta,
                const std::vector<wear::Event>& events) {
    wear::Fit fit;
    fit.prior = wear::hyperPriorFor(season.hitDegreesOfFreedom);
    fit.design = wear::designOf(season, events);
    fit.nodes = {{wear::Eta::Zero(), 1.0}};
    fit.solutions.resize(1);
    if (!fit.solutions.front().solve(fit.design, theta,
                                     wear::coefficientPriorsAt(theta.lambda, season.overRevs))) {
        throw std::runtime_error("no solution");
    }
    fit.atMode = fit.solutions.front();
    return fit;
}

} // namespace coilbook::testing
