#pragma once

#include "core/assessment/spring_lives.h"
#include "core/support/result.h"

#include <QObject>

#include <memory>

namespace coilbook {

/// Reads the lives of all springs of a logbook, over all its engines, in a thread of its own and by
/// a connection of its own that changes nothing.
class LivesReader : public QObject {
    Q_OBJECT
public:
    explicit LivesReader(QObject* parent = nullptr);
    ~LivesReader() override;

    /// Ends with livesRead(), unless another question comes first.
    void read(const QString& logbook);

Q_SIGNALS:
    /// Empty where the logbook cannot be read; the session says so by itself.
    void livesRead(const std::shared_ptr<const std::vector<coilbook::SpringLife>>& lives);

private:
    class Private;
    std::unique_ptr<Private> d;
};

} // namespace coilbook
