#pragma once

#include "core/domain/changes.h"
#include "core/domain/engine_log.h"

#include <QDate>
#include <QStringView>

#include <optional>

namespace coilbook {

/// What the form that starts an inspection is prefilled with.
struct RoundPrefill {
    int races = 0;                  ///< the highest count known: of an inspection or a race
    std::optional<TesterId> tester; ///< that of the newest sitting

    bool operator==(const RoundPrefill&) const = default;
};

[[nodiscard]] RoundPrefill roundPrefill(const EngineLog& log);

/// What the person filled in; records are made of it by startOf().
struct RoundFacts {
    QDate on;
    int races = 0;
    std::optional<TesterId> tester;
    QString inspector;
    std::optional<Temperature> engineTemperature;
};

/// A new inspection with its first sitting, with fresh ids. `open`: a round that may be left and
/// resumed; otherwise a quick test that is complete with each reading.
[[nodiscard]] StartInspection startOf(const EngineId& engine, const RoundFacts& facts, bool open);

/// A further sitting in an inspection that is there already.
[[nodiscard]] StartSitting sittingOf(const InspectionId& inspection, const RoundFacts& facts);

/// The inspection on that day at that count of races, if there is one.
[[nodiscard]] const Inspection* inspectionOn(const EngineLog& log, const QDate& on, int races);

/// The newest inspection that was left open.
[[nodiscard]] const Inspection* openInspection(const EngineLog& log);

[[nodiscard]] const Inspection* inspectionWith(const EngineLog& log, const InspectionId& id);

/// The newest sitting of an inspection; null if it has none.
[[nodiscard]] const Sitting* newestSitting(const EngineLog& log, const InspectionId& inspection);

[[nodiscard]] const Tester* testerWith(const EngineLog& log, const TesterId& id);

/// Degrees Celsius with up to three decimals after `.` or `,`, −40 to 250; a leading `-` or U+2212
/// is allowed. Nothing for any other text.
[[nodiscard]] std::optional<Temperature> temperatureFromText(QStringView text);

} // namespace coilbook
