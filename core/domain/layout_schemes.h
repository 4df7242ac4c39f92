#pragma once

#include "core/domain/engine_layout.h"

#include <vector>

namespace coilbook {

/// How the cylinders of a V8 are counted; along each bank from the front.
enum class V8Numbering {
    OddLeft,    ///< 1 3 5 7 on the left, 2 4 6 8 on the right
    FirstRight, ///< 1 to 4 on the right, 5 to 8 on the left
    FirstLeft,  ///< 1 to 4 on the left, 5 to 8 on the right
};

enum class CrankKind { CrossPlane, FlatPlane };

/// A V8 that is ready to be chosen: described, never named after a maker.
struct LayoutScheme {
    V8Numbering numbering = V8Numbering::OddLeft;
    CrankKind crank = CrankKind::CrossPlane;
    EngineLayout layout;
};

/// Common numberings and firing orders of V8 engines (common practice, no source; the test checks
/// that each can be fired by such a crank in a 90° V). The engine builder's data rules.
[[nodiscard]] const std::vector<LayoutScheme>& v8Schemes();

} // namespace coilbook
