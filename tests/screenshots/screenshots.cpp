// Drives the real window on the demo logbook and saves its places as PNG, in both sizes and both
// colour schemes, and on a laptop with text at 150 %. No display is needed.
//     coilbook_screenshots FOLDER [VARIANT, for example 1366x768-light, or all [LOGBOOK]]
// With a logbook, Review of each of its engines is taken instead, on a copy of the file.

#include "core/demo/demo.h"
#include "core/services/logbook_session.h"
#include "core/support/clock.h"
#include "ui/look/theme.h"
#include "ui/main_window.h"
#include "ui/pages/bench_page.h"
#include "ui/pages/bench_round.h"
#include "ui/pages/review_board.h"
#include "ui/pages/review_page.h"
#include "ui/preferences.h"

#include <QApplication>
#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QPushButton>
#include <QSettings>
#include <QTemporaryDir>
#include <QTest>

#include <algorithm>
#include <cstdio>
#include <functional>
#include <vector>

namespace coilbook {

namespace {

constexpr int kPatienceMs = 20'000;

struct Variant {
    QSize size;
    ColourScheme scheme = ColourScheme::Light;
    int textPercent = 100;

    [[nodiscard]] QString name() const {
        const QString text =
            textPercent == 100 ? QString() : QStringLiteral("-%1").arg(textPercent);
        return QStringLiteral("%1x%2-%3")
                   .arg(QString::number(size.width()), QString::number(size.height()),
                        scheme == ColourScheme::Light ? QStringLiteral("light")
                                                      : QStringLiteral("dark")) +
               text;
    }
};

std::vector<Variant> variants() {
    const QSize laptop(1366, 768);
    const QSize desk(1920, 1080);
    return {{laptop, ColourScheme::Light},      {laptop, ColourScheme::Dark},
            {desk, ColourScheme::Light},        {desk, ColourScheme::Dark},
            {laptop, ColourScheme::Light, 150}, {laptop, ColourScheme::Dark, 150}};
}

/// One window in one variant, on a copy of the demo that may be written to.
class Shoot {
public:
    Shoot(Preferences& preferences, const QString& logbook, Variant variant, const QDir& target)
        : m_preferences(preferences)
        , m_session(m_clock)
        , m_window(m_session, preferences)
        , m_logbook(logbook)
        , m_variant(variant)
        , m_target(target) {
        preferences.setColourScheme(variant.scheme);
        preferences.setTextPercent(variant.textPercent);
    }

    [[nodiscard]] bool run() {
        return open() && takeReview() && takeSheet() && takeBench() && takeFaults();
    }

    /// Review of every engine, and its most urgent spring enlarged.
    [[nodiscard]] bool runThroughEngines() {
        if (!open()) {
            return false;
        }
        const std::vector<EngineSummary> engines = m_session.engines();
        return std::all_of(engines.begin(), engines.end(), [this](const EngineSummary& engine) {
            m_session.selectEngine(engine.id);
            return waitFor([&] {
                       const auto assessment = m_session.assessment();
                       return assessment != nullptr && assessment->engine == engine.name;
                   }) &&
                   takeReview(QLatin1Char('-') + engine.name);
        });
    }

private:
    static bool waitFor(const std::function<bool()>& condition) {
        return QTest::qWaitFor(condition, kPatienceMs);
    }

    bool open() {
        m_window.show();
        m_window.resize(m_variant.size);
        m_window.openLogbook(m_logbook);
        return waitFor([this] { return m_session.assessment() != nullptr; });
    }

    bool takeReview(const QString& suffix = {}) {
        m_window.showPlace(WorkPlace::Review);
        auto* page = m_window.findChild<ReviewPage*>();
        if (page == nullptr || !waitFor([page] { return page->board().selected().has_value(); }) ||
            !take(QStringLiteral("review") + suffix)) {
            return false;
        }
        page->board().enlarge();
        const bool taken = take(QStringLiteral("enlarged") + suffix);
        page->board().backToPlan();
        return taken;
    }

    bool takeSheet() {
        m_window.showPlace(WorkPlace::Sheet);
        return take(QStringLiteral("sheet"));
    }

    /// A round that has just begun: two readings are saved, a third is being typed.
    bool takeBench() {
        m_window.showPlace(WorkPlace::Bench);
        auto* page = m_window.findChild<BenchPage*>();
        if (page == nullptr || !take(QStringLiteral("start")) ||
            !click(*page, QStringLiteral("Start the round")) ||
            !waitFor([page] { return page->showsRound(); })) {
            return false;
        }
        if (page->round().showsCautions()) {
            if (!take(QStringLiteral("cautions"))) {
                return false;
            }
            QTest::keyClick(page->focusWidget(), Qt::Key_Return);
        }
        for (const char* reading : {"125.5", "123.25"}) {
            type(*page, reading);
            QTest::keyClick(page->focusWidget(), Qt::Key_Return);
            QTest::qWait(400);
        }
        type(*page, "126.5");
        return take(QStringLiteral("bench")) && click(*page, QStringLiteral("Finish the round")) &&
               take(QStringLiteral("summary"));
    }

