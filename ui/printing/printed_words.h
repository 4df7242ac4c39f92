#pragma once

#include <QCoreApplication>

namespace coilbook {

/// The translation context of what stands on paper.
class Printed {
    Q_DECLARE_TR_FUNCTIONS(Printed)
};

} // namespace coilbook
