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
    std::optional<TesterId> tester;

    /// The log as if the reading were on record.
    [[nodiscard]] EngineHistory history() const {
        if (!typed) {
            return historyOf(*log);
        }
        EngineLog with = *log;
        with.readings.push_back(*typed);
        return historyOf(with);
    }

    /// Its index in EngineHistory::testers.
    [[nodiscard]] std::optional<std::size_t> testerIndex() const {
        for (std::size_t i = 0; tester && i < log->testers.size(); ++i) {
            if (log->testers[i].id == *tester) {
                return i;
            }
        }
        return std::nullopt;
    }
};

/// Lives in the worker's thread.
class Answerer {
public:
    std::optional<LiveFigures> quick(const Question& question) {
        takeUp(question.log);
        // What the record alone says is the same at each key of one reading.
        const Asked asked{question.spring, question.testerIndex()};
        if (m_asked != asked) {
            m_asked = asked;
            m_recorded = m_onRecord->onRecord(asked.spring, asked.tester);
        }
        std::optional<LiveFigures> figures = m_recorded;
        if (question.typed) {
            auto typed = m_onRecord->withReading(question.history(), question.spring);
            if (!typed) {
                return std::nullopt;
            }
            figures = figures.value_or(LiveFigures{});
            figures->spring = std::move(typed->spring);
            figures->typed = typed->typed;
        }
        return figures;
    }

    RoundReview review(const Question& question) {
        takeUp(question.log);
        return m_onRecord->review(question.testerIndex());
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
    void takeUp(const std::shared_ptr<const EngineLog>& log) {
        if (m_log != log) {
            m_log = log;
            m_onRecord.emplace(historyOf(*m_log), m_log->engine.rules);
            m_asked.reset();
        }
    }

    struct Asked {
        SpringId spring;
        std::optional<std::size_t> tester;

        bool operator==(const Asked&) const = default;
    };

    std::shared_ptr<const EngineLog> m_log;
    std::optional<LiveAssessment> m_onRecord;
    std::optional<Asked> m_asked;
    std::optional<LiveFigures> m_recorded; ///< of what was asked
};

} // namespace

class LiveReading::Private {
public:
    explicit Private(LiveReading& reading)
        : q(reading) {
        pause.setSingleShot(true);
        pause.setInterval(kPauseMilliseconds);
    }

    /// Has `answer` made in the queue's thread and hands it to `tell` in this one.
    template <class Answer>
    void post(Answer (Answerer::*answer)(const Question&),
              void (LiveReading::*tell)(const Answer&)) {
        queue.post([this, answer, tell, question = asked, number = newest.load()] {
            if (number != newest) {
                return; // a newer one is queued behind this
            }
            auto made = (answerer.*answer)(question);
            QMetaObject::invokeMethod(
                &q,
                [this, tell, number, made = std::move(made)] {
                    if (number == newest) {
                        Q_EMIT(q.*tell)(made);
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
    connect(&d->pause, &QTimer::timeout, this,
            [this] { d->post(&Answerer::full, &LiveReading::answered); });
}

LiveReading::~LiveReading() {
    forget();
}

void LiveReading::ask(std::shared_ptr<const EngineLog> log, const SpringId& spring,
                      const std::optional<Reading>& typed, const std::optional<TesterId>& tester) {
    d->asked = {std::move(log), spring, typed, tester};
    ++d->newest;
    d->post(&Answerer::quick, &LiveReading::answered);
    if (typed) {
        d->pause.start();
    } else {
        d->pause.stop();
    }
}

void LiveReading::askForReview(std::shared_ptr<const EngineLog> log,
                               const std::optional<TesterId>& tester) {
    d->asked = {std::move(log), {}, {}, tester};
    ++d->newest;
    d->pause.stop();
    d->post(&Answerer::review, &LiveReading::reviewed);
}

void LiveReading::forget() {
    ++d->newest;
    d->pause.stop();
}

} // namespace coilbook
