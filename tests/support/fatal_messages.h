#pragma once

namespace coilbook::testing {

/// From now on any Qt warning or worse fails the test that runs.
void failOnWarnings();

} // namespace coilbook::testing
