#pragma once

#include "core/assessment/swap_plan.h"

#include <QObject>

#include <memory>

namespace coilbook {

class LogbookSession;

/// Keeps the swap plan of the engine that a session shows. It is made in a thread of its own, and
/// only while somebody wants to see it.
class Planner : public QObject {
    Q_OBJECT
public:
    /// `session` must outlive it.
    explicit Planner(LogbookSession& session, QObject* parent = nullptr);
    ~Planner() override;

    /// Whether the plan is being looked at; makes it if it is old.
    void setWanted(bool wanted);

    void ask(const PlanQuestion& question);
    [[nodiscard]] PlanQuestion question() const;

    /// Of the log as it is; null while it is being made, and without an engine.
    [[nodiscard]] std::shared_ptr<const SwapPlan> plan() const;

Q_SIGNALS:
    void planChanged();

private:
    class Private;
    std::unique_ptr<Private> d;
};

} // namespace coilbook
