#include "core/exchange/stored_hits.h"

#include "core/domain/current_readings.h"

#include <QHash>

#include <algorithm>

namespace coilbook {

namespace {

template <class Record>
auto indexById(const std::vector<Record>& records) {
    QHash<QUuid, std::size_t> index;
    for (std::size_t i = 0; i < records.size(); ++i) {
        index.insert(records[i].id.uuid(), i);
    }
    return index;
}

bool isSameValue(const TypedForce& a, const TypedForce& b) {
    const auto micro = [](const TypedForce& force) {
        std::int64_t value = force.digits();
        for (int i = force.decimals(); i < TypedForce::kMostDecimals; ++i) {
            value *= 10;
        }
        return value;
    };
    return a.unit() == b.unit() && micro(a) == micro(b);
}

/// Makes forms of the rows of one engine.
class FormMaker {
public:
    FormMaker(const EngineLog& log, const OriginalFacts& originals, TextPool& texts)
        : m_log(log)
        , m_texts(texts)
        , m_springs(indexById(log.springs)) {
        const auto inspections = indexById(log.inspections);
        const auto testers = indexById(log.testers);
        const auto formOf = [&](const Sitting& sitting, bool first) {
            HitForm form;
            form.inspection = inspections.value(sitting.inspection.uuid(), log.inspections.size());
            if (sitting.tester && testers.contains(sitting.tester->uuid())) {
                const Tester& tester = log.testers[testers.value(sitting.tester->uuid())];
                form.tester = texts.fromText(first ? originals.nameOf(tester) : tester.name);
            }
            form.inspector = texts.fromText(sitting.inspector);
            form.milliCelsius = sitting.engineTemperature
                                    ? sitting.engineTemperature->inMilliCelsius()
                                    : ReadingRow::kNoTemperature;
            return form;
        };
        for (const Sitting& sitting : log.sittings) {
            m_current.insert(sitting.id.uuid(), formOf(sitting, false));
            m_original.insert(sitting.id.uuid(), formOf(originals.of(sitting), true));
        }
    }

    HitForm current(const Reading& reading) const { return with(reading, m_current); }

    HitForm original(const Reading& reading) const { return with(reading, m_original); }

private:
    using Sittings = QHash<QUuid, HitForm>;

    HitForm with(const Reading& reading, const Sittings& sittings) const {
        HitForm form = sittings.value(reading.sitting.uuid());
        form.spring = m_springs.value(reading.spring.uuid(), m_log.springs.size());
        form.place = reading.place;
        form.hit = reading.hit;
        form.retest = reading.retest;
        form.value = reading.value;
        form.note = m_texts.fromText(reading.note);
        return form;
    }

    const EngineLog& m_log;
    TextPool& m_texts;
    QHash<QUuid, std::size_t> m_springs;
    Sittings m_current;
    Sittings m_original;
};

} // namespace

std::optional<Column> HitForm::differenceTo(const ReadingRow& row) const {
    const auto contradicts = [](TextId said, TextId stored) {
        return said != kNoText && said != stored;
    };
    if (row.place().cylinder != place.cylinder) {
        return Column::Cylinder;
    }
    if (row.valve != place.valve) {
        return Column::Valve;
    }
    if (!isSameValue(row.value(), value)) {
        return row.unit == ForceUnit::PoundForce ? Column::ReadingLbf : Column::ReadingN;
    }
    if (row.retest != retest) {
        return Column::Retest;
    }
    if (contradicts(row.tester, tester)) {
        return Column::Tester;
    }
    if (contradicts(row.inspector, inspector)) {
        return Column::Inspector;
    }
    if (contradicts(row.note, note)) {
        return Column::Note;
    }
    if (row.milliCelsius != ReadingRow::kNoTemperature && row.milliCelsius != milliCelsius) {
        return Column::EngineTempC;
    }
    return std::nullopt;
}

StoredHits::StoredHits(const EngineLog& log, const OriginalFacts& originals, TextPool& texts) {
    const FormMaker forms(log, originals, texts);
    // The row now in force of each original; a withdrawn one has none.
    std::vector<std::optional<std::size_t>> inForce(log.readings.size());
    for (const CurrentHit& hit : currentHits(log)) {
        inForce[hit.original] = hit.row;
    }
    for (std::size_t i = 0; i < log.readings.size(); ++i) {
        const Reading& reading = log.readings[i];
        if (reading.kind != ReadingKind::Original) {
            continue;
        }
        StoredHit hit;
        hit.original = forms.original(reading);
        hit.isWithdrawn = !inForce[i].has_value();
        hit.current = forms.current(log.readings[inForce[i].value_or(i)]);
        hit.isAmended = inForce[i] != i;
        const std::size_t index = m_hits.size();
        m_keys.push_back({hit.current.inspection, hit.current.spring, hit.current.hit, index});
        m_keys.push_back({hit.original.inspection, hit.original.spring, hit.original.hit, index});
        m_hits.push_back(hit);
    }
    std::sort(m_keys.begin(), m_keys.end());
    m_keys.erase(std::unique(m_keys.begin(), m_keys.end()), m_keys.end());
}

std::vector<const StoredHit*> StoredHits::of(std::size_t inspection, std::size_t spring) const {
    std::vector<const StoredHit*> found;
    const Key least{inspection, spring, 0, 0};
    for (auto key = std::lower_bound(m_keys.begin(), m_keys.end(), least);
         key != m_keys.end() && key->inspection == inspection && key->spring == spring; ++key) {
        const StoredHit* hit = &m_hits[key->index];
        if (std::find(found.begin(), found.end(), hit) == found.end()) {
            found.push_back(hit);
        }
    }
    return found;
}

QString textWithUnit(const TypedForce& value) {
    const bool isPoundForce = value.unit() == ForceUnit::PoundForce;
    return value.text() + (isPoundForce ? QStringLiteral(" lbf") : QStringLiteral(" N"));
}

} // namespace coilbook
