#include "core/exchange/observation_export.h"

#include "core/domain/current_readings.h"
#include "core/domain/fitting_spans.h"
#include "core/exchange/decimal_text.h"

#include <algorithm>
#include <map>
#include <tuple>

namespace coilbook {

namespace {

/// After every date that a logbook may hold.
const QDate kEndOfTime(9999, 12, 31);

QString optionalNumber(const std::optional<int>& number) {
    return number ? QString::number(*number) : QString();
}

/// Tells which of the springs at one place stood there first.
class FittingOrder {
public:
    FittingOrder(const EngineLog& log, const std::vector<CurrentHit>& hits)
        : m_spans(fittingSpans(log, hits, kEndOfTime)) {
        for (std::size_t i = 0; i < m_spans.size(); ++i) {
            m_spansOf[{m_spans[i].place, m_spans[i].spring}].push_back(i);
        }
    }

    /// Rises with the moment of the fitting that held at an inspection.
    std::size_t at(const Place& place, const SpringId& spring, const Inspection& inspection) const {
        std::size_t rank = 0;
        const auto spans = m_spansOf.find({place, spring});
        if (spans != m_spansOf.end()) {
            for (const std::size_t i : spans->second) {
                const FittingSpan& span = m_spans[i];
                if (std::tuple(span.fittedOn, span.fittedRaces) <=
                    std::tuple(inspection.inspectedOn, inspection.engineRaces)) {
                    rank = i;
                }
            }
        }
        return rank;
    }

private:
    std::vector<FittingSpan> m_spans; ///< by place, then moment of fitting
    std::map<std::pair<Place, SpringId>, std::vector<std::size_t>> m_spansOf;
};

struct SortedHit {
    std::size_t inspection;
    Place place;
    std::size_t fitting;
    int hit;
    std::size_t index; ///< in the list of current hits

    auto operator<=>(const SortedHit&) const = default;
};

std::vector<SortedHit> inOrder(const EngineLog& log, const std::vector<CurrentHit>& hits) {
    const FittingOrder fittings(log, hits);
    std::vector<SortedHit> sorted;
    sorted.reserve(hits.size());
    for (std::size_t i = 0; i < hits.size(); ++i) {
        const Reading& reading = log.readings[hits[i].row];
        const Inspection& inspection = log.inspections[hits[i].inspection];
        sorted.push_back({hits[i].inspection, reading.place,
                          fittings.at(reading.place, reading.spring, inspection), reading.hit, i});
    }
    std::sort(sorted.begin(), sorted.end());
    return sorted;
}

template <class IdType, class Record, class Text>
std::map<IdType, QString> textsById(const std::vector<Record>& records, Text Record::*text) {
    std::map<IdType, QString> texts;
    for (const Record& record : records) {
        texts.emplace(record.id, record.*text);
    }
    return texts;
}

} // namespace

void writeHeader(CsvWriter& csv, ExchangeKind kind) {
    for (const ColumnRule& rule : columnsOf(kind)) {
        csv.plain(QString::fromLatin1(rule.name));
    }
    csv.endRecord();
}

void writeRaces(CsvWriter& csv, const EngineLog& log) {
    std::vector<Race> races = log.races;
    std::sort(races.begin(), races.end(), [](const Race& a, const Race& b) {
        return std::tie(a.racedOn, a.number) < std::tie(b.racedOn, b.number);
    });
    for (const Race& race : races) {
        csv.text(log.engine.name);
        csv.plain(QString::number(race.number));
        csv.plain(race.racedOn.toString(Qt::ISODate));
        csv.text(race.venue);
        csv.plain(optionalNumber(race.laps));
        csv.plain(optionalNumber(race.peakRpm));
        csv.plain(race.overRev ? QString::number(*race.overRev ? 1 : 0) : QString());
        csv.text(race.note);
        csv.endRecord();
    }
}

void writeReadings(CsvWriter& csv, const EngineLog& log) {
    const std::vector<CurrentHit> hits = currentHits(log);
    const auto labels = textsById<SpringId>(log.springs, &Spring::label);
    const auto testers = textsById<TesterId>(log.testers, &Tester::name);
    for (const SortedHit& sorted : inOrder(log, hits)) {
        const CurrentHit& hit = hits[sorted.index];
        const Reading& reading = log.readings[hit.row];
        const Inspection& inspection = log.inspections[hit.inspection];
        const Sitting& sitting = log.sittings[hit.sitting];
        const bool isPoundForce = reading.value.unit() == ForceUnit::PoundForce;
        const auto label = labels.find(reading.spring);
        const auto tester = sitting.tester ? testers.find(*sitting.tester) : testers.end();
        csv.text(log.engine.name);
        csv.plain(inspection.inspectedOn.toString(Qt::ISODate));
        csv.plain(QString::number(inspection.engineRaces));
        csv.plain(QString::number(reading.place.cylinder.number()));
        csv.plain(valveLetter(reading.place.valve));
        csv.text(label != labels.end() ? label->second : QString());
        csv.plain(isPoundForce ? reading.value.text() : QString());
        csv.plain(isPoundForce ? QString() : reading.value.text());
        csv.plain(QString::number(reading.hit));
        csv.plain(reading.retest ? QStringLiteral("1") : QString());
        csv.text(tester != testers.end() ? tester->second : QString());
        csv.text(sitting.inspector);
        csv.text(reading.note);
        csv.plain(sitting.engineTemperature
                      ? decimalText(sitting.engineTemperature->inMilliCelsius(), 3)
                      : QString());
        csv.endRecord();
    }
}

} // namespace coilbook
