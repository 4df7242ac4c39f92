#include "core/wear/nodes.h"

#include <algorithm>
#include <bit>
#include <cmath>
#include <limits>

namespace coilbook::wear {

namespace {

struct RulePoint {
    Eta z;
    double weight;
};

std::vector<RulePoint> degreeFiveRule() {
    std::vector<RulePoint> rule{{Eta::Zero(), 2.0 / 7.0}};
    for (int i = 0; i < kEta; ++i) {
        for (const double sign : {1.0, -1.0}) {
            Eta z = Eta::Zero();
            z[i] = sign * std::sqrt(7.0);
            rule.push_back({z, 1.0 / 49.0});
        }
    }
    for (unsigned pattern = 0; pattern < 1U << static_cast<unsigned>(kEta); ++pattern) {
        if (std::popcount(pattern) % 2 != 0) {
            continue;
        }
        Eta z;
        for (int i = 0; i < kEta; ++i) {
            z[i] = ((pattern >> static_cast<unsigned>(i)) & 1U) != 0U ? std::sqrt(1.4)
                                                                      : -std::sqrt(1.4);
        }
        rule.push_back({z, 25.0 / 784.0});
    }
    return rule;
}

/// log(rule weight) + |z|²/2 - f, shifted so that the largest is 0, then normalised.
bool weigh(std::vector<Node>& nodes, const std::vector<RulePoint>& rule,
           const std::function<double(const Eta&)>& objective) {
    std::vector<double> logs(nodes.size());
    double largest = -std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < nodes.size(); ++i) {
        logs[i] =
            std::log(rule[i].weight) + 0.5 * rule[i].z.squaredNorm() - objective(nodes[i].eta);
        if (std::isnan(logs[i])) {
            logs[i] = -std::numeric_limits<double>::infinity();
        }
        largest = std::max(largest, logs[i]);
    }
    if (!std::isfinite(largest)) {
        return false;
    }
    double sum = 0.0;
    for (std::size_t i = 0; i < nodes.size(); ++i) {
        nodes[i].weight = std::exp(logs[i] - largest);
        sum += nodes[i].weight;
    }
    for (Node& node : nodes) {
        node.weight /= sum;
    }
    return true;
}

} // namespace

std::vector<Node> nodesAround(const Eta& mode, const EigenSystem& axes,
                              const std::function<double(const Eta&)>& objective) {
    static const std::vector<RulePoint> kRule = degreeFiveRule();
    std::vector<Node> nodes;
    nodes.reserve(kRule.size());
    const Eta scale = axes.values.cwiseSqrt().cwiseInverse();
    for (const RulePoint& point : kRule) {
        nodes.push_back({mode + axes.vectors * scale.cwiseProduct(point.z), 0.0});
    }
    if (!weigh(nodes, kRule, objective)) {
        nodes.clear();
    }
    return nodes;
}

} // namespace coilbook::wear
