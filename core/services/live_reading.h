#pragma once

#include "core/assessment/live_assessment.h"
#include "core/domain/engine_log.h"

#include <QObject>

#include <memory>
#include <optional>

namespace coilbook {

/// The figures of the spring at hand while a reading is being typed. All work is done in a thread
/// of its own, the newest question wins, and nothing here ever waits for it: the full fit of the
/// record is kept, each key stroke is answered by its fast path, and once the typing pauses the
/// reading is fitted in full.
class LiveReading : public QObject {
    Q_OBJECT
public:
    explicit LiveReading(QObject* parent = nullptr);
    ~LiveReading() override;

    /// Asks about a spring as the log has it, with `typed` as one hit more. Ends with answered(),
    /// unless another question or forget() comes first. `tester`: the one in use.
    void ask(std::shared_ptr<const EngineLog> log, const SpringId& spring,
             const std::optional<Reading>& typed, const std::optional<TesterId>& tester = {});

    /// Asks about the newest inspection as a whole. Ends with reviewed(), as ask() does.
    void askForReview(std::shared_ptr<const EngineLog> log,
                      const std::optional<TesterId>& tester = {});

    /// Drops what was asked.
    void forget();

Q_SIGNALS:
    /// `figures` are empty for a spring that is not fitted. After a pause in the typing a second
    /// answer follows, from the full fit.
    void answered(const std::optional<coilbook::LiveFigures>& figures);

    void reviewed(const coilbook::RoundReview& review);

private:
    class Private;
    std::unique_ptr<Private> d;
};

} // namespace coilbook
