#include "core/services/job_queue.h"

#include <gtest/gtest.h>

#include <numeric>
#include <thread>
#include <vector>

namespace coilbook {
namespace {

constexpr int kJobs = 2000;

TEST(JobQueueTest, DoesJobsInTheOrderInWhichTheyWerePosted) {
    std::vector<int>
        done; // no lock: one thread does all jobs, and has ended before it is looked at
    {
        JobQueue queue;
        for (int job = 0; job < kJobs; ++job) {
            queue.post([&done, job] { done.push_back(job); });
        }
    }
    std::vector<int> posted(kJobs);
    std::iota(posted.begin(), posted.end(), 0);
    EXPECT_EQ(done, posted);
}

TEST(JobQueueTest, TakesJobsFromManyThreadsAndLosesNone) {
    constexpr int kThreads = 4;
    std::vector<int> done(kThreads);
    {
        JobQueue queue;
        std::vector<std::jthread> posters;
        for (std::size_t poster = 0; poster < kThreads; ++poster) {
            posters.emplace_back([&queue, &done, poster] {
                for (int job = 0; job < kJobs; ++job) {
                    queue.post([&done, poster] { ++done[poster]; });
                }
            });
        }
        posters.clear(); // all have posted
    }
    EXPECT_EQ(done, std::vector<int>(kThreads, kJobs));
}

TEST(JobQueueTest, AJobMayPostAnother) {
    int done = 0;
    {
        JobQueue queue;
        queue.post([&] { queue.post([&] { ++done; }); });
    }
    EXPECT_EQ(done, 1);
}

} // namespace
} // namespace coilbook
