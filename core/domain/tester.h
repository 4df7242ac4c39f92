#pragma once

#include "core/domain/ids.h"
#include "core/units/typed_force.h"

#include <QDate>
#include <QString>

#include <optional>

namespace coilbook {

/// A seat-pressure tester of the shop.
struct Tester {
    TesterId id;
    QString name;                         ///< unique in the logbook, also but for case
    std::optional<TypedForce> range;      ///< full scale
    std::optional<TypedForce> graduation; ///< smallest division
    QDate calibratedOn;                   ///< null: not known
    QString note;

    bool operator==(const Tester&) const = default;
};

} // namespace coilbook
