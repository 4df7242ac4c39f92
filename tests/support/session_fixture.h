#pragma once

#include "core/services/logbook_session.h"
#include "tests/support/fixed_clock.h"
#include "tests/support/printers.h"

#include <QCoreApplication>
#include <QDeadlineTimer>
#include <QTemporaryDir>
#include <gtest/gtest.h>

#include <functional>

namespace coilbook::testing {

/// Runs events until `done` holds; fails after ten seconds.
inline void waitFor(const std::function<bool()>& done) {
    const QDeadlineTimer deadline(10'000);
    while (!done()) {
        ASSERT_FALSE(deadline.hasExpired()) << "nothing happened";
        QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents | QEventLoop::AllEvents, 20);
    }
}

/// A session on a new logbook in a temporary folder.
class SessionTest : public ::testing::Test {
protected:
    void SetUp() override {
        ASSERT_TRUE(m_folder.isValid());
        m_session.createLogbook(path());
        waitFor([&] { return m_session.isOpen(); });
    }

    [[nodiscard]] QString path() const {
        return m_folder.filePath(QStringLiteral("shop.coilbook"));
    }

    /// Applies a change and waits until the disk has answered.
    Result<void> apply(const Change& change) {
        std::optional<Result<void>> answer;
        QObject context;
        m_session.apply(change, &context, [&](const Result<void>& result) { answer = result; });
        waitFor([&] { return answer.has_value(); });
        return *answer;
    }

    void select(const EngineId& engine) {
        m_session.selectEngine(engine);
        waitFor([&] { return m_session.log() && m_session.log()->engine.id == engine; });
    }

    FixedClock m_clock{QDate(2026, 11, 20)}; // after all test data
    QTemporaryDir m_folder;
    LogbookSession m_session{m_clock};
};

} // namespace coilbook::testing
