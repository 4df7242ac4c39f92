#pragma once

#include "core/domain/engine_layout.h"

#include <QString>

#include <vector>

namespace coilbook {

/// In which order a person walks round an engine with the tester.
enum class RoundOrder {
    ByBank,        ///< bank by bank, front to rear, as the springs sit
    ByFiringOrder, ///< cylinder by cylinder as they fire: crank turned once, intake then exhaust
    ByCylinder,    ///< by cylinder number, intake then exhaust
    Own,           ///< as the user has laid down for this engine
};

/// All places of the engine in that order, each once. An engine without an order of the user's own
/// is walked bank by bank instead.
[[nodiscard]] std::vector<Place> placesInOrder(const EngineLayout& layout, RoundOrder order);

/// A short key for settings: `bank`, `firing`, `cylinder`, `own`.
[[nodiscard]] QString keyOf(RoundOrder order);

/// Inverse of keyOf(); ByBank for any other text.
[[nodiscard]] RoundOrder roundOrderFromKey(const QString& key);

} // namespace coilbook
