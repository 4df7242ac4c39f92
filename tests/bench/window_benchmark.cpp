// From nothing to the painted Review on a given logbook, beside an empty Qt window with sixteen
// empty charts; and the time that a sheet needs to become a PDF. Give a logbook. Offscreen, so
// without the time of a window system.

#include "core/assessment/assessment.h"
#include "core/services/logbook_session.h"
#include "core/services/sheet_content.h"
#include "ui/look/theme.h"
#include "ui/main_window.h"
#include "ui/preferences.h"
#include "ui/printing/sheet_pdf.h"

#include <QApplication>
#include <QChart>
#include <QChartView>
#include <QElapsedTimer>
#include <QGridLayout>
#include <QSettings>
#include <QTemporaryDir>
#include <QTextStream>

#include <algorithm>
#include <vector>

namespace coilbook::bench {
namespace {

double millisecondsOf(const QElapsedTimer& timer) {
    return static_cast<double>(timer.nsecsElapsed()) / 1e6;
}

double median(std::vector<double> values) {
    std::sort(values.begin(), values.end());
    return values[values.size() / 2];
}

/// A window with sixteen charts that hold nothing, painted once.
double emptyChartsMilliseconds() {
    QElapsedTimer timer;
    timer.start();
    QWidget window;
    auto* grid = new QGridLayout(&window);
    for (int i = 0; i < 16; ++i) {
        grid->addWidget(new QChartView(new QChart), i / 4, i % 4);
    }
    window.resize(1366, 768);
    window.show();
    QApplication::processEvents();
    window.grab();
    return millisecondsOf(timer);
}

/// Our window on the logbook, painted with the assessment of its first engine in Review.
double ourWindowMilliseconds(const QString& logbook, const QString& settingsFile) {
    QElapsedTimer timer;
    timer.start();
    QSettings settings(settingsFile, QSettings::IniFormat);
    Preferences preferences(settings);
    const SystemClock clock;
    LogbookSession session(clock);
    MainWindow window(session, preferences);
    bool assessed = false;
    QObject::connect(&session, &LogbookSession::assessmentChanged, &window,
                     [&] { assessed = session.assessment() != nullptr; });
    window.resize(1366, 768);
    window.show();
    window.openLogbook(logbook);
    window.showPlace(WorkPlace::Review);
    while (!assessed) {
        QApplication::processEvents(QEventLoop::WaitForMoreEvents | QEventLoop::AllEvents, 50);
    }
    window.showPlace(WorkPlace::Review);
    window.grab();
    return millisecondsOf(timer);
}

double sheetMilliseconds(const QString& logbook, const QString& pdf) {
    const SystemClock clock;
    LogbookSession session(clock);
    bool loaded = false;
    QObject::connect(&session, &LogbookSession::opened, &session,
                     [&] { session.selectEngine(session.engines().front().id); });
    QObject::connect(&session, &LogbookSession::logChanged, &session,
                     [&] { loaded = session.log() != nullptr; });
    session.openLogbook(logbook);
    while (!loaded) {
        QApplication::processEvents(QEventLoop::WaitForMoreEvents | QEventLoop::AllEvents, 50);
    }
    QElapsedTimer timer;
    timer.start();
    const Assessment assessment = assess(*session.history(), session.log()->engine.rules);
    const SheetContent content = sheetContentOf(*session.log(), *session.history(), assessment,
                                                Quantities(), clock.now(), session.seal());
    const bool written = writeSheetPdf(content, pdf, Paper::A4).has_value();
    return written ? millisecondsOf(timer) : -1.0;
}

int run(const QString& logbook) {
    constexpr int kRuns = 7;
    const QTemporaryDir folder;
    QTextStream out(stdout);
    std::vector<double> empty;
    std::vector<double> ours;
    std::vector<double> sheet;
    for (int i = 0; i < kRuns; ++i) {
        empty.push_back(emptyChartsMilliseconds());
        ours.push_back(
            ourWindowMilliseconds(logbook, folder.filePath(QStringLiteral("settings.ini"))));
        sheet.push_back(sheetMilliseconds(logbook, folder.filePath(QStringLiteral("sheet.pdf"))));
    }
    out << "empty charts: " << median(empty) << " ms (first " << empty.front() << ")\n"
        << "our window:   " << median(ours) << " ms (first " << ours.front() << ")\n"
        << "sheet as PDF: " << median(sheet) << " ms (first " << sheet.front() << ")\n";
    return 0;
}

} // namespace
} // namespace coilbook::bench

int main(int argc, char** argv) {
    if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM")) {
        qputenv("QT_QPA_PLATFORM", "offscreen");
    }
    const QApplication application(argc, argv);
    if (application.arguments().size() < 2) {
        QTextStream(stderr) << "usage: coilbook_window_benchmark LOGBOOK\n";
        return 2;
    }
    return coilbook::bench::run(application.arguments().at(1));
}
