#include "core/wear/event_scores.h"

#include "core/wear/functional.h"
#include "core/wear/mixture.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace coilbook::wear {

namespace {

constexpr double kNever = -std::numeric_limits<double>::infinity();
constexpr std::size_t kMostEventsOfALife = 5;

/// Gm = W - W V_fit W of a class and res = W (y - fit) of its lives (section 10, form 3).
struct Scores {
    Eigen::MatrixXd gm;
    Eigen::MatrixXd residuals; ///< n × lives
};

Scores scoresOf(std::size_t lifeClass, const Design& design, const Solution& solution) {
    const LifeClass& data = design.classes[lifeClass];
    const ClassSolution& own = solution.classes()[lifeClass];
    const Eigen::MatrixXd wt = own.wt.selfadjointView<Eigen::Lower>();
    const Eigen::Index statics = design.sharedColumns();
    const Eigen::Index n = data.x.size();
    Eigen::MatrixXd y = Eigen::MatrixXd::Zero(design.columns(), n);
    y.topRows(statics) = data.shared.transpose() * wt;
    Eigen::VectorXd fitted = own.f0 + data.shared * solution.phi().head(statics);
    for (Eigen::Index i = 0; i < n; ++i) {
        const Eigen::Index row = statics + data.sessions[static_cast<std::size_t>(i)];
        y.row(row) += wt.row(i);
        fitted[i] += solution.phi()[row];
    }
    solution.solveLower(y);
    Scores scores;
    scores.gm = wt - y.transpose() * y;
    scores.residuals = wt * (data.readings.colwise() - fitted);
    return scores;
}

std::vector<double> sessionMedians(const Season& season) {
    std::vector<std::vector<double>> means(season.sessions.size());
    for (const Life& life : season.lives) {
        for (const Cell& cell : life.cells) {
            means[cell.session].push_back(cell.mean);
        }
    }
    std::vector<double> medians(means.size(), 0.0);
    for (std::size_t t = 0; t < means.size(); ++t) {
        std::vector<double>& values = means[t];
        if (values.empty()) {
            continue;
        }
        std::sort(values.begin(), values.end());
        const std::size_t half = values.size() / 2;
        medians[t] =
            values.size() % 2 == 1 ? values[half] : 0.5 * (values[half - 1] + values[half]);
    }
    return medians;
}

/// Of two readings alone the model cannot say which is wrong; the set can, if one is far off.
std::optional<std::size_t> onlyCandidateOfTwo(const Life& life,
                                              const std::vector<double>& medians) {
    constexpr double kFartherLbf = 8.0;
    if (life.cells.size() != 2) {
        return std::nullopt;
    }
    const auto distance = [&](std::size_t cell) {
        return std::abs(life.cells[cell].mean - medians[life.cells[cell].session]);
    };
    if (distance(0) > distance(1) + kFartherLbf) {
        return 0;
    }
    if (distance(1) > distance(0) + kFartherLbf) {
        return 1;
    }
    return std::nullopt;
}

Candidate candidateAt(std::size_t lifeIndex, std::size_t cell, const Life& life,
                      const Scores& scores, Eigen::Index column) {
    const auto j = static_cast<Eigen::Index>(cell);
    const Eigen::Index n = scores.gm.rows();
    Candidate candidate;
    candidate.event.life = lifeIndex;
    candidate.event.cell = cell;
    candidate.logOdds = kNever;
    const double precision = scores.gm(j, j);
    if (!(precision > 1e-12)) {
        return candidate;
    }
    const double misread = scores.residuals(j, column) / precision;
    candidate.event.logOddsMisread = logOddsMisread(misread, 1.0 / precision);
    candidate.event.logOddsDrop = kNever;
    if (cell > 0) {
        const double tail = scores.gm.bottomRightCorner(n - j, n - j).sum();
        if (tail > 1e-12) {
            const double drop = -scores.residuals.col(column).tail(n - j).sum() / tail;
            if (drop > 0.0) {
                candidate.event.logOddsDrop =
                    logOddsDrop(drop, 1.0 / tail, life.cells[cell].x - life.cells[cell - 1].x);
            }
        }
    }
    const bool newest = cell + 1 == life.cells.size() && life.outSession == kStillFitted;
    if (newest && cell > 0 && misread < 0.0) {
        candidate.event.kind = Event::Kind::Drop;
        candidate.event.pending = true;
        candidate.logOdds = logSum(candidate.event.logOddsMisread, candidate.event.logOddsDrop);
    } else if (!newest && candidate.event.logOddsDrop > candidate.event.logOddsMisread) {
        candidate.event.kind = Event::Kind::Drop;
        candidate.logOdds = candidate.event.logOddsDrop;
    } else {
        candidate.event.kind = Event::Kind::Misread;
        candidate.logOdds = candidate.event.logOddsMisread;
    }
    return candidate;
}

/// Events of a life that the model has found itself.
std::size_t foundEvents(const Design& design, std::size_t life) {
    return static_cast<std::size_t>(
        std::count_if(design.events.begin(), design.events.end(),
                      [&](const Event& event) { return event.life == life && !event.byUser; }));
}

bool bearsEvent(const Design& design, std::size_t life, std::size_t cell) {
    return std::any_of(design.events.begin(), design.events.end(), [&](const Event& event) {
        return event.life == life && event.cell == cell;
    });
}

/// Mean and variance of an event's column with its own flat prior taken out.
std::pair<double, double> cavityOf(std::size_t event, const Design& design,
                                   const Solution& solution) {
    Functional functional;
    functional.life = design.events[event].life;
    functional.shared = Eigen::VectorXd::Zero(design.columns());
    const LifePosition& position = design.positions[functional.life];
    functional.local = Eigen::VectorXd::Zero(design.classes[position.lifeClass].local.cols());
    functional.local[design.columnOf(event)] = 1.0;
    const FunctionalPosterior posterior = posteriorOf(functional, design, solution);
    const double precision = 1.0 / posterior.variance() - solution.priors().eventPrecision;
    const double safe = std::max(precision, 1e-9);
    return {posterior.mean / (posterior.variance() * safe), 1.0 / safe};
}

} // namespace

