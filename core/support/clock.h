#pragma once

#include <QDate>
#include <QString>

namespace coilbook {

/// A moment as the logbook keeps it: UTC to the millisecond and the local offset then.
struct Moment {
    QString utc; ///< `yyyy-MM-ddTHH:mm:ss.zzzZ`, 24 characters, sorts as text
    int utcOffsetMinutes = 0;

    bool operator==(const Moment&) const = default;
};

/// Where "now" comes from; a test puts in its own.
class Clock {
public:
    virtual ~Clock() = default;
    [[nodiscard]] virtual Moment now() const = 0;
    [[nodiscard]] virtual QDate today() const = 0;
};

/// The clock of the machine.
class SystemClock final : public Clock {
public:
    [[nodiscard]] Moment now() const override;
    [[nodiscard]] QDate today() const override;
};

} // namespace coilbook
