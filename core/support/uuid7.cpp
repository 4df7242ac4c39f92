#include "core/support/uuid7.h"

#include <QRandomGenerator>
#include <QtEndian>

#include <array>
#include <atomic>
#include <chrono>

namespace coilbook {

namespace {

/// Milliseconds and counter in one number (48 + 12 bits) that never stands still: when more than
/// 4096 ids fall into one millisecond it runs ahead of the clock (RFC 9562, section 6.2, method 1).
quint64 nextTick() {
    // The one piece of state that the whole process must share for ids to rise.
    static std::atomic<quint64> last{0};
    using namespace std::chrono;
    const auto ms = duration_cast<milliseconds>(system_clock::now().time_since_epoch()).count();
    const quint64 fromClock = static_cast<quint64>(ms) << 12U;
    quint64 seen = last.load(std::memory_order_relaxed);
    quint64 next = 0;
    do {
        next = fromClock > seen ? fromClock : seen + 1;
    } while (!last.compare_exchange_weak(seen, next, std::memory_order_relaxed));
    return next;
}

} // namespace

QUuid makeUuid7() {
    const quint64 tick = nextTick();
    const quint64 head = ((tick >> 12U) << 16U) | 0x7000U | (tick & 0x0fffU);
    const quint64 tail =
        (QRandomGenerator::global()->generate64() & 0x3fffffffffffffffULL) | 0x8000000000000000ULL;
    std::array<uchar, 16> bytes{};
    qToBigEndian(head, bytes.data());
    qToBigEndian(tail, bytes.data() + 8);
    return QUuid::fromRfc4122(QByteArrayView(bytes.data(), 16));
}

} // namespace coilbook
