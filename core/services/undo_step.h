#pragma once

#include "core/domain/changes.h"
#include "core/domain/engine_log.h"

#include <QString>

#include <functional>
#include <optional>
#include <vector>

namespace coilbook {

/// How something that the user did is taken back and done again. Nothing is erased: a reading is
/// withdrawn, a fact is amended back to its old value, a fitting is withdrawn; all of it stays
/// readable in the history with who and when.
struct UndoStep {
    /// From who, when and why, and the engine as it is now.
    using Changes =
        std::function<std::vector<Change>(const Authorship& author, const EngineLog& now)>;
    QString text; ///< what the menu names: "Reading 3 E"
    Changes undo;
    Changes redo;
};

/// The step for a change, given the engine as it was before; empty for what cannot be undone
/// (a new engine, race, tester or inspection: these are amended or retired instead).
[[nodiscard]] std::optional<UndoStep> undoStepOf(const Change& change, const EngineLog& before);

} // namespace coilbook
