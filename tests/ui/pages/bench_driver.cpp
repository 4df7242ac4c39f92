// The real window in a process of its own, which types a script of keys into whatever has the focus
// and then waits to be killed: `coilbook_bench_driver LOGBOOK SETTINGS KEYS`. In KEYS `E` is Enter
// on the keypad, `P` Page Up, `w` waits until a reading is saved, `d` until a draft is; all else is
// typed as it is. Prints "typed" at the end.
#include "core/services/logbook_session.h"
#include "ui/main_window.h"
#include "ui/pages/bench_message.h"
#include "ui/pages/bench_page.h"
#include "ui/pages/bench_reading_panel.h"
#include "ui/pages/bench_round.h"
#include "ui/preferences.h"

#include <QApplication>
#include <QSettings>
#include <QTest>

#include <cstdio>

using namespace coilbook;

namespace {

void type(QWidget& window, QChar key, const BenchPage& bench) {
    QWidget* focus = window.focusWidget() != nullptr ? window.focusWidget() : &window;
    if (key == QLatin1Char('E')) {
        QTest::keyClick(focus, Qt::Key_Enter, Qt::KeypadModifier);
    } else if (key == QLatin1Char('P')) {
        QTest::keyClick(focus, Qt::Key_PageUp);
    } else if (key == QLatin1Char('w')) {
        static_cast<void>(QTest::qWaitFor(
            [&] { return bench.round().panel().message().kind() == BenchMessage::Kind::Saved; }));
    } else if (key == QLatin1Char('d')) {
        QTest::qWait(500);
    } else {
        QTest::keyClicks(focus, key, Qt::KeypadModifier);
    }
}

} // namespace

int main(int argc, char** argv) {
    qputenv("QT_QPA_PLATFORM", "offscreen");
    QApplication application(argc, argv);
    const QStringList words = QApplication::arguments();
    if (words.size() != 4) {
        return 2;
    }
    QSettings settings(words[2], QSettings::IniFormat);
    Preferences preferences(settings);
    SystemClock clock;
    LogbookSession session(clock);
    MainWindow window(session, preferences);
    window.show();
    window.openLogbook(words[1]);
    const auto* bench = window.findChild<BenchPage*>();
    if (!QTest::qWaitFor([&] { return session.assessment() != nullptr; }, 10'000)) {
        return 1;
    }
    window.showPlace(WorkPlace::Bench);
    bench = window.findChild<BenchPage*>();
    if (bench == nullptr || !QTest::qWaitForWindowActive(&window)) {
        return 1;
    }
    for (const QChar key : words[3]) {
        type(window, key, *bench);
        static_cast<void>(QTest::qWaitFor([&] { return bench->showsRound(); }, 10'000));
    }
    std::puts("typed");
    std::fflush(stdout);
    return QApplication::exec();
}
