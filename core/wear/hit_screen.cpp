#include "core/wear/hit_screen.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>
#include <optional>

namespace coilbook::wear {

namespace {

double meanOf(const std::vector<double>& values) {
    return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

double medianOf(std::vector<double> values) {
    std::sort(values.begin(), values.end());
    const std::size_t half = values.size() / 2;
    return values.size() % 2 == 1 ? values[half] : 0.5 * (values[half - 1] + values[half]);
}

double rangeOf(const std::vector<double>& hits) {
    const auto [least, most] = std::minmax_element(hits.begin(), hits.end());
    return *most - *least;
}

/// h of one tester: how far apart the hits of a group may lie.
double thresholdOf(const std::vector<HitGroup>& groups, std::size_t tester, double graduation) {
    std::vector<double> ofTwo;
    std::vector<double> ofThree;
    for (const HitGroup& group : groups) {
        if (group.tester == tester && group.hits.size() == 2) {
            ofTwo.push_back(rangeOf(group.hits));
        } else if (group.tester == tester && group.hits.size() == 3) {
            ofThree.push_back(rangeOf(group.hits));
        }
    }
    double within = 0.0;
    if (!ofThree.empty() && ofThree.size() >= ofTwo.size()) {
        within = medianOf(ofThree) / 1.59;
    } else if (!ofTwo.empty()) {
        within = medianOf(ofTwo) / 0.954;
    }
    return std::max(4.0, 1.5 * graduation + 5.0 * within);
}

class HitScreen {
public:
    HitScreen(std::vector<HitGroup>& groups, std::span<const double> graduations)
        : m_groups(groups) {
        for (std::size_t tester = 0; tester < graduations.size(); ++tester) {
            m_thresholds.push_back(thresholdOf(groups, tester, graduations[tester]));
        }
        for (const HitGroup& group : groups) {
            m_rawMeans.push_back(meanOf(group.hits));
        }
    }

    std::vector<ScreenedHit> run() {
        for (std::size_t first = 0; first < m_groups.size();) {
            std::size_t last = first;
            while (last < m_groups.size() && m_groups[last].session == m_groups[first].session) {
                ++last;
            }
            screenSession(first, last);
            first = last;
        }
        return std::move(m_removed);
    }

private:
    void screenSession(std::size_t first, std::size_t last) {
        std::optional<double> change; // made only when asked for
        for (std::size_t g = first; g < last; ++g) {
            screenGroup(g, first, last, change);
        }
        for (std::size_t g = first; g < last; ++g) {
            m_keptMeans[m_groups[g].life] = meanOf(m_groups[g].hits);
        }
    }

    void screenGroup(std::size_t g, std::size_t first, std::size_t last,
                     std::optional<double>& change) {
        if (m_groups[g].kept) {
            return;
        }
        std::vector<double>& hits = m_groups[g].hits;
        std::vector<std::size_t> positions(hits.size());
        std::iota(positions.begin(), positions.end(), std::size_t{0});
        while (hits.size() >= 2 && rangeOf(hits) > m_thresholds[m_groups[g].tester]) {
            const double reference =
                hits.size() >= 3 ? medianOf(hits) : expected(m_groups[g].life, first, last, change);
            const auto farthest =
                std::max_element(hits.begin(), hits.end(), [&](double a, double b) {
                    return std::abs(a - reference) < std::abs(b - reference);
                });
            const auto at = farthest - hits.begin();
            m_removed.push_back({g, positions[static_cast<std::size_t>(at)]});
            hits.erase(farthest);
            positions.erase(positions.begin() + at);
        }
    }

    /// What the life should read in this session, from the reading before and the set's change.
    double expected(std::size_t life, std::size_t first, std::size_t last,
                    std::optional<double>& change) {
        const auto before = m_keptMeans.find(life);
        if (before == m_keptMeans.end()) {
            return medianOfBaselines();
        }
        if (!change) {
            std::vector<double> changes;
            for (std::size_t g = first; g < last; ++g) {
                const auto earlier = m_keptMeans.find(m_groups[g].life);
                if (earlier != m_keptMeans.end()) {
                    changes.push_back(m_rawMeans[g] - earlier->second);
                }
            }
            change = medianOf(changes); // the life itself is among them
        }
        return before->second + *change;
    }

    double medianOfBaselines() const {
        std::map<std::size_t, double> baselines;
        for (std::size_t g = 0; g < m_groups.size(); ++g) {
            baselines.emplace(m_groups[g].life, m_rawMeans[g]);
        }
        std::vector<double> values;
        for (const auto& [life, mean] : baselines) {
            values.push_back(mean);
        }
        return medianOf(values);
    }

    std::vector<HitGroup>& m_groups;
    std::vector<double> m_thresholds;
    std::vector<double> m_rawMeans;
    std::map<std::size_t, double> m_keptMeans; ///< of each life's last session so far
    std::vector<ScreenedHit> m_removed;
};

} // namespace

std::vector<ScreenedHit> screenHits(std::vector<HitGroup>& groups,
                                    std::span<const double> graduations) {
    return HitScreen(groups, graduations).run();
}

} // namespace coilbook::wear
