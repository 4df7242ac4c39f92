#pragma once

#include "core/support/clock.h"

namespace coilbook::testing {

/// A clock that stands still: half past six in the evening of a day, two hours east of Greenwich.
class FixedClock final : public Clock {
public:
    explicit FixedClock(const QDate& today)
        : m_today(today) {}

    [[nodiscard]] Moment now() const override {
        return {m_today.toString(Qt::ISODate) + QStringLiteral("T18:30:00.000Z"), 120};
    }

    [[nodiscard]] QDate today() const override { return m_today; }

private:
    QDate m_today;
};

} // namespace coilbook::testing
