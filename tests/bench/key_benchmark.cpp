// From a key stroke at the bench to the repainted verdict, on an engine with sixty lives and thirty
// inspections: once to what waits for nothing (measured loss, standing, and the judgement against
// the band), once to the trend's answer as well. The real page, painted offscreen.

#include "core/exchange/import.h"
#include "core/services/logbook_session.h"
#include "core/services/round_start.h"
#include "core/storage/logbook_store.h"
#include "core/support/clock.h"
#include "ui/pages/bench_page.h"
#include "ui/pages/bench_reading_panel.h"
#include "ui/pages/bench_round.h"
#include "ui/preferences.h"
#include "ui/widgets/reading_field.h"

#include <QApplication>
#include <QElapsedTimer>
#include <QFile>
#include <QSettings>
#include <QTemporaryDir>
#include <QTest>
#include <QTextStream>

#include <algorithm>
#include <functional>
#include <vector>

namespace coilbook::bench {
namespace {

constexpr int kPlaces = 16;
constexpr int kInspections = 30;
constexpr int kLives = 60;
constexpr int kHits = 2;
constexpr int kReadings = 200;

/// A season in which springs are swapped one after the other until sixty have been in the engine.
QByteArray seasonCsv() {
    QByteArray text("engine,inspected_on,engine_races,cylinder,valve,spring,reading_lbf,hit\n");
    std::uint32_t noise = 1;
    std::vector<int> spring(kPlaces);
    std::vector<int> fitted(kPlaces, 0);
    int lives = 0;
    for (int& first : spring) {
        first = ++lives;
    }
    const QDate today = QDate::currentDate();
    for (int inspection = 0; inspection < kInspections; ++inspection) {
        for (int swap = 0; inspection > 0 && swap < 2 && lives < kLives; ++swap) {
            const auto place = static_cast<std::size_t>((2 * inspection + swap) % kPlaces);
            spring[place] = ++lives;
            fitted[place] = inspection;
        }
        const QByteArray head =
            "Long," +
            today.addDays(7 * (inspection - kInspections)).toString(Qt::ISODate).toLatin1() + ',' +
            QByteArray::number(inspection) + ',';
        for (std::size_t place = 0; place < kPlaces; ++place) {
            for (int hit = 1; hit <= kHits; ++hit) {
                noise = noise * 1664525U + 1013904223U; // Numerical Recipes' generator
                const double lbf = 120.0 - 0.3 * (inspection - fitted[place]) +
                                   0.5 * static_cast<double>(noise >> 30U);
                text += head + QByteArray::number(place / 2 + 1) + (place % 2 ? ",E,S" : ",I,S") +
                        QByteArray::number(spring[place]) + ',' + QByteArray::number(lbf, 'f', 1) +
                        ',' + QByteArray::number(hit) + '\n';
            }
        }
    }
    return text;
}

bool makeLogbook(const QString& path, const QString& csv) {
    QFile file(csv);
    if (!file.open(QIODevice::WriteOnly) || file.write(seasonCsv()) <= 0) {
        return false;
    }
    file.close();
    Result<LogbookStore> store = LogbookStore::create(path);
    return store && importFiles(*store, {csv}, SystemClock()).has_value();
}

double millisecondsOf(const QElapsedTimer& timer) {
    return static_cast<double>(timer.nsecsElapsed()) / 1e6;
}

void tell(QTextStream& out, const char* what, std::vector<double> times) {
    std::sort(times.begin(), times.end());
    const auto at = [&](double part) {
        return times[static_cast<std::size_t>(part * static_cast<double>(times.size() - 1))];
    };
    out << what << ": median " << at(0.5) << " ms, 99th percentile " << at(0.99) << " ms, longest "
        << times.back() << " ms, " << times.size() << " key strokes\n";
}

bool waitFor(const std::function<bool()>& holds) {
    return QTest::qWaitFor(holds, 20'000);
}

int run() {
    QTextStream out(stdout);
    const QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("long.coilbook"));
    if (!makeLogbook(path, folder.filePath(QStringLiteral("readings.csv")))) {
        out << "no logbook\n";
        return 1;
    }
    QSettings settings(folder.filePath(QStringLiteral("settings.ini")), QSettings::IniFormat);
    Preferences preferences(settings);
    SystemClock clock;
    LogbookSession session(clock);
    session.openLogbook(path);
    if (!waitFor([&] { return session.isOpen(); })) {
        return 1;
    }
    session.selectEngine(session.engines().front().id);
    if (!waitFor([&] { return session.log() != nullptr; })) {
        return 1;
    }
    RoundFacts facts{QDate::currentDate(), kInspections, {}, {}, {}};
    const StartInspection start = startOf(session.log()->engine.id, facts, true);
    bool started = false;
    session.apply(start, &session, [&](const Result<void>&) { started = true; });
    if (!waitFor([&] { return started; })) {
        return 1;
    }
    BenchPage page(session, preferences);
    page.resize(1366, 640);
    page.show();
    if (!QTest::qWaitForWindowExposed(&page)) {
        return 1;
    }
    QTest::keyClick(page.focusWidget(), Qt::Key_Return); // the cautions are heeded
    if (!page.showsRound() || page.round().showsCautions()) {
        return 1;
    }
    const BenchReadingPanel& panel = page.round().panel();
    if (!waitFor([&] { return !panel.expectedText().isEmpty(); })) {
        out << "no band\n";
        return 1;
    }
    std::vector<double> verdicts;
    std::vector<double> answers;
    for (int reading = 0; reading < kReadings; ++reading) {
        for (const char key : QByteArray("115.5\b\b\b\b\b")) { // then wiped out again
            bool answered = false;
            const auto connection = QObject::connect(&page.round(), &BenchRound::trendTold, &page,
                                                     [&] { answered = true; });
            QElapsedTimer timer;
            timer.start();
            if (key == '\b') {
                QTest::keyClick(&panel.field(), Qt::Key_Backspace);
            } else {
                QTest::keyClick(&panel.field(), key);
            }
            page.grab(); // paints all of it
            verdicts.push_back(millisecondsOf(timer));
            while (!answered) {
                QApplication::processEvents();
            }
            page.grab(); // paints all of it
            answers.push_back(millisecondsOf(timer));
            QObject::disconnect(connection);
        }
    }
    out << session.log()->springs.size() << " lives, " << session.log()->inspections.size()
        << " inspections\n";
    tell(out, "key stroke to repainted verdict", std::move(verdicts));
    tell(out, "key stroke to repainted answer of the trend", std::move(answers));
    return 0;
}

} // namespace
} // namespace coilbook::bench

int main(int argc, char** argv) {
    qputenv("QT_QPA_PLATFORM", "offscreen");
    const QApplication application(argc, argv);
    return coilbook::bench::run();
}
