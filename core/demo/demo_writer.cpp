#include "core/demo/demo_writer.h"

#include <QDateTime>

#include <algorithm>
#include <cmath>
#include <random>

namespace coilbook::demo {

namespace {

constexpr double kHandLbf = 0.35; ///< SD of seating the tester
constexpr double kHitLbf = 0.20;  ///< SD of one push more without re-seating
constexpr double kGraduationLbf = 0.5;
constexpr double kSetSpreadLbf = 1.5; ///< new springs differ by about this much

/// Noise that is the same on every machine: the standard fixes the generator but not the
/// distributions, so the normal is made by hand (sum of twelve uniforms, variance 1).
class Noise {
public:
    explicit Noise(unsigned seed)
        : m_generator(seed) {}

    double normal(double sd) {
        double sum = -6.0;
        for (int i = 0; i < 12; ++i) {
            sum += static_cast<double>(m_generator()) / 4294967296.0;
        }
        return sum * sd;
    }

private:
    std::mt19937 m_generator;
};

Moment evening(const QDate& on, int minute) {
    const QDateTime at(on, QTime(19, 0).addSecs(60 * minute), Qt::UTC);
    return {at.toString(QStringLiteral("yyyy-MM-ddTHH:mm:ss.zzzZ")), 0};
}

class SeasonWriter {
public:
    SeasonWriter(const DemoSeason& season, const std::vector<Tester>& testers)
        : m_season(season)
        , m_testers(testers)
        , m_noise(season.seed) {
        m_engine.id = EngineId::make();
        m_engine.name = season.engine;
        m_engine.serial = season.serial;
        m_engine.rpmCeiling = season.rpmCeiling;
    }

    std::vector<Change> write() {
        setUpEngine();
        std::size_t race = 0;
        for (const SeasonInspection& inspection : m_season.inspections) {
            for (; race < m_season.races.size() && static_cast<int>(race) < inspection.races;
                 ++race) {
                addRace(static_cast<int>(race) + 1, m_season.races[race]);
            }
            inspect(inspection);
        }
        addPlansAndSpares();
        return std::move(m_changes);
    }

private:
    struct Stand {
        Spring spring;
        double freshLbf = 0.0;
        int sinceRaces = 0;
    };

    void addPlansAndSpares() {
        for (const SeasonPlan& plan : m_season.plans) {
            m_changes.emplace_back(AddPlannedRace{{PlannedRaceId::make(), m_engine.id, plan.on,
                                                   plan.venue, plan.laps, QString(), false}});
        }
        for (const SeasonSpare& spare : m_season.spares) {
            Spring spring = newSpring(spare.label);
            spring.batch = spare.batch;
            Shelving shelving;
            shelving.id = ShelvingId::make();
            shelving.engine = m_engine.id;
            shelving.spring = spring.id;
            shelving.shelvedOn = spare.on;
            shelving.pressure = TypedForce::parse(spare.pressureLbf, ForceUnit::PoundForce);
            shelving.height = Length::inches(spare.heightIn);
            shelving.reason = QStringLiteral("New spare");
            m_changes.emplace_back(ShelveSpring{shelving, spring});
        }
    }

    void setUpEngine() {
        AddEngine add{m_engine, {}, {}};
        int number = 0;
        for (const Place& place : m_engine.layout.places()) {
            Stand stand;
            const QString label =
                m_season.springPrefix + QString::number(++number).rightJustified(2, u'0');
            stand.spring = newSpring(label);
            stand.freshLbf = m_season.freshLbf + m_noise.normal(kSetSpreadLbf);
            add.springs.push_back(stand.spring);
            add.fittings.push_back({FittingId::make(), m_engine.id, stand.spring.id, place,
                                    m_season.inspections.front().on, 0, QString(), false});
            m_stands.emplace(place, stand);
        }
        m_changes.emplace_back(add);
    }

    Spring newSpring(const QString& label) const {
        return {SpringId::make(), label, m_season.part, m_season.batch, QString()};
    }

    void addRace(int number, const SeasonRace& race) {
        m_changes.emplace_back(AddRace{{RaceId::make(), m_engine.id, number, race.on, race.venue,
                                        race.laps, race.peakRpm, std::nullopt, race.note}});
    }

    void inspect(const SeasonInspection& plan) {
        const Inspection inspection{InspectionId::make(), m_engine.id, plan.on, plan.races, true};
        const auto tester =
            std::find_if(m_testers.begin(), m_testers.end(),
                         [&](const Tester& candidate) { return candidate.name == plan.tester; });
        const Sitting sitting{
            SittingId::make(), inspection.id, tester->id, plan.inspector,
            Temperature::milliCelsius(static_cast<int>(std::lround(plan.engineCelsius * 1000)))};
        m_changes.emplace_back(StartInspection{inspection, sitting});
        m_minute = 0;
        for (auto& [place, stand] : m_stands) {
            readOne(plan, sitting, place, stand);
            swapIfDue(plan, sitting, place, stand);
        }
    }

