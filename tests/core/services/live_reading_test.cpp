#include "core/services/live_reading.h"
#include "tests/support/session_fixture.h"
#include "tests/support/wearing_set.h"

#include <algorithm>
#include <chrono>
#include <limits>

namespace coilbook {
namespace {

using Milliseconds = std::chrono::duration<double, std::milli>;
using testing::exhaust;
using testing::HistoryBuilder;
using testing::waitFor;

double since(std::chrono::steady_clock::time_point start) {
    return Milliseconds(std::chrono::steady_clock::now() - start).count();
}

class LiveReadingTest : public ::testing::Test {
protected:
    explicit LiveReadingTest(int races = 8) {
        HistoryBuilder builder = testing::wearingSet(races, 0.1);
        m_log = std::make_shared<const EngineLog>(builder.log());
        for (const Reading& reading : m_log->readings) {
            if (reading.place == exhaust(3)) {
                m_earlier = reading;
            }
        }
        QObject::connect(
            &m_live, &LiveReading::answered, &m_live,
            [this](const std::optional<LiveFigures>& figures) { m_answers.push_back(figures); });
    }

    void ask(const char* typed) {
        Reading reading = m_earlier;
        reading.id = ReadingId::make();
        reading.hit = 2;
        reading.value = *TypedForce::parse(QString::fromLatin1(typed), ForceUnit::PoundForce);
        m_live.ask(m_log, reading.spring, reading);
    }

    std::shared_ptr<const EngineLog> m_log;
    Reading m_earlier; ///< the newest of 3 E
    std::vector<std::optional<LiveFigures>> m_answers;
    LiveReading m_live;
};

class LongSeasonLiveReadingTest : public LiveReadingTest {
protected:
    LongSeasonLiveReadingTest()
        : LiveReadingTest(40) {}
};

TEST_F(LiveReadingTest, AnswersWithTheTypedHitAndAgainAfterAPause) {
    ask("119.0");
    waitFor([&] { return m_answers.size() == 1; });
    ASSERT_TRUE(m_answers[0] && m_answers[0]->spring.latest);
    const Force mean = (m_earlier.value.force() + Force::poundsForce(119.0)) / 2.0;
    EXPECT_NEAR(m_answers[0]->spring.latest->inPoundsForce(), mean.inPoundsForce(), 1e-9);
    waitFor([&] { return m_answers.size() == 2; });
    ASSERT_TRUE(m_answers[1].has_value());
    EXPECT_EQ(m_answers[1]->spring.latest, m_answers[0]->spring.latest);
    EXPECT_EQ(m_answers[1]->expected, m_answers[0]->expected);
}

TEST_F(LiveReadingTest, OnlyTheNewestOfManyKeyStrokesNeedBeAnswered) {
    for (const char* typed : {"1", "11", "118", "118.5"}) {
        ask(typed);
    }
    waitFor([&] { return !m_answers.empty(); });
    ASSERT_EQ(m_answers.size(), 1U) << "answers to older questions are dropped";
    const Force mean = (m_earlier.value.force() + Force::poundsForce(118.5)) / 2.0;
    EXPECT_NEAR(m_answers[0]->spring.latest->inPoundsForce(), mean.inPoundsForce(), 1e-9);
}

TEST_F(LiveReadingTest, WhatWasForgottenIsNotAnswered) {
    ask("118.5");
    m_live.forget();
    m_live.ask(m_log, m_earlier.spring, {});
    waitFor([&] { return !m_answers.empty(); });
    ASSERT_EQ(m_answers.size(), 1U);
    EXPECT_EQ(m_answers[0]->spring.latest, m_earlier.value.force());
}

TEST_F(LiveReadingTest, EndsWhileAQuestionIsOpen) {
    LiveReading live;
    live.ask(m_log, m_earlier.spring, {});
}

// Both are timed five times and the shortest counts: a busy machine makes either longer, never
// shorter. Waiting for the fits would take twenty of them.
TEST_F(LongSeasonLiveReadingTest, TypingWaitsForNoFit) {
    double oneFit = std::numeric_limits<double>::infinity();
    double twentyKeys = oneFit;
    for (int attempt = 0; attempt < 5; ++attempt) {
        const auto fitting = std::chrono::steady_clock::now();
        const LiveAssessment fitted(historyOf(*m_log), {});
        oneFit = std::min(oneFit, since(fitting));
        ASSERT_TRUE(fitted.onRecord(m_earlier.spring).has_value());
        const auto typing = std::chrono::steady_clock::now();
        for (int key = 0; key < 20; ++key) {
            ask("118.5");
            QCoreApplication::processEvents(); // as the window does between two keys
        }
        twentyKeys = std::min(twentyKeys, since(typing));
        waitFor([&] { return !m_answers.empty(); });
        m_answers.clear();
    }
    EXPECT_LT(twentyKeys, oneFit) << "twenty key strokes cost less than one of their fits";
}

} // namespace
} // namespace coilbook
