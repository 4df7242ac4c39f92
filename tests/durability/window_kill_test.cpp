#include "core/domain/current_readings.h"
#include "core/services/round.h"
#include "tests/core/storage/logbook_fixture.h"
#include "tests/durability/sweep.h"

#include <QDir>
#include <QFile>
#include <QProcess>
#include <QSet>
#include <QTemporaryDir>

#include <cstdio>
#include <random>

namespace coilbook::testing {
namespace {

constexpr int kNotHanging = 60000; // ms

/// Kills the real window program while somebody types readings in it (typist.cpp), and holds what
/// the window has said against what is in the logbook afterwards.
class WindowKillTest : public ::testing::Test {
protected:
    void SetUp() override {
        Result<LogbookStore> store = LogbookStore::create(logbook());
        ASSERT_TRUE(succeeded(store));
        AddEngine engine;
        engine.engine.id = m_engine;
        engine.engine.name = QStringLiteral("Blue");
        const Inspection inspection{InspectionId::make(), m_engine, QDate(2026, 3, 1), 0, false};
        const Sitting sitting{SittingId::make(), inspection.id, {}, QStringLiteral("Kim"), {}};
        ASSERT_TRUE(succeeded(
            store->applyAll({engine, StartInspection{inspection, sitting}}, SystemClock())));
    }

    [[nodiscard]] QString path(const char* name) const {
        return m_folder.filePath(QString::fromLatin1(name));
    }

    [[nodiscard]] QString logbook() const { return path("shop.coilbook"); }

    [[nodiscard]] QProcessEnvironment environment(int life, const char* plan) const {
        QProcessEnvironment variables = QProcessEnvironment::systemEnvironment();
        for (const char* name : {"HOME", "XDG_CONFIG_HOME", "XDG_DATA_HOME", "XDG_CACHE_HOME"}) {
            variables.insert(QString::fromLatin1(name), path("home"));
        }
        variables.insert(QStringLiteral("QT_QPA_PLATFORM"), QStringLiteral("offscreen"));
        variables.insert(QStringLiteral("QT_PLUGIN_PATH"), QStringLiteral(COILBOOK_TYPIST_FOLDER));
        variables.insert(QStringLiteral("QT_QPA_GENERIC_PLUGINS"),
                         QStringLiteral("typist:%1:%2").arg(life).arg(QLatin1String(plan)));
        return variables;
    }

    /// One life of the program; `kill` after the first reading plus a random while. With `isPulled`
    /// the logbook is gone for the second half of it.
    void live(int life, const char* plan, bool isPulled) {
        QProcess process;
        process.setProcessEnvironment(environment(life, plan));
        process.start(QStringLiteral(COILBOOK_PROGRAM), {logbook()});
        ASSERT_TRUE(process.waitForStarted(kNotHanging));
        while (!process.canReadLine()) {
            ASSERT_TRUE(process.waitForReadyRead(kNotHanging))
                << process.readAllStandardError().constData();
        }
        const bool isHalf = qstrcmp(plan, "half") == 0;
        const int halves = isPulled ? 2 : 1;
        for (int half = 0; half < halves; ++half) {
            process.waitForFinished(isHalf ? 1 : m_moments(m_random));
            if (isPulled && half == 0) {
                ASSERT_TRUE(QFile::rename(logbook(), path("away")));
            }
        }
        QByteArray said;
        while (isHalf && !said.contains("typed ")) {
            ASSERT_TRUE(process.waitForReadyRead(kNotHanging));
            said += process.readAllStandardOutput();
        }
        process.kill(); // SIGKILL
        ASSERT_TRUE(process.waitForFinished(kNotHanging));
        if (isPulled) {
            ASSERT_TRUE(QFile::rename(path("away"), logbook()));
        }
        take(said + process.readAllStandardOutput());
    }

    void take(const QByteArray& said) {
        QList<QByteArray> lines = said.split('\n');
        lines.removeLast(); // empty, or a line that was cut short
        for (const QByteArray& line : std::as_const(lines)) {
            const QByteArray word = line.left(line.indexOf(' '));
            const QString text = QString::fromUtf8(line.mid(word.size() + 1));
            if (word == "resumed") {
                expectResumed(text);
                m_half.clear();
            } else if (word == "typed") {
                m_half = text;
            } else {
                m_told.insert(text);
                m_waited += word == "waiting" ? 1 : 0;
            }
        }
    }

