#pragma once

#include "core/domain/engine_log.h"

#include <QTreeWidget>

#include <optional>

namespace coilbook {

/// What was changed afterwards, newest first: the old value struck through, the new one, why, by
/// whom and when. Nothing here can be edited; nothing is ever missing.
class AmendmentList : public QTreeWidget {
    Q_OBJECT
public:
    explicit AmendmentList(QWidget* parent = nullptr);

    /// Of one record, or of all of the engine's with its corrected readings.
    void showAmendments(const EngineLog& log, const std::optional<QUuid>& record = {});

private:
    struct Line;
    void add(const Line& line);
};

} // namespace coilbook
