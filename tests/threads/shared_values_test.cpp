// What several threads use at once without a lock: ids, histories, the wear model.

#include "core/assessment/assessment.h"
#include "core/assessment/live_assessment.h"
#include "core/services/job_queue.h"
#include "core/support/uuid7.h"
#include "tests/support/wearing_set.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <optional>
#include <thread>
#include <vector>

namespace coilbook {
namespace {

constexpr std::size_t kThreads = 4;

/// Runs `work(number)` in several threads and waits for them.
template <class Work>
void inThreads(const Work& work) {
    std::vector<std::jthread> threads;
    for (std::size_t number = 0; number < kThreads; ++number) {
        threads.emplace_back([&work, number] { work(number); });
    }
}

TEST(SharedValuesTest, IdsMadeInManyThreadsAreAllDifferent) {
    std::vector<std::vector<QUuid>> made(kThreads);
    inThreads([&](std::size_t number) {
        for (int i = 0; i < 1000; ++i) {
            made[number].push_back(makeUuid7());
        }
    });
    std::vector<QUuid> all;
    for (const std::vector<QUuid>& some : made) {
        EXPECT_TRUE(std::is_sorted(some.begin(), some.end())) << "ids made later sort later";
        all.insert(all.end(), some.begin(), some.end());
    }
    std::sort(all.begin(), all.end());
    EXPECT_EQ(std::adjacent_find(all.begin(), all.end()), all.end());
}

TEST(SharedValuesTest, OneHistoryIsAssessedInManyThreadsAlike) {
    const EngineLog log = testing::wearingSet(6, 0.3).log();
    const EngineHistory history = historyOf(log);
    std::vector<Assessment> assessments(kThreads);
    inThreads([&](std::size_t number) { assessments[number] = assess(history, log.engine.rules); });
    EXPECT_FALSE(assessments.front().springs.empty());
    for (const Assessment& assessment : assessments) {
        EXPECT_EQ(assessment, assessments.front());
    }
}

/// As LiveReading does it: the log is made in one thread, asked about and dropped in another.
TEST(SharedValuesTest, ALogIsHandedToAQueueAndAskedAboutThere) {
    const auto log = std::make_shared<const EngineLog>(testing::wearingSet(6, 0.3).log());
    const SpringId spring = log->springs.front().id;
    std::optional<LiveAssessment> fitted; ///< used by the queue's thread only
    std::vector<std::optional<TypedFigures>> answers;
    {
        JobQueue queue;
        queue.post([&fitted, log] { fitted.emplace(historyOf(*log), log->engine.rules); });
        for (int key = 0; key < 3; ++key) {
            EngineLog with = *log;
            Reading typed = with.readings.back();
            typed.id = ReadingId::make();
            typed.hit = 2;
            with.readings.push_back(typed);
            queue.post([&, with = std::move(with)] {
                answers.push_back(fitted->withReading(historyOf(with), spring));
            });
        }
    }
    ASSERT_EQ(answers.size(), 3U);
    EXPECT_TRUE(answers.back().has_value());
    EXPECT_EQ(answers.back()->spring.latest, answers.front()->spring.latest);
}

} // namespace
} // namespace coilbook
