#pragma once

#include "core/domain/engine_log.h"

#include <QUuid>

namespace coilbook {

/// Records as they were first written, before any amendment: a file from that time still names them
/// so when it is imported again.
class OriginalFacts {
public:
    explicit OriginalFacts(const EngineLog& log);

    [[nodiscard]] Race of(const Race& race) const;
    [[nodiscard]] Inspection of(const Inspection& inspection) const;
    [[nodiscard]] Sitting of(const Sitting& sitting) const;
    [[nodiscard]] QString labelOf(const Spring& spring) const;
    [[nodiscard]] QString nameOf(const Tester& tester) const;

private:
    /// The value of a fact before its first amendment, or nothing if it was never amended.
    [[nodiscard]] std::optional<QString> value(Subject subject, const QUuid& record,
                                               const char* fact) const;

    const std::vector<Amendment>& m_amendments;
};

} // namespace coilbook
