// How long the store takes on a big logbook: `coilbook_store_benchmark FILE [READINGS] [HITS]`.
// Makes FILE (which must not exist) with 200 engines, then reads it. Not part of the tests.
#include "core/storage/logbook_store.h"

#include <QCoreApplication>
#include <QElapsedTimer>
#include <QFileInfo>

#include <array>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <fstream>
#include <string>

using namespace coilbook;

namespace {

constexpr int kEngines = 200;

template <class Value>
Value valueOf(Result<Value> result) {
    if (!result) {
        std::fprintf(stderr, "failed: %s\n", qPrintable(result.error().detail));
        std::exit(1);
    }
    if constexpr (!std::is_void_v<Value>) {
        return std::move(*result);
    }
}

/// Time by the clock on the wall and by what the processors spent on us; on a busy machine only the
/// second says much.
class Watch {
public:
    void restart() {
        m_wall.restart();
        m_spent = std::clock();
    }

    void tell(const char* what) const {
        const auto spent = static_cast<double>(std::clock() - m_spent) * 1e3 / CLOCKS_PER_SEC;
        std::printf("%-40s %9.1f ms, %9.1f ms of processor\n", what,
                    static_cast<double>(m_wall.nsecsElapsed()) / 1e6, spent);
    }

private:
    QElapsedTimer m_wall;
    std::clock_t m_spent = 0;
};

/// Largest resident size of this process so far, as Linux tells it.
std::string peakMemory() {
    std::ifstream status("/proc/self/status");
    for (std::string line; std::getline(status, line);) {
        if (line.rfind("VmHWM", 0) == 0) {
            return line;
        }
    }
    return "VmHWM: not known";
}

/// One engine with its sixteen springs tested again and again, `hits` times at each inspection.
void addEngine(LogbookStore::Batch& batch, int number, int inspections, int hits) {
    Engine engine;
    engine.id = EngineId::make();
    engine.name = QStringLiteral("Engine %1").arg(number, 3, 10, QLatin1Char('0'));
    valueOf(batch.add(engine));
    std::vector<Spring> springs;
    for (const Place& place : engine.layout.places()) {
        springs.push_back({SpringId::make(), placeText(place), {}, {}, {}});
        valueOf(batch.add(springs.back()));
    }
    const std::vector<Place> places = engine.layout.places();
    for (int races = 0; races < inspections; ++races) {
        const Inspection inspection{InspectionId::make(), engine.id,
                                    QDate(1990, 1, 1).addDays(races), races, true};
        const Sitting sitting{SittingId::make(), inspection.id, {}, QStringLiteral("Kim"), {}};
        valueOf(batch.add(inspection));
        valueOf(batch.add(sitting));
        Reading reading;
        reading.sitting = sitting.id;
        for (std::size_t i = 0; i < places.size(); ++i) {
            for (int hit = 1; hit <= hits; ++hit) {
                reading.id = ReadingId::make();
                reading.spring = springs[i].id;
                reading.place = places[i];
                reading.hit = hit;
                reading.value = TypedForce(12500 - races, 2, ForceUnit::PoundForce);
                valueOf(batch.add(reading));
            }
        }
    }
}

} // namespace

int main(int argc, char** argv) {
    const QCoreApplication application(argc, argv);
    const QStringList arguments = QCoreApplication::arguments();
    const QString path = arguments.value(1);
    const int readings = arguments.value(2, QStringLiteral("1000000")).toInt();
    const int hits = arguments.value(3, QStringLiteral("1")).toInt();
    const int inspections = readings / (kEngines * 16 * hits);

    Watch watch;
    watch.restart();
    {
        LogbookStore store = valueOf(LogbookStore::create(path));
        const auto batch = valueOf(store.beginBatch());
        for (int number = 1; number <= kEngines; ++number) {
            addEngine(*batch, number, inspections, hits);
        }
        valueOf(batch->commit());
    }
    std::printf("%d readings in %d inspections\n", inspections * kEngines * 16 * hits,
                inspections * kEngines);
    watch.tell("make, with records made up on the way");
    std::printf("%s, file %lld MB\n", peakMemory().c_str(),
                static_cast<long long>(QFileInfo(path).size() / 1000000));

    watch.restart();
    LogbookStore store = valueOf(LogbookStore::open(path, OpenMode::ReadWrite));
    watch.tell("open");
    watch.restart();
    const std::vector<EngineSummary> engines = valueOf(store.engines());
    watch.tell("engines()");
    for (const std::size_t index : std::array<std::size_t, 3>{0, 77, 199}) {
        watch.restart();
        const EngineLog log = valueOf(store.engineLog(engines[index].id));
        watch.tell("engineLog()");
        watch.restart();
        Reading again = log.readings.front();
        again.id = ReadingId::make();
        again.hit = hits + 1;
        valueOf(store.apply(RecordReadings{{again}, {}}, SystemClock()));
        watch.tell("apply(RecordReadings) of one reading");
    }
    watch.restart();
    const VerifyReport report = valueOf(store.verify());
    watch.tell("verify()");
    std::printf("%s, findings %zu\n", peakMemory().c_str(), report.findings.size());
    return report.isSound() ? 0 : 1;
}
