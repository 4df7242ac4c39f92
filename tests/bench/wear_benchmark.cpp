#include "core/wear/fit.h"
#include "core/wear/outputs.h"
#include "tests/core/wear/flat_model.h"
#include "tests/core/wear/reference_season.h"
#include "tests/core/wear/simulated_season.h"

#include <benchmark/benchmark.h>

#include <fstream>
#include <unistd.h>

// How long the wear model takes, on one core: the full fit, and the fast path that answers on each
// key stroke. Both with the figures of every spring.
//     wear_benchmark --benchmark_repetitions=9 --benchmark_report_aggregates_only

namespace coilbook {
namespace {

/// Sixteen springs, thirty inspections, two hits. How many steps the search takes differs from
/// season to season, so the fit is timed over many of them.
wear::Season longSeason(unsigned seed = 2) {
    return testing::SeasonSimulator({16, 30, 2, 0.5, 0.5}, seed).draw().season;
}

wear::Season referenceSeason(const char* name) {
    return testing::referenceSeason(name).arranged.season;
}

void askAll(const wear::Season& season, const wear::Fit& fit) {
    for (const wear::LifePosterior& life :
         wear::posteriorsOfLives(wear::livesStillFitted(season), season, fit)) {
        benchmark::DoNotOptimize(life.oddsAhead(5.0, 3));
    }
}

void fitInFull(benchmark::State& state, const wear::Season& season) {
    for (auto _ : state) {
        const std::optional<wear::Fit> fit = wear::fitSeason(season);
        askAll(season, *fit);
    }
}

void fitAgain(benchmark::State& state, const wear::Season& season) {
    std::optional<wear::Fit> fit = wear::fitSeason(season);
    for (auto _ : state) {
        fit = wear::refit(season, *std::move(fit));
        askAll(season, *fit);
    }
}

/// Time a fit, forty seasons one after the other.
void fitManyInFull(benchmark::State& state) {
    std::vector<wear::Season> seasons;
    for (unsigned seed = 1; seed <= 40; ++seed) {
        seasons.push_back(longSeason(seed));
    }
    std::size_t next = 0;
    for (auto _ : state) {
        const wear::Season& season = seasons[next++ % seasons.size()];
        askAll(season, *wear::fitSeason(season));
    }
}

BENCHMARK(fitManyInFull)->Name("fitInFull/forty_long_seasons")->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(fitInFull, sixteen_springs_30_inspections, longSeason())
    ->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(fitInFull, engine05, referenceSeason("engine05"))->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(fitInFull, engine09, referenceSeason("engine09"))->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(fitInFull, engine10_103_lives, referenceSeason("engine10"))
    ->Unit(benchmark::kMillisecond);

/// Resident memory of this process in KiB (proc(5), statm).
double residentKib() {
    std::ifstream statm("/proc/self/statm");
    double size = 0.0;
    double resident = 0.0;
    statm >> size >> resident;
    return resident * static_cast<double>(sysconf(_SC_PAGESIZE)) / 1024.0;
}

/// How much memory ten thousand refits take beyond what the first hundred took.
void growOverRefits(benchmark::State& state, const wear::Season& season) {
    std::optional<wear::Fit> fit = wear::fitSeason(season);
    double before = 0.0;
    int refits = 0;
    for (auto _ : state) {
        fit = wear::refit(season, *std::move(fit));
        askAll(season, *fit);
        if (++refits == 100) {
            before = residentKib();
        }
    }
    state.counters["grown_KiB"] = residentKib() - before;
}

BENCHMARK_CAPTURE(growOverRefits, sixteen_springs_30_inspections, longSeason())
    ->Unit(benchmark::kMillisecond)
    ->Iterations(10'000);
BENCHMARK_CAPTURE(fitAgain, sixteen_springs_30_inspections, longSeason())
    ->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(fitAgain, engine10_103_lives, referenceSeason("engine10"))
    ->Unit(benchmark::kMillisecond);

void oneMarginalLikelihood(benchmark::State& state, const wear::Season& season) {
    const wear::Design design = wear::designOf(season, {});
    const wear::HyperPrior prior = wear::hyperPriorFor(season.hitDegreesOfFreedom);
    wear::Objective objective(design, prior);
    for (auto _ : state) {
        benchmark::DoNotOptimize(objective(wear::Eta::Zero()));
    }
}

BENCHMARK_CAPTURE(oneMarginalLikelihood, sixteen_springs_30_inspections, longSeason())
    ->Unit(benchmark::kMicrosecond);

/// What one fit by lme4 finds: the spreads of the mixed model by restricted maximum likelihood, to
/// 1e-5 (tests/core/wear/mixed_model_test.cpp), from the arranging of the readings on.
void remlMode(benchmark::State& state, const wear::Season& season) {
    const testing::MixedModelData data(season);
    for (auto _ : state) {
        testing::FlatModel model(data);
        benchmark::DoNotOptimize(model.optimum());
    }
}

BENCHMARK_CAPTURE(remlMode, sixteen_springs_30_inspections, longSeason())
    ->Unit(benchmark::kMillisecond);

/// One REML fit of the same cell means by lme4, median of twenty; left out where R is not
/// installed.
void lme4Once(benchmark::State& state, const wear::Season& season) {
    const auto times = testing::runLme4(testing::MixedModelData(season), 20);
    if (!times) {
        state.SkipWithError("Rscript or its package lme4 is not installed");
    }
    for (auto _ : state) {
        state.SetIterationTime(times->at("median_ms") / 1000.0);
    }
}

BENCHMARK_CAPTURE(lme4Once, sixteen_springs_30_inspections, longSeason())
    ->UseManualTime()
    ->Iterations(1)
    ->Unit(benchmark::kMillisecond);

} // namespace
} // namespace coilbook

BENCHMARK_MAIN();
