#pragma once

#include "core/domain/changes.h"
#include "core/domain/engine_log.h"
#include "core/support/clock.h"
#include "core/support/error.h"

#include <QDate>
#include <QString>
#include <QStringList>
#include <tl/expected.hpp>

#include <optional>
#include <vector>

namespace coilbook {

/// What the form for a swap starts with.
struct SwapPrefill {
    std::optional<Spring> outgoing; ///< the spring that stands there now
    QString label;                  ///< proposed for the one put in: not used in this engine yet
    QDate on;                       ///< day of the newest inspection; null: there is none
    int races = 0;                  ///< races that the engine had run by then
    std::optional<TesterId> tester; ///< that of the newest sitting

    bool operator==(const SwapPrefill&) const = default;
};

[[nodiscard]] SwapPrefill swapPrefill(const EngineLog& log, const Place& place);

/// The springs of this engine's shelf that may be put in, by label.
[[nodiscard]] std::vector<Spring> springsOnTheShelf(const EngineLog& log);

/// A swap as somebody filled it in.
struct SwapEntry {
    Place place;
    QString label; ///< of the spring put in: a new one, or one that is on the shelf
    QString part;  ///< part and batch of a new spring; those of a known one stay
    QString batch;
    QDate on;
    int races = 0; ///< races that the engine had run by then
    QString reason;
    QStringList hits; ///< baseline of the spring put in, as typed; blank ones do not count
    ForceUnit unit = ForceUnit::PoundForce;
    std::optional<TesterId> tester; ///< with the baseline
    QString inspector;
    Storage outgoingTo = Storage::Shelf; ///< where the spring goes that comes out, if one does
    QString outgoingReason;              ///< why it goes there
};

enum class SwapField { Place, Label, Date, Races, Baseline };

struct SwapProblem {
    SwapField field = SwapField::Place;
    Error error;

    bool operator==(const SwapProblem&) const = default;
};

/// The change that records the swap, with fresh ids (keep it to repeat a save that failed), or all
/// that is wrong with the entry, in the order of the fields. A baseline goes into the inspection of
/// that day and count of races; where there is none yet it is made with it.
[[nodiscard]] tl::expected<FitSpring, std::vector<SwapProblem>>
swapOf(const EngineLog& log, const SwapEntry& entry, const Clock& clock);

} // namespace coilbook
