#pragma once

#include "core/services/logbook_session.h"
#include "ui/preferences.h"

#include <QSettings>
#include <QTemporaryDir>
#include <QTest>
#include <gtest/gtest.h>

namespace coilbook::testing {

/// A session on a file of its own in a folder that goes with the test, and preferences beside it.
class LogbookFixture : public ::testing::Test {
protected:
    static constexpr int kPatienceMs = 10000;

    [[nodiscard]] QString file(const QString& name) const { return folder.filePath(name); }

    /// Makes an empty logbook and opens it.
    void makeLogbook() {
        session.createLogbook(file(QStringLiteral("season.coilbook")));
        ASSERT_TRUE(QTest::qWaitFor([this] { return session.isOpen(); }, kPatienceMs));
    }

    /// Puts a change on the disk and waits until it is there and seen.
    void put(const Change& change) {
        std::optional<Result<void>> result;
        session.apply(change, &session, [&result](const Result<void>& done) { result = done; });
        ASSERT_TRUE(QTest::qWaitFor([&result] { return result.has_value(); }, kPatienceMs));
        ASSERT_TRUE(*result);
    }

    /// A new engine with the usual layout, selected.
    Engine addEngine(const QString& name) {
        AddEngine change;
        change.engine.id = EngineId::make();
        change.engine.name = name;
        put(change);
        session.selectEngine(change.engine.id);
        EXPECT_TRUE(QTest::qWaitFor(
            [&] { return session.log() && session.log()->engine.id == change.engine.id; },
            kPatienceMs));
        return change.engine;
    }

    [[nodiscard]] bool waitFor(const std::function<bool()>& condition) const {
        return QTest::qWaitFor(condition, kPatienceMs);
    }

    QTemporaryDir folder;
    QSettings settings{folder.filePath(QStringLiteral("settings.ini")), QSettings::IniFormat};
    Preferences preferences{settings};
    SystemClock clock;
    LogbookSession session{clock};
};

} // namespace coilbook::testing
