#pragma once

#include "core/wear/priors.h"

#include <Eigen/Core>

namespace coilbook::wear {

using EtaMatrix = Eigen::Matrix<double, kEta, kEta>;

/// Eigenvectors in the order and with the signs in which the rotations leave them.
struct EigenSystem {
    EtaMatrix vectors; ///< V, by column
    Eta values;        ///< d
};

/// Cyclic Jacobi rotations, order (1,2), (1,3) … (4,5), without sorting and without change of sign
/// (section 4: the half fraction of the nodes depends on the signs).
[[nodiscard]] EigenSystem jacobi(EtaMatrix a);

} // namespace coilbook::wear
