#include "core/statistics/crossed_study.h"

#include "core/statistics/distributions.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace coilbook::statistics {

namespace {

constexpr double kPoolAbove = 0.25;

/// Sums and counts of the readings of one group.
struct Group {
    double sum = 0.0;
    std::size_t count = 0;

    void add(double value) {
        sum += value;
        ++count;
    }

    [[nodiscard]] double mean() const { return sum / static_cast<double>(count); }
};

double squaredOff(const std::vector<Group>& groups, double centre) {
    double sum = 0.0;
    for (const Group& group : groups) {
        const double off = group.mean() - centre;
        sum += static_cast<double>(group.count) * off * off;
    }
    return sum;
}

} // namespace

double AnovaLine::meanSquare() const {
    return degreesOfFreedom == 0 ? 0.0 : sumOfSquares / static_cast<double>(degreesOfFreedom);
}

std::optional<double> CrossedAnova::interactionF() const {
    if (interaction.degreesOfFreedom == 0 || repeat.meanSquare() <= 0.0) {
        return std::nullopt;
    }
    return interaction.meanSquare() / repeat.meanSquare();
}

std::optional<double> CrossedAnova::interactionP() const {
    const std::optional<double> f = interactionF();
    return f ? fUpperTail(*f, static_cast<double>(interaction.degreesOfFreedom),
                          static_cast<double>(repeat.degreesOfFreedom))
             : std::nullopt;
}

std::optional<CrossedAnova> analyseCrossed(std::span<const StudyReading> readings,
                                           std::size_t parts, std::size_t persons) {
    if (parts < 2 || persons < 1 || readings.empty()) {
        return std::nullopt;
    }
    // Sums about the first reading keep the digits of readings that differ in the last ones.
    const double origin = readings.front().value;
    Group all;
    std::vector<Group> byPart(parts);
    std::vector<Group> byPerson(persons);
    std::vector<Group> byCell(parts * persons);
    for (const StudyReading& reading : readings) {
        if (reading.part >= parts || reading.person >= persons || !std::isfinite(reading.value)) {
            return std::nullopt;
        }
        const double value = reading.value - origin;
        all.add(value);
        byPart[reading.part].add(value);
        byPerson[reading.person].add(value);
        byCell[reading.part * persons + reading.person].add(value);
    }
    const std::size_t hits = byCell.front().count;
    if (hits < 2 || std::any_of(byCell.begin(), byCell.end(),
                                [&](const Group& cell) { return cell.count != hits; })) {
        return std::nullopt;
    }
    CrossedAnova anova{parts, persons, hits, {}, {}, {}, {}, {}};
    const double centre = all.mean();
    anova.part = {squaredOff(byPart, centre), parts - 1};
    anova.person = {squaredOff(byPerson, centre), persons - 1};
    anova.interaction.degreesOfFreedom = (parts - 1) * (persons - 1);
    anova.repeat.degreesOfFreedom = parts * persons * (hits - 1);
    anova.total.degreesOfFreedom = readings.size() - 1;
    for (std::size_t p = 0; p < parts; ++p) {
        for (std::size_t q = 0; q < persons; ++q) {
            const double off =
                byCell[p * persons + q].mean() - byPart[p].mean() - byPerson[q].mean() + centre;
            anova.interaction.sumOfSquares += static_cast<double>(hits) * off * off;
        }
    }
    for (const StudyReading& reading : readings) {
        const double value = reading.value - origin;
        const double within = value - byCell[reading.part * persons + reading.person].mean();
        anova.repeat.sumOfSquares += within * within;
        anova.total.sumOfSquares += (value - centre) * (value - centre);
    }
    return anova;
}

std::optional<double> VarianceShares::distinctCategories() const {
    if (measuring() <= 0.0) {
        return std::nullopt;
    }
    return std::sqrt(2.0 * part / measuring());
}

VarianceShares varianceShares(const CrossedAnova& anova, Pooling pooling) {
    VarianceShares shares;
    const std::optional<double> p = anova.interactionP();
    shares.pooled = anova.interaction.degreesOfFreedom > 0 &&
                    (pooling == Pooling::Always ||
                     (pooling == Pooling::WhenInteractionIsUnclear && p && *p > kPoolAbove));
    AnovaLine error = anova.repeat;
    if (shares.pooled) {
        error.sumOfSquares += anova.interaction.sumOfSquares;
        error.degreesOfFreedom += anova.interaction.degreesOfFreedom;
    }
    const auto hits = static_cast<double>(anova.hits);
    const auto parts = static_cast<double>(anova.parts);
    const auto persons = static_cast<double>(anova.persons);
    shares.repeatability = error.meanSquare();
    shares.repeatabilityDf = static_cast<double>(error.degreesOfFreedom);
    // What persons and parts are judged against: the interaction unless it was pooled away or
    // cannot be told with one person.
    const bool separate = anova.interaction.degreesOfFreedom > 0 && !shares.pooled;
    const double against = separate ? anova.interaction.meanSquare() : error.meanSquare();
    if (separate) {
        shares.interaction =
            std::max(0.0, (anova.interaction.meanSquare() - error.meanSquare()) / hits);
    }
    if (anova.persons > 1) {
        shares.person = std::max(0.0, (anova.person.meanSquare() - against) / (parts * hits));
    }
    shares.part = std::max(0.0, (anova.part.meanSquare() - against) / (persons * hits));
    return shares;
}

} // namespace coilbook::statistics
