#pragma once

#include <condition_variable>
#include <deque>
#include <functional>
#include <mutex>
#include <thread>

namespace coilbook {

/// One thread that does jobs in the order in which they were posted. The destructor finishes what
/// is queued first: nothing that a user has entered is dropped at the end of the program.
class JobQueue {
public:
    using Job = std::function<void()>;

    JobQueue();
    JobQueue(const JobQueue&) = delete;
    JobQueue& operator=(const JobQueue&) = delete;
    ~JobQueue();

    /// Safe from any thread. A job must not throw.
    void post(Job job);

private:
    void run();

    std::mutex m_mutex;
    std::condition_variable m_wake;
    std::deque<Job> m_jobs;
    bool m_ending = false;
    std::jthread m_thread; // last member: it starts when all others are there
};

} // namespace coilbook