    void expectResumed(const QString& there) {
        ++m_resumed;
        const QString typed = there.section(QLatin1Char('|'), 1);
        EXPECT_FALSE(m_told.contains(typed)) << "what is saved is offered once more";
        if (!m_half.isEmpty()) {
            EXPECT_EQ(there, m_half) << "the half-typed reading has not come back";
            ++m_halves;
        } else if (!m_place.isEmpty()) {
            EXPECT_TRUE(there.startsWith(m_place) || there.startsWith(m_next) ||
                        (!m_after.isEmpty() && there.startsWith(m_after)))
                << there.toStdString() << " after " << m_place.toStdString();
        }
    }

    /// All that the window has called saved or waiting is there, once; waiting only after the next
    /// start.
    void expectAllThere(bool mayStillWait) {
        const Result<LogbookStore> store = LogbookStore::open(logbook(), OpenMode::ReadWrite);
        ASSERT_TRUE(succeeded(store));
        const Result<VerifyReport> report = store->verify();
        ASSERT_TRUE(succeeded(report));
        EXPECT_EQ(report->findings, std::vector<Finding>());
        const Result<EngineLog> log = store->engineLog(m_engine);
        ASSERT_TRUE(succeeded(log));
        QSet<QString> there;
        for (const Reading& reading : log->readings) {
            EXPECT_FALSE(there.contains(reading.value.text())) << "a reading is there twice";
            there.insert(reading.value.text());
        }
        if (!mayStillWait) {
            EXPECT_TRUE((m_told - there).isEmpty()) << "a reading is lost";
        }
        m_place = log->readings.empty() ? QString() : placeText(log->readings.back().place);
        // The one after it in the walk is that of the draft, if it has been kept by then.
        const Result<std::optional<Draft>> draft = store->draft(m_engine);
        ASSERT_TRUE(succeeded(draft));
        m_next = *draft ? placeText((*draft)->place) : m_place;
        // Killed before that: the next one that has no reading.
        m_after.clear();
        if (!log->readings.empty()) {
            const Round round(*log, log->inspections.back().id, RoundOrder::ByBank);
            const auto next = round.untestedAfter(*round.indexOf(log->readings.back().place));
            m_after = next ? placeText(round.stops()[*next].place) : QString();
        }
    }

    QTemporaryDir m_folder;
    EngineId m_engine = EngineId::make();
    std::mt19937 m_random{20261125};
    std::uniform_int_distribution<int> m_moments{0, 400};
    QSet<QString> m_told; ///< readings that the window has acknowledged
    QString m_half;       ///< left in the field when it was killed last
    QString m_place;      ///< of the newest reading
    QString m_next;
    QString m_after;
    int m_resumed = 0;
    int m_halves = 0;
    int m_waited = 0;
};

TEST_F(WindowKillTest, EveryReadingThatItCalledSavedIsThereAndTheBenchGoesOnWhereItWas) {
    const int kills = repetitions("COILBOOK_WINDOW_KILLS", 20);
    bool wasPulled = false;
    for (int life = 0; life < kills && !HasFatalFailure() && !HasNonfatalFailure(); ++life) {
        SCOPED_TRACE(life);
        const bool isHalf = life % 5 == 3;
        const bool isPulled = life % 5 == 1;
        const char* plan = isHalf ? "half" : (life < 15 ? "walk" : "stay");
        live(life, plan, isPulled);
        // What waits goes in at the next start: it is looked for after that.
        expectAllThere(isPulled || wasPulled);
        wasPulled = isPulled;
    }
    live(kills, "half", false);
    expectAllThere(false);
    EXPECT_EQ(m_resumed, kills + 1);
    EXPECT_GT(m_told.size(), kills) << "too early to tell";
    EXPECT_GT(m_waited, 0);
    std::printf("%d kills of the window, %lld readings acknowledged before them (%d waiting), 0 "
                "lost, 0 doubled; %d half-typed readings came back\n",
                kills + 1, static_cast<long long>(m_told.size()), m_waited, m_halves);
}

} // namespace
} // namespace coilbook::testing
