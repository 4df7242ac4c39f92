#pragma once

#include <cstddef>
#include <optional>
#include <span>

namespace coilbook::statistics {

/// One reading of a crossed study: every person reads every part equally often.
struct StudyReading {
    std::size_t part = 0;
    std::size_t person = 0;
    double value = 0.0;
};

/// Sum of squares, its degrees of freedom and mean square.
struct AnovaLine {
    double sumOfSquares = 0.0;
    std::size_t degreesOfFreedom = 0;

    /// 0 without a degree of freedom.
    [[nodiscard]] double meanSquare() const;
};

/// Two-way crossed analysis of variance with repeats, parts and persons both random.
struct CrossedAnova {
    std::size_t parts = 0;
    std::size_t persons = 0;
    std::size_t hits = 0; ///< of each person on each part
    AnovaLine part;
    AnovaLine person;
    AnovaLine interaction; ///< part by person
    AnovaLine repeat;      ///< within a part and a person
    AnovaLine total;

    /// F of the interaction against the repeats and its tail probability; nothing with one person
    /// or repeats that are all equal.
    [[nodiscard]] std::optional<double> interactionF() const;
    [[nodiscard]] std::optional<double> interactionP() const;
};

/// Nothing unless there are at least two parts, one person and two hits, and every person read
/// every part equally often.
[[nodiscard]] std::optional<CrossedAnova> analyseCrossed(std::span<const StudyReading> readings,
                                                         std::size_t parts, std::size_t persons);

/// Where the spread of a measuring process comes from: variances by the expected mean squares of
/// the random model, negative estimates set to 0 (AIAG, Measurement Systems Analysis, 4th ed.
/// 2010, chapter III; Montgomery, Design and Analysis of Experiments, section 13.2).
struct VarianceShares {
    double repeatability = 0.0; ///< the tester: hits on the same part by the same person
    double person = 0.0;
    double interaction = 0.0;
    double part = 0.0;
    double repeatabilityDf = 0.0;
    bool pooled = false; ///< the interaction went into repeatability

    [[nodiscard]] double reproducibility() const { return person + interaction; }

    /// Repeatability and reproducibility together: all that is not the parts.
    [[nodiscard]] double measuring() const { return repeatability + reproducibility(); }

    [[nodiscard]] double total() const { return measuring() + part; }

    /// √2 · SD of the parts / SD of measuring (AIAG rounds √2 to 1.41), the number of grades of
    /// part that the process tells apart before it is cut to a whole number; nothing where
    /// measuring has no spread at all.
    [[nodiscard]] std::optional<double> distinctCategories() const;
};

enum class Pooling {
    Never,
    Always,
    WhenInteractionIsUnclear, ///< pooled where its tail probability is above 0.25 (AIAG's usual
                              ///< choice, from memory)
};

/// One person has no reproducibility: person and interaction are 0.
[[nodiscard]] VarianceShares varianceShares(const CrossedAnova& anova, Pooling pooling);

} // namespace coilbook::statistics