std::vector<Event> eventsSaid(const Season& season) {
    std::vector<Event> events;
    for (std::size_t life = 0; life < season.lives.size(); ++life) {
        const std::vector<Cell>& cells = season.lives[life].cells;
        for (std::size_t cell = 0; cell < cells.size(); ++cell) {
            if (cells[cell].say == Say::Misread || cells[cell].say == Say::Drop) {
                Event event;
                event.life = life;
                event.cell = cell;
                event.kind =
                    cells[cell].say == Say::Drop ? Event::Kind::Drop : Event::Kind::Misread;
                event.byUser = true;
                events.push_back(event);
            }
        }
    }
    return events;
}

double logSum(double a, double b) {
    const double largest = std::max(a, b);
    if (!std::isfinite(largest)) {
        return largest;
    }
    return largest + std::log(std::exp(a - largest) + std::exp(b - largest));
}

double logOddsMisread(double estimate, double variance) {
    const double either = logSum(logNormalDensity(estimate, variance + 10.0 * 10.0),
                                 logNormalDensity(estimate, variance + 40.0 * 40.0)) -
                          std::log(2.0);
    return either - logNormalDensity(estimate, variance) + std::log(0.005);
}

double logOddsDrop(double estimate, double variance, double exposure) {
    return logNormalDensity(estimate - 6.0, variance + 3.0 * 3.0) -
           logNormalDensity(estimate, variance) + std::log(0.002 * std::max(exposure, 0.5));
}

std::optional<double> offTrendScore(std::size_t life, const Season& season, const Design& design,
                                    const Solution& solution) {
    const Life& data = season.lives[life];
    if (data.cells.size() < 2) {
        return std::nullopt;
    }
    const std::size_t last = data.cells.size() - 1;
    for (std::size_t e = 0; e < design.events.size(); ++e) {
        if (design.events[e].life == life && design.events[e].cell == last) {
            const auto [mean, variance] = cavityOf(e, design, solution);
            const double loss = design.events[e].kind == Event::Kind::Drop ? mean : -mean;
            return loss / std::sqrt(variance);
        }
    }
    const LifePosition& position = design.positions[life];
    const Scores scores = scoresOf(position.lifeClass, design, solution);
    const auto j = static_cast<Eigen::Index>(last);
    const double precision = scores.gm(j, j);
    if (!(precision > 1e-12)) {
        return std::nullopt;
    }
    return -scores.residuals(j, position.column) / std::sqrt(precision);
}

std::optional<Candidate> bestCandidate(const Season& season, const Design& design,
                                       const Solution& solution) {
    const std::vector<double> medians = sessionMedians(season);
    std::optional<Candidate> best;
    for (std::size_t c = 0; c < design.classes.size(); ++c) {
        const Scores scores = scoresOf(c, design, solution);
        const LifeClass& lifeClass = design.classes[c];
        for (std::size_t s = 0; s < lifeClass.lives.size(); ++s) {
            const std::size_t index = lifeClass.lives[s];
            const Life& life = season.lives[index];
            if (foundEvents(design, index) >= kMostEventsOfALife) {
                continue;
            }
            const std::optional<std::size_t> only = onlyCandidateOfTwo(life, medians);
            for (std::size_t cell = 0; cell < life.cells.size(); ++cell) {
                if ((only && cell != *only) || life.cells[cell].say != Say::None ||
                    bearsEvent(design, index, cell)) {
                    continue;
                }
                const Candidate candidate =
                    candidateAt(index, cell, life, scores, static_cast<Eigen::Index>(s));
                if (!best || candidate.logOdds > best->logOdds) {
                    best = candidate;
                }
            }
        }
    }
    return best;
}

double eventSize(std::size_t event, const Design& design, const Solution& solution) {
    return cavityOf(event, design, solution).first;
}

double rejudge(std::size_t event, const Season& season, const Design& design,
               const Solution& solution, Event& judged) {
    const auto [mean, variance] = cavityOf(event, design, solution);
    const Life& life = season.lives[judged.life];
    const double loss = judged.kind == Event::Kind::Drop ? mean : -mean;
    judged.logOddsMisread = logOddsMisread(mean, variance);
    judged.logOddsDrop =
        judged.cell == 0 ? kNever
                         : logOddsDrop(loss, variance,
                                       life.cells[judged.cell].x - life.cells[judged.cell - 1].x);
    if (judged.pending) {
        return logSum(judged.logOddsMisread, judged.logOddsDrop);
    }
    return judged.kind == Event::Kind::Drop ? judged.logOddsDrop : judged.logOddsMisread;
}

} // namespace coilbook::wear
