// What safety costs: `coilbook_safety_benchmark [READINGS [COMMITS]]`, in the current folder.
//   - The commit of one reading, median and 99th percentile, beside appending 4 KiB to a file and
//     fdatasync on the same disk, one after the other in turns.
//   - verify and backup of a logbook of READINGS (1,000,000) beside `sqlite3` doing PRAGMA
//     integrity_check and VACUUM INTO on the same file, three rounds in turns. Time on the wall and
//     time of the processors; on a busy machine only the second says much.
#include "core/storage/logbook_store.h"

#include <QCoreApplication>
#include <QDir>
#include <QElapsedTimer>
#include <QFile>
#include <QFileInfo>
#include <QProcess>
#include <QTemporaryDir>

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <fcntl.h>
#include <sys/resource.h>
#include <unistd.h>
#include <vector>

using namespace coilbook;

namespace {

constexpr int kEngines = 200;
constexpr int kHits = 3;

template <class Value>
Value valueOf(Result<Value> result) {
    if (!result) {
        std::fprintf(stderr, "failed: %s %s\n", qPrintable(result.error().file),
                     qPrintable(result.error().detail));
        std::exit(1);
    }
    if constexpr (!std::is_void_v<Value>) {
        return std::move(*result);
    }
}

double secondsOf(const timeval& time) {
    return static_cast<double>(time.tv_sec) + static_cast<double>(time.tv_usec) / 1e6;
}

/// Time of the processors spent by this process and by those that it started and waited for.
double processorSeconds() {
    double seconds = 0.0;
    for (const auto who : {RUSAGE_SELF, RUSAGE_CHILDREN}) {
        rusage usage{};
        getrusage(who, &usage);
        seconds += secondsOf(usage.ru_utime) + secondsOf(usage.ru_stime);
    }
    return seconds;
}

struct Spent {
    double wall = 0.0;
    double processor = 0.0;
};

template <class Work>
Spent spentOn(Work work) {
    const double before = processorSeconds();
    QElapsedTimer timer;
    timer.start();
    work();
    return {static_cast<double>(timer.nsecsElapsed()) / 1e9, processorSeconds() - before};
}

double atPart(std::vector<double> values, double part) {
    std::sort(values.begin(), values.end());
    return values.at(static_cast<std::size_t>(part * static_cast<double>(values.size() - 1)));
}

/// An engine with sixteen springs, tested at so many inspections with three hits each.
Engine addEngine(LogbookStore::Batch& batch, int number, int inspections) {
    Engine engine;
    engine.id = EngineId::make();
    engine.name = QStringLiteral("Engine %1").arg(number, 3, 10, QLatin1Char('0'));
    valueOf(batch.add(engine));
    const std::vector<Place> places = engine.layout.places();
    std::vector<Spring> springs;
    for (const Place& place : places) {
        springs.push_back({SpringId::make(), placeText(place), {}, {}, {}});
        valueOf(batch.add(springs.back()));
    }
    for (int races = 0; races < inspections; ++races) {
        const Inspection inspection{InspectionId::make(), engine.id,
                                    QDate(1990, 1, 1).addDays(races), races, true};
        const Sitting sitting{SittingId::make(), inspection.id, {}, QStringLiteral("Kim"), {}};
        valueOf(batch.add(inspection));
        valueOf(batch.add(sitting));
        Reading reading;
        reading.sitting = sitting.id;
        for (std::size_t i = 0; i < places.size(); ++i) {
            for (int hit = 1; hit <= kHits; ++hit) {
                reading.id = ReadingId::make();
                reading.spring = springs[i].id;
                reading.place = places[i];
                reading.hit = hit;
                reading.value = TypedForce(12500 - races % 1000, 2, ForceUnit::PoundForce);
                valueOf(batch.add(reading));
            }
        }
    }
    return engine;
}

void fill(LogbookStore& store, int engines, int inspections) {
    const auto batch = valueOf(store.beginBatch());
    for (int number = 1; number <= engines; ++number) {
        addEngine(*batch, number, inspections);
    }
    valueOf(batch->commit());
}

double appendAndSync(int file, const QByteArray& block) {
    QElapsedTimer timer;
    timer.start();
    if (::write(file, block.constData(), static_cast<std::size_t>(block.size())) != block.size() ||
        ::fdatasync(file) != 0) {
        std::perror("append and sync");
        std::exit(1);
    }
    return static_cast<double>(timer.nsecsElapsed()) / 1e3;
}

/// An engine after a season, and one more inspection being read into it spring by spring.
void measureCommits(const QString& folder, int commits) {
    LogbookStore store =
        valueOf(LogbookStore::create(QDir(folder).filePath(QStringLiteral("commits.coilbook"))));
    fill(store, 1, 30);
    const EngineLog log = valueOf(store.engineLog(valueOf(store.engines()).front().id));
    Inspection inspection{InspectionId::make(), log.engine.id, QDate(2020, 5, 2), 40, false};
    Sitting sitting{SittingId::make(), inspection.id, {}, QStringLiteral("Kim"), {}};
    const SystemClock clock;
    valueOf(store.apply(StartInspection{inspection, sitting}, clock));
    const QString name = QDir(folder).filePath(QStringLiteral("floor"));
    const int file = ::open(QFile::encodeName(name).constData(),
                            O_CREAT | O_WRONLY | O_APPEND | O_CLOEXEC, 0600);
    const QByteArray block(4096, 'x');
    std::vector<double> ours;
    std::vector<double> floor;
    constexpr int kReadingsPerInspection = 48;
    for (int i = 0; i < commits; ++i) {
        if (i % kReadingsPerInspection == 0 && i > 0) {
            inspection.id = InspectionId::make();
            inspection.inspectedOn = inspection.inspectedOn.addDays(1);
            sitting.id = SittingId::make();
            sitting.inspection = inspection.id;
            valueOf(store.apply(StartInspection{inspection, sitting}, clock));
        }
        const int place = i % kReadingsPerInspection / kHits;
        Reading reading;
        reading.id = ReadingId::make();
        reading.sitting = sitting.id;
        reading.spring = log.springs.at(static_cast<std::size_t>(place)).id;
        reading.place = log.engine.layout.places().at(static_cast<std::size_t>(place));
        reading.hit = i % kHits + 1;
        reading.value = TypedForce(12150, 2, ForceUnit::PoundForce);
        reading.author = {QStringLiteral("Kim"), clock.now(), {}};
        const RecordReadings change{{reading}, {}};
        QElapsedTimer timer;
        timer.start();
        valueOf(store.apply(change, clock));
        ours.push_back(static_cast<double>(timer.nsecsElapsed()) / 1e3);
        floor.push_back(appendAndSync(file, block));
    }
    ::close(file);
    for (const auto& [what, part] :
         {std::pair("median", 0.5), std::pair("99th percentile", 0.99)}) {
        std::printf("commit of one reading, %-16s %8.0f us; append 4 KiB + fdatasync %8.0f us;"
                    " ratio %.2f\n",
                    what, atPart(ours, part), atPart(floor, part),
                    atPart(ours, part) / atPart(floor, part));
    }
}

void runSqlite(const QString& file, const QString& sql) {
    QProcess process;
    process.start(QStringLiteral("sqlite3"), {file, sql});
    if (!process.waitForFinished(-1) || process.exitCode() != 0) {
        std::fprintf(stderr, "sqlite3 is not installed or failed: %s\n",
                     process.readAllStandardError().constData());
        std::exit(1);
    }
}

void tell(const char* what, const Spent& ours, const char* reference, const Spent& theirs) {
    std::printf("%-7s %6.2f s, processor %6.2f s; %-22s %6.2f s, processor %6.2f s;"
                " ratio %.2f, processor %.2f\n",
                what, ours.wall, ours.processor, reference, theirs.wall, theirs.processor,
                ours.wall / theirs.wall, ours.processor / theirs.processor);
}

void measureWholeFile(const QString& folder, int readings) {
    const QString path = QDir(folder).filePath(QStringLiteral("shop.coilbook"));
    LogbookStore store = valueOf(LogbookStore::create(path));
    fill(store, kEngines, std::max(1, readings / (kEngines * 16 * kHits)));
    const QString copy = QDir(folder).filePath(QStringLiteral("copy.sqlite"));
    constexpr int kRounds = 3;
    for (int round = 0; round < kRounds; ++round) {
        const Spent check =
            spentOn([&] { runSqlite(path, QStringLiteral("PRAGMA integrity_check;")); });
        VerifyReport report;
        const Spent verify = spentOn([&] { report = valueOf(store.verify()); });
        if (!report.isSound()) {
            std::fprintf(stderr, "the logbook made here is not sound\n");
            std::exit(1);
        }
        if (round == 0) {
            std::printf("%lld rows, file %lld MB\n", static_cast<long long>(report.rowsChecked),
                        static_cast<long long>(QFileInfo(path).size() / 1'000'000));
        }
        tell("verify", verify, "PRAGMA integrity_check", check);
        const Spent vacuum =
            spentOn([&] { runSqlite(path, QStringLiteral("VACUUM INTO '%1';").arg(copy)); });
        QFile::remove(copy);
        const Spent backup = spentOn([&] { valueOf(store.backup(copy)); });
        QFile::remove(copy);
        tell("backup", backup, "VACUUM INTO", vacuum);
    }
}

} // namespace

int main(int argc, char** argv) {
    const QCoreApplication application(argc, argv);
    const QStringList arguments = QCoreApplication::arguments();
    const QTemporaryDir folder(QDir::current().filePath(QStringLiteral("safety-bench-XXXXXX")));
    if (!folder.isValid()) {
        std::fprintf(stderr, "cannot write here\n");
        return 1;
    }
    measureCommits(folder.path(), arguments.value(2, QStringLiteral("1500")).toInt());
    measureWholeFile(folder.path(), arguments.value(1, QStringLiteral("1000000")).toInt());
    return 0;
}
