#include "core/services/planner.h"

#include "core/services/job_queue.h"
#include "core/services/logbook_session.h"

#include <atomic>

namespace coilbook {

class Planner::Private {
public:
    Private(Planner& planner, LogbookSession& theSession)
        : q(planner)
        , session(theSession) {}

    void forget() {
        ++newest;
        made.reset();
        isOld = true;
        Q_EMIT q.planChanged();
        if (wanted) {
            make();
        }
    }

    void make() {
        const auto log = session.log();
        const auto history = session.history();
        if (!isOld || !log || !history) {
            return;
        }
        isOld = false;
        const int number = ++newest;
        queue.post([this, number, log, history, asked = question] {
            if (number != newest) {
                return; // a newer one is queued behind this
            }
            auto plan = std::make_shared<const SwapPlan>(
                swapPlanOf(*history, log->engine.rules, comingRaces(*log, history->asOf), asked));
            QMetaObject::invokeMethod(
                &q,
                [this, number, plan = std::move(plan)] {
                    if (number == newest) {
                        made = plan;
                        Q_EMIT q.planChanged();
                    }
                },
                Qt::QueuedConnection);
        });
    }

    Planner& q;
    LogbookSession& session;
    PlanQuestion question;
    bool wanted = false;
    bool isOld = true;
    std::atomic<int> newest = 0;
    std::shared_ptr<const SwapPlan> made;
    JobQueue queue; ///< last member: it ends before what its jobs use
};

Planner::Planner(LogbookSession& session, QObject* parent)
    : QObject(parent)
    , d(std::make_unique<Private>(*this, session)) {
    connect(&session, &LogbookSession::logChanged, this, [this] { d->forget(); });
    connect(&session, &LogbookSession::closed, this, [this] { d->forget(); });
}

Planner::~Planner() {
    ++d->newest; // what is queued is not worth making any more
}

void Planner::setWanted(bool wanted) {
    d->wanted = wanted;
    if (wanted) {
        d->make();
    }
}

void Planner::ask(const PlanQuestion& question) {
    if (d->question != question) {
        d->question = question;
        d->forget();
    }
}

PlanQuestion Planner::question() const {
    return d->question;
}

std::shared_ptr<const SwapPlan> Planner::plan() const {
    return d->made;
}

} // namespace coilbook
