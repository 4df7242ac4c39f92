#include "app/command_line/assess_all.h"

#include "core/domain/history.h"

#include <algorithm>
#include <condition_variable>
#include <deque>
#include <mutex>
#include <optional>
#include <thread>
#include <utility>

namespace coilbook {

namespace {

/// Logs on their way from the thread that reads them to those that assess them. It holds a few at
/// most, so that memory does not grow with the logbook.
class LogQueue {
public:
    using Item = std::pair<std::size_t, EngineLog>;

    explicit LogQueue(std::size_t most)
        : m_most(most) {}

    void put(Item item) {
        std::unique_lock lock(m_mutex);
        m_roomLeft.wait(lock, [&] { return m_items.size() < m_most; });
        m_items.push_back(std::move(item));
        m_somethingThere.notify_one();
    }

    /// Nothing more will be put.
    void close() {
        const std::lock_guard lock(m_mutex);
        m_closed = true;
        m_somethingThere.notify_all();
    }

    /// The next one; nothing when it is closed and empty.
    [[nodiscard]] std::optional<Item> take() {
        std::unique_lock lock(m_mutex);
        m_somethingThere.wait(lock, [&] { return m_closed || !m_items.empty(); });
        if (m_items.empty()) {
            return std::nullopt;
        }
        Item item = std::move(m_items.front());
        m_items.pop_front();
        m_roomLeft.notify_one();
        return item;
    }

private:
    const std::size_t m_most;
    std::mutex m_mutex;
    std::condition_variable m_roomLeft;
    std::condition_variable m_somethingThere;
    std::deque<Item> m_items;
    bool m_closed = false;
};

Assessment assessLog(const EngineLog& log, const JudgingRequest& request) {
    return assess(historyOf(log, request.asOf), request.applied(log.engine.rules), Curves::None);
}

} // namespace

Result<std::vector<Assessment>> assessAll(const LogbookStore& store,
                                          const std::vector<EngineSummary>& engines,
                                          const JudgingRequest& request) {
    const std::size_t cores = std::max(1U, std::thread::hardware_concurrency());
    std::vector<Assessment> assessments(engines.size());
    LogQueue queue(cores);
    std::optional<Error> error;
    {
        std::vector<std::jthread> workers;
        for (std::size_t count = std::min(cores, engines.size()); count > 0; --count) {
            workers.emplace_back([&] {
                while (const auto item = queue.take()) {
                    assessments[item->first] = assessLog(item->second, request);
                }
            });
        }
        for (std::size_t index = 0; index < engines.size() && !error; ++index) {
            auto log = store.engineLog(engines[index].id);
            if (log) {
                queue.put({index, std::move(*log)});
            } else {
                error = log.error();
            }
        }
        queue.close();
    }
    if (error) {
        return tl::unexpected(*error);
    }
    return assessments;
}

} // namespace coilbook