    /// A reading that waits because the file is gone, a second window on the same file, and a
    /// damaged copy.
    bool takeFaults() {
        auto* page = m_window.findChild<BenchPage*>();
        const QString away = m_logbook + QStringLiteral(".away");
        m_session.keepWaiting(m_logbook + QStringLiteral(".waiting"));
        if (!QFile::rename(m_logbook, away)) {
            return false;
        }
        QTest::keyClick(page->focusWidget(), Qt::Key_Return);
        const bool waits = waitFor([this] { return !m_session.waiting().isEmpty(); });
        QTest::qWait(400);
        if (!waits || !take(QStringLiteral("not-saved")) || !QFile::rename(away, m_logbook) ||
            !waitFor([this] { return m_session.waiting().isEmpty(); }) ||
            !takeOther(m_logbook, QStringLiteral("second-window"))) {
            return false;
        }
        const QString damaged =
            QFileInfo(m_logbook).dir().filePath(QStringLiteral("damaged.coilbook"));
        QFile file(damaged);
        const bool isThere = m_session.isOpen() && QFile::copy(m_logbook, damaged) &&
                             file.open(QIODevice::ReadWrite) && file.seek(file.size() / 2) &&
                             file.write(QByteArray(512, '\0')) == 512;
        file.close();
        return isThere && takeOther(damaged, QStringLiteral("damaged"));
    }

    /// Another window on that logbook.
    bool takeOther(const QString& logbook, const QString& place) {
        LogbookSession session(m_clock);
        MainWindow window(session, m_preferences);
        window.show();
        window.resize(m_variant.size);
        window.openLogbook(logbook);
        if (!waitFor([&] { return session.assessment() != nullptr; })) {
            return false;
        }
        window.showPlace(WorkPlace::Review);
        QTest::qWait(600);
        const QString name = QStringLiteral("%1-%2.png").arg(place, m_variant.name());
        return window.size() == m_variant.size && window.grab().save(m_target.filePath(name));
    }

    static void type(const QWidget& page, const char* text) {
        QTest::keyClicks(page.focusWidget(), QString::fromLatin1(text));
    }

    static bool click(const QWidget& page, const QString& text) {
        for (QPushButton* button : page.findChildren<QPushButton*>()) {
            if (button->isVisible() && button->text().startsWith(text)) {
                button->click();
                return true;
            }
        }
        return false;
    }

    bool take(const QString& place) {
        QTest::qWait(200); // layouts, charts and fonts settle
        if (m_window.size() != m_variant.size) {
            std::fprintf(stderr, "%s does not fit %s\n", qPrintable(place),
                         qPrintable(m_variant.name()));
            return false;
        }
        const QString name = QStringLiteral("%1-%2.png").arg(place, m_variant.name());
        return m_window.grab().save(m_target.filePath(name));
    }

    SystemClock m_clock;
    Preferences& m_preferences;
    LogbookSession m_session;
    MainWindow m_window;
    QString m_logbook;
    Variant m_variant;
    QDir m_target;
};

bool takeAll(QApplication& application, const QDir& target, const QString& only,
             const QString& given) {
    const QTemporaryDir scratch;
    QSettings settings(scratch.filePath(QStringLiteral("settings.ini")), QSettings::IniFormat);
    Preferences preferences(settings);
    preferences.setPersonName(QStringLiteral("Pat Miller"));
    const Theme theme(application, preferences);
    for (const Variant& variant : variants()) {
        if (!only.isEmpty() && only != QLatin1String("all") && variant.name() != only) {
            continue;
        }
        const QDir folder(scratch.filePath(variant.name()));
        const QString logbook = folder.filePath(QStringLiteral("demo.coilbook"));
        const bool there = folder.mkpath(QStringLiteral(".")) &&
                           (given.isEmpty() ? writeDemo(logbook, SystemClock()).has_value()
                                            : QFile::copy(given, logbook));
        Shoot shoot(preferences, logbook, variant, target);
        if (!there || !(given.isEmpty() ? shoot.run() : shoot.runThroughEngines())) {
            std::fprintf(stderr, "no picture of %s\n", qPrintable(variant.name()));
            return false;
        }
    }
    return true;
}

} // namespace

} // namespace coilbook

int main(int argc, char** argv) {
    qputenv("QT_QPA_PLATFORM", "offscreen");
    qputenv("QT_LOGGING_RULES", "qt.qpa.*=false");
    QApplication application(argc, argv);
    const QStringList words = QApplication::arguments();
    if (words.size() < 2 || !QDir().mkpath(words[1])) {
        std::fprintf(stderr, "coilbook_screenshots FOLDER [VARIANT|all [LOGBOOK]]\n");
        return 2;
    }
    return coilbook::takeAll(application, QDir(words[1]), words.value(2), words.value(3)) ? 0 : 1;
}
