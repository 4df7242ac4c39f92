#pragma once

#include <QElapsedTimer>
#include <QFile>
#include <QObject>
#include <QTimer>

#include <algorithm>

namespace coilbook::testing {

/// Measures the longest time in which the event loop of this thread did nothing, while it lives.
/// Time for which the thread was ready and the machine had no processor for it is not counted;
/// Linux says how much that was, elsewhere it counts.
class Heartbeat {
public:
    Heartbeat() {
        m_since.start();
        m_starved = starved();
        QObject::connect(&m_timer, &QTimer::timeout, &m_timer, [this] { beat(); });
        m_timer.start(10);
    }

    /// In milliseconds.
    [[nodiscard]] qint64 longestFreeze() const { return m_longest; }

private:
    void beat() {
        const qint64 now = starved();
        m_longest = std::max(m_longest, m_since.restart() - (now - m_starved));
        m_starved = now;
    }

    /// Milliseconds that this thread has waited for a processor so far.
    static qint64 starved() {
        QFile file(QStringLiteral("/proc/thread-self/schedstat"));
        return file.open(QIODevice::ReadOnly)
                   ? file.readAll().split(' ').value(1).toLongLong() / 1'000'000
                   : 0;
    }

    QTimer m_timer;
    QElapsedTimer m_since;
    qint64 m_longest = 0;
    qint64 m_starved = 0;
};

} // namespace coilbook::testing
