// Import of a large readings.csv into a new logbook, beside what `sqlite3` needs to put the same
// file into a table of text, both on the same disk. Give the number of rows, or none for 1,000,000.

#include "core/exchange/export.h"
#include "core/exchange/import.h"
#include "core/storage/logbook_store.h"
#include "core/wording/wording.h"
#include "tests/bench/season_generator.h"

#include <QCoreApplication>
#include <QDir>
#include <QElapsedTimer>
#include <QFileInfo>
#include <QProcess>
#include <QTemporaryDir>
#include <QTextStream>

namespace coilbook::bench {
namespace {

constexpr int kEngines = 200;

/// Peak of the memory in use (VmHWM of /proc/self/status), in MB.
double peakMegabytes() {
    QFile status(QStringLiteral("/proc/self/status"));
    if (status.open(QIODevice::ReadOnly)) {
        for (const QByteArray& line : status.readAll().split('\n')) {
            if (line.startsWith("VmHWM:")) {
                return line.simplified().split(' ').at(1).toDouble() / 1024.0;
            }
        }
    }
    return 0.0;
}

/// Seconds that `sqlite3` needs, or nothing if it is not installed.
std::optional<double> sqliteSeconds(const QString& csv, const QString& database) {
    QProcess process;
    QElapsedTimer timer;
    timer.start();
    process.start(QStringLiteral("sqlite3"),
                  {database, QStringLiteral(".import --csv \"%1\" readings").arg(csv)});
    const bool done = process.waitForFinished(-1) && process.exitCode() == 0;
    return done ? std::optional(static_cast<double>(timer.elapsed()) / 1000.0) : std::nullopt;
}

int run(int rows) {
    QTextStream out(stdout);
    const QTemporaryDir folder(QDir::current().filePath(QStringLiteral("import-bench-XXXXXX")));
    const QString csv = folder.filePath(QStringLiteral("readings.csv"));
    if (!folder.isValid() || !writeReadings(csv, rows, kEngines)) {
        out << "cannot write here\n";
        return 1;
    }
    out << rows << " rows, " << QFileInfo(csv).size() / 1'000'000 << " MB\n";
    const std::optional<double> sqlite =
        sqliteSeconds(csv, folder.filePath(QStringLiteral("table.sqlite")));

    const double before = peakMegabytes();
    QElapsedTimer timer;
    timer.start();
    Result<LogbookStore> store =
        LogbookStore::create(folder.filePath(QStringLiteral("shop.coilbook")));
    if (!store) {
        out << wording::line(store.error()) << '\n';
        return 1;
    }
    const auto readAndChecked = [&](double part) {
        static bool told = false; // once, when writing begins
        if (part >= 0.3 && !told) {
            told = true;
            out << "  read and checked after " << static_cast<double>(timer.elapsed()) / 1000.0
                << " s, peak " << peakMegabytes() << " MB\n";
        }
        return true;
    };
    const Result<ImportReport> report = importFiles(*store, {csv}, SystemClock(), readAndChecked);
    const double ours = static_cast<double>(timer.elapsed()) / 1000.0;
    if (!report) {
        out << wording::line(report.error()) << '\n';
        return 1;
    }
    out << "import: " << ours << " s, peak " << peakMegabytes() << " MB (before: " << before
        << " MB), logbook " << QFileInfo(store->path()).size() / 1'000'000 << " MB\n";
    timer.restart();
    const Result<ImportReport> again = importFiles(*store, {csv}, SystemClock());
    if (!again || !again->changedNothing()) {
        out << "the second import was not as it should be\n";
        return 1;
    }
    out << "again, all known: " << static_cast<double>(timer.elapsed()) / 1000.0 << " s, peak "
        << peakMegabytes() << " MB\n";
    timer.restart();
    if (!exportLogbook(*store, folder.filePath(QStringLiteral("out")))) {
        out << "the export failed\n";
        return 1;
    }
    out << "export: " << static_cast<double>(timer.elapsed()) / 1000.0 << " s, peak "
        << peakMegabytes() << " MB\n";
    if (sqlite) {
        out << "sqlite3 .import: " << *sqlite << " s; ratio " << ours / *sqlite << '\n';
    } else {
        out << "sqlite3 is not installed, so there is nothing to compare with\n";
    }
    return 0;
}

} // namespace
} // namespace coilbook::bench

int main(int argc, char** argv) {
    const QCoreApplication application(argc, argv);
    const QStringList arguments = QCoreApplication::arguments();
    constexpr int kUsualRows = 1'000'000;
    return coilbook::bench::run(arguments.size() > 1 ? arguments.at(1).toInt() : kUsualRows);
}
