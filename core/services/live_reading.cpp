#include "core/services/live_reading.h"

#include "core/services/job_queue.h"

#include <QTimer>

#include <atomic>

namespace coilbook {

namespace {

/// No key for so long: the reading may be whole.
constexpr int kPauseMilliseconds = 200;

struct Question {
    std::shared_ptr<const EngineLog> log;
    SpringId spring;
    std::optional<Reading> typed;

    /// The log as if the reading were on record.
    [[nodiscard]] EngineHistory history() const {
        if (!typed) {
            return historyOf(*log);
        }
        EngineLog with = *log;
        with.readings.push_back(*typed);
        return historyOf(with);
    }
};

/// Lives in the worker's thread.
class Answerer {
public:
    std::optional<LiveFigures> quick(const Question& question) {
        if (m_log != question.log) {
            m_log = question.log;
            m_onRecord.emplace(historyOf(*m_log), m_log->engine.rules);
        }
        return question.typed ? m_onRecord->withReading(question.history(), question.spring)
                              : m_onRecord->onRecord(question.spring);
    }

    /// The quick answer's expectation stays: it is what the record alone says.
    std::optional<LiveFigures> full(const Question& question) {
        std::optional<LiveFigures> figures = quick(question);
        if (figures && question.typed) {
            const LiveAssessment fitted(question.history(), question.log->engine.rules);
            if (auto exact = fitted.onRecord(question.spring)) {
                figures->spring = std::move(exact->spring);
            }
        }
        return figures;
    }

private:
    std::shared_ptr<const EngineLog> m_log;
    std::optional<LiveAssessment> m_onRecord;
};

} // namespace

class LiveReading::Private {
public:
    explicit Private(LiveReading& reading)
        : q(reading) {
        pause.setSingleShot(true);
        pause.setInterval(kPauseMilliseconds);
    }

    using Answer = std::optional<LiveFigures> (Answerer::*)(const Question&);

    void post(Answer answer) {
        queue.post([this, answer, question = asked, number = newest.load()] {
            if (number != newest) {
                return; // a newer one is queued behind this
            }
            auto figures = (answerer.*answer)(question);
            QMetaObject::invokeMethod(
                &q,
                [this, number, figures = std::move(figures)] {
                    if (number == newest) {
                        Q_EMIT q.answered(figures);
                    }
                },
                Qt::QueuedConnection);
        });
    }

    LiveReading& q;
    QTimer pause;
    Question asked;
    std::atomic<int> newest = 0;
    Answerer answerer; ///< used by the queue's thread only
    JobQueue queue;    ///< last member: it ends before what its jobs use
};

LiveReading::LiveReading(QObject* parent)
    : QObject(parent)
    , d(std::make_unique<Private>(*this)) {
    connect(&d->pause, &QTimer::timeout, this, [this] { d->post(&Answerer::full); });
}

LiveReading::~LiveReading() {
    forget();
}

void LiveReading::ask(std::shared_ptr<const EngineLog> log, const SpringId& spring,
                      const std::optional<Reading>& typed) {
    d->asked = {std::move(log), spring, typed};
    ++d->newest;
    d->post(&Answerer::quick);
    if (typed) {
        d->pause.start();
    } else {
        d->pause.stop();
    }
}

void LiveReading::forget() {
    ++d->newest;
    d->pause.stop();
}

} // namespace coilbook