    void readOne(const SeasonInspection& plan, const Sitting& sitting, const Place& place,
                 const Stand& stand) {
        const double truth = stand.freshLbf - lossOf(place, stand, plan.races) + plan.shiftLbf +
                             m_noise.normal(kHandLbf) + badSeatingOf(place, plan.races);
        const auto slip =
            std::find_if(m_season.slips.begin(), m_season.slips.end(), [&](const Slip& candidate) {
                return candidate.place == place && candidate.atRaces == plan.races;
            });
        RecordReadings record;
        std::optional<AmendReading> amended;
        for (int hit = 1; hit <= plan.hits; ++hit) {
            Reading reading = hitOf(sitting, stand.spring, place, hit, truth);
            reading.author.at = evening(plan.on, ++m_minute);
            if (hit == 1 && slip != m_season.slips.end()) {
                amended = correctionOf(reading, plan, slip->why);
                reading.value = *TypedForce::parse(slip->typed, ForceUnit::PoundForce);
            }
            record.readings.push_back(reading);
        }
        m_changes.emplace_back(record);
        if (amended) {
            m_changes.emplace_back(*amended);
        }
    }

    static AmendReading correctionOf(const Reading& meant, const SeasonInspection& plan,
                                     const QString& why) {
        Reading correction = meant;
        correction.amends = meant.id;
        correction.id = ReadingId::make();
        correction.kind = ReadingKind::Correction;
        correction.author = {plan.inspector, evening(plan.on, 55), why};
        return {correction};
    }

    Reading hitOf(const Sitting& sitting, const Spring& spring, const Place& place, int hit,
                  double truthLbf) {
        const double read = truthLbf + m_noise.normal(kHitLbf);
        // Half pounds have one decimal: 117.5 is kept as 1175.
        const std::int64_t tenths = 5 * std::lround(read / kGraduationLbf);
        Reading reading;
        reading.id = ReadingId::make();
        reading.sitting = sitting.id;
        reading.spring = spring.id;
        reading.place = place;
        reading.hit = hit;
        reading.value = TypedForce(tenths, 1, ForceUnit::PoundForce);
        return reading;
    }

    double lossOf(const Place& place, const Stand& stand, int races) const {
        const int run = races - stand.sinceRaces;
        if (run <= 0) {
            return 0.0;
        }
        const auto fast = m_season.fastLbfPerRace.find(place);
        const bool isFast = fast != m_season.fastLbfPerRace.end() && stand.sinceRaces == 0;
        const double rate = isFast                          ? fast->second
                            : place.valve == Valve::Exhaust ? m_season.exhaustLbfPerRace
                                                            : m_season.intakeLbfPerRace;
        double loss = m_season.breakInLbf + rate * run;
        for (int race = stand.sinceRaces + 1; race <= races; ++race) {
            if (m_season.races[static_cast<std::size_t>(race - 1)].peakRpm > m_season.rpmCeiling) {
                loss += m_season.overRevLbf;
            }
        }
        for (const SuddenLoss& sudden : m_season.suddenLosses) {
            if (sudden.place == place && races >= sudden.atRaces) {
                loss += sudden.lbf;
            }
        }
        return loss;
    }

    double badSeatingOf(const Place& place, int races) const {
        double lbf = 0.0;
        for (const BadSeating& bad : m_season.badSeatings) {
            if (bad.place == place && bad.atRaces == races) {
                lbf += bad.lbf;
            }
        }
        return lbf;
    }

    void swapIfDue(const SeasonInspection& plan, const Sitting& sitting, const Place& place,
                   Stand& stand) {
        for (const SeasonSwap& swap : m_season.swaps) {
            if (swap.place != place || swap.atRaces != plan.races) {
                continue;
            }
            Shelving outgoing;
            outgoing.id = ShelvingId::make();
            outgoing.engine = m_engine.id;
            outgoing.spring = stand.spring.id;
            outgoing.to = Storage::Scrap;
            outgoing.shelvedOn = plan.on;
            outgoing.reason = swap.reason;
            stand = {newSpring(swap.label), swap.freshLbf, plan.races};
            FitSpring fit;
            fit.fitting = {FittingId::make(), m_engine.id, stand.spring.id, place,
                           plan.on,           plan.races,  swap.reason,     false};
            fit.newSpring = stand.spring;
            fit.outgoing = outgoing;
            for (int hit = 1; hit <= plan.hits; ++hit) {
                Reading reading =
                    hitOf(sitting, stand.spring, place, hit, stand.freshLbf + plan.shiftLbf);
                reading.author.at = evening(plan.on, ++m_minute);
                fit.baseline.push_back(reading);
            }
            m_changes.emplace_back(fit);
        }
    }

    const DemoSeason& m_season;
    const std::vector<Tester>& m_testers;
    Noise m_noise;
    Engine m_engine;
    std::map<Place, Stand> m_stands;
    std::vector<Change> m_changes;
    int m_minute = 0;
};

} // namespace

std::vector<Change> changesOf(const DemoSeason& season, const std::vector<Tester>& testers) {
    return SeasonWriter(season, testers).write();
}

std::vector<Tester> teamTesters() {
    Tester bench;
    bench.id = TesterId::make();
    bench.name = QStringLiteral("Bench 160");
    bench.range = TypedForce(160, 0, ForceUnit::PoundForce);
    bench.graduation = TypedForce(5, 1, ForceUnit::PoundForce);
    bench.calibratedOn = QDate(2026, 3, 2);
    bench.unit = ForceUnit::PoundForce;
    bench.accuracy = GaugeGrade::OneA;
    Tester tall;
    tall.id = TesterId::make();
    tall.name = QStringLiteral("Tall 600");
    tall.range = TypedForce(600, 0, ForceUnit::PoundForce);
    tall.graduation = TypedForce(5, 0, ForceUnit::PoundForce);
    tall.unit = ForceUnit::PoundForce;
    tall.accuracy = GaugeGrade::A;
    tall.note = QStringLiteral("For open pressures; too coarse for the seat");
    return {bench, tall};
}

} // namespace coilbook::demo
