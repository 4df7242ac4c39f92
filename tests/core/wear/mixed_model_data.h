#pragma once

#include "core/wear/season.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace coilbook::testing {

/// Readings in the form that the mixed model is fitted to.
class MixedModelData {
public:
    /// A table of tests/data with these columns; all of one kind.
    MixedModelData(const std::string& file, const std::string& life, const std::string& session,
                   const std::string& x, const std::string& y);

    /// The cell means of a season.
    explicit MixedModelData(const wear::Season& season);

    /// Names in the order of their first row.
    [[nodiscard]] const std::vector<std::string>& lives() const { return m_lives; }

    [[nodiscard]] const std::vector<std::string>& sessions() const { return m_sessions; }

    [[nodiscard]] bool hasKinds() const;

    /// As the product sees them: run in, no rounding, one hit a cell.
    [[nodiscard]] wear::Season season() const;

    /// life, session, x, kind, y as comma-separated text.
    [[nodiscard]] std::string csv() const;

private:
    struct Row {
        std::size_t life = 0;
        std::size_t session = 0;
        double x = 0.0;
        int kind = 0;
        double y = 0.0;
    };

    std::vector<std::string> m_lives;
    std::vector<std::string> m_sessions;
    std::vector<Row> m_rows;
};

/// What tests/data/mixed/reml.R says of the data, by name; empty where R or lme4 is not installed.
/// With `repeats` its median time instead.
[[nodiscard]] std::optional<std::map<std::string, double>> runLme4(const MixedModelData& data,
                                                                   int repeats = 0);

} // namespace coilbook::testing
