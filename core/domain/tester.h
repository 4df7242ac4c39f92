#pragma once

#include "core/domain/ids.h"
#include "core/domain/tester_accuracy.h"
#include "core/units/typed_force.h"

#include <QDate>
#include <QString>

#include <optional>

namespace coilbook {

/// What a tester shows with nothing on it: above 0, or below.
struct ZeroOffset {
    TypedForce size{0, 0, ForceUnit::PoundForce};
    bool below = false;

    [[nodiscard]] Force force() const { return below ? -size.force() : size.force(); }

    bool operator==(const ZeroOffset&) const = default;
};

/// `-1.5 lbf`, as the logbook stores it, and back.
[[nodiscard]] QString zeroOffsetToText(const ZeroOffset& offset);
[[nodiscard]] std::optional<ZeroOffset> zeroOffsetFromText(QStringView text);

/// A seat-pressure tester of the shop.
struct Tester {
    TesterId id;
    QString name;                         ///< unique in the logbook, also but for case
    std::optional<TypedForce> range;      ///< full scale
    std::optional<TypedForce> graduation; ///< smallest division
    QDate calibratedOn;                   ///< of a calibration without a table; null: not known
    QString note;
    std::optional<ForceUnit> unit = {};          ///< that its dial shows; empty: not noted
    std::optional<TesterAccuracy> accuracy = {}; ///< how far it may be off, as its maker says
    std::optional<ZeroOffset> zeroOffset = {};   ///< counts where it has no calibration table
    bool corrects = true; ///< the assessment uses its readings corrected, see ReadingCorrections

    bool operator==(const Tester&) const = default;
};

} // namespace coilbook
