#pragma once

#include "core/domain/changes.h"
#include "core/storage/connection.h"

#include <optional>

namespace coilbook::storage {

// What is half typed at the bench: one draft per engine, replaced by the next.

[[nodiscard]] Result<std::optional<Draft>> readDraft(const Connection& connection,
                                                     const EngineId& engine);
[[nodiscard]] Result<void> writeDraft(const Connection& connection, const Draft& draft);
[[nodiscard]] Result<void> removeDraft(const Connection& connection, const EngineId& engine);

} // namespace coilbook::storage
