#include "core/exchange/engine_check.h"

#include "core/exchange/race_check.h"
#include "core/support/text.h"

#include <QHash>

#include <algorithm>

namespace coilbook {

namespace {

using DayAndRaces = std::pair<std::int32_t, std::int32_t>;

} // namespace

EngineCheck::EngineCheck(ExchangeInput& input, FaultLog& faults, const EngineRows& rows,
                         const EngineLog& stored, bool isStored)
    : m_input(input)
    , m_faults(input, faults)
    , m_rows(rows)
    , m_stored(stored)
    , m_originals(stored)
    , m_hits(stored, m_originals, input.texts) {
    m_plan.name = rows.engine;
    if (isStored) {
        m_plan.id = stored.engine.id;
    }
}

ImportPlan EngineCheck::run() {
    takeStored();
    checkPlaces();
    const std::vector<PlacedRow> placed = placeRows();
    for (auto first = placed.begin(); first != placed.end();) {
        const auto last = std::find_if(first, placed.end(), [&](const PlacedRow& row) {
            return row.inspection != first->inspection || row.spring != first->spring;
        });
        checkGroup(Group(first, last));
        first = last;
    }
    checkRaces(m_input, m_faults, m_rows, m_stored, m_plan);
    checkCourse(m_input, m_faults, m_stored, m_firstRows, m_plan);
    findMovedBaselines();
    m_plan.report.readingsAdded = static_cast<qint64>(m_plan.readings.size());
    m_plan.report.racesAdded = static_cast<qint64>(m_plan.races.size());
    return std::move(m_plan);
}

/// Springs, inspections and sittings of the logbook come first, in its order, so that an index in
/// the log is one in the plan. Each can be found under its present and under its first name.
void EngineCheck::takeStored() {
    TextPool& texts = m_input.texts;
    for (const Spring& spring : m_stored.springs) {
        const TextId label = texts.fromText(spring.label);
        m_springs.emplace(label, static_cast<std::uint32_t>(m_plan.springs.size()));
        m_labelsByCase.emplace(caseKey(spring.label), label);
        m_plan.springs.push_back({spring.id, label});
    }
    for (const Inspection& inspection : m_stored.inspections) {
        const auto day = static_cast<std::int32_t>(inspection.inspectedOn.toJulianDay());
        m_inspections.emplace(std::pair(day, inspection.engineRaces),
                              static_cast<std::uint32_t>(m_plan.inspections.size()));
        m_plan.inspections.push_back({inspection.id, day, inspection.engineRaces});
    }
    std::uint32_t index = 0;
    for (const Spring& spring : m_stored.springs) {
        m_springs.emplace(texts.fromText(m_originals.labelOf(spring)), index++);
    }
    index = 0;
    for (const Inspection& inspection : m_stored.inspections) {
        const Inspection original = m_originals.of(inspection);
        const auto day = static_cast<std::int32_t>(original.inspectedOn.toJulianDay());
        m_inspections.emplace(std::pair(day, original.engineRaces), index++);
    }
    m_firstRows.assign(m_plan.inspections.size(), kNoRow);
    QHash<QUuid, TextId> testers;
    for (const Tester& tester : m_stored.testers) {
        testers.insert(tester.id.uuid(), texts.fromText(tester.name));
    }
    QHash<QUuid, std::uint32_t> inspections;
    for (std::uint32_t i = 0; i < m_plan.inspections.size(); ++i) {
        inspections.insert(m_plan.inspections[i].id.uuid(), i);
    }
    for (const Sitting& sitting : m_stored.sittings) {
        const ImportPlan::Sitting known{sitting.id, inspections[sitting.inspection.uuid()],
                                        sitting.tester ? testers[sitting.tester->uuid()] : kNoText,
                                        texts.fromText(sitting.inspector),
                                        sitting.engineTemperature
                                            ? sitting.engineTemperature->inMilliCelsius()
                                            : ReadingRow::kNoTemperature};
        m_sittings.emplace(
            std::tuple(known.inspection, known.tester, known.inspector, known.milliCelsius),
            static_cast<std::uint32_t>(m_plan.sittings.size()));
        m_plan.sittings.push_back(known);
    }
}

/// A cylinder must be one of the engine's.
void EngineCheck::checkPlaces() {
    const std::vector<Place> places = m_stored.engine.layout.places();
    for (const std::uint32_t row : m_rows.readings) {
        const Place place = readingAt(row).place();
        if (!std::binary_search(places.begin(), places.end(), place)) {
            m_faults.add(readingAt(row), Column::Cylinder, LogbookFault::NoSuchPlace,
                         {placeText(place)});
        }
    }
}

std::vector<EngineCheck::PlacedRow> EngineCheck::placeRows() {
    std::vector<PlacedRow> placed;
    placed.reserve(m_rows.readings.size());
    for (const std::uint32_t row : m_rows.readings) {
        placed.push_back({inspectionOf(row), springOf(row), readingAt(row).hit, row});
    }
    // Most files are in order already.
    if (!std::is_sorted(placed.begin(), placed.end())) {
        std::sort(placed.begin(), placed.end());
    }
    return placed;
}

std::uint32_t EngineCheck::springOf(std::uint32_t row) {
    const TextId label = readingAt(row).spring;
    const auto [spring, isNew] =
        m_springs.try_emplace(label, static_cast<std::uint32_t>(m_plan.springs.size()));
    if (isNew) {
        m_plan.springs.push_back({SpringId(), label});
        const QString text = m_input.texts.text(label);
        const auto [there, isFirst] = m_labelsByCase.try_emplace(caseKey(text), label);
        if (!isFirst) {
            m_faults.add(readingAt(row), Column::Spring, LogbookFault::NameDiffersInCaseOnly,
                         {text, m_input.texts.text(there->second)});
        }
    }
    return spring->second;
}

std::uint32_t EngineCheck::inspectionOf(std::uint32_t row) {
    const ReadingRow& reading = readingAt(row);
    const auto [inspection, isNew] =
        m_inspections.try_emplace(std::pair(reading.day, reading.engineRaces),
                                  static_cast<std::uint32_t>(m_plan.inspections.size()));
    if (isNew) {
        m_plan.inspections.push_back({InspectionId(), reading.day, reading.engineRaces});
        m_firstRows.push_back(row);
    }
    return inspection->second;
}

std::uint32_t EngineCheck::sittingOf(const PlacedRow& placed) {
    const ReadingRow& row = readingAt(placed.row);
    const auto [sitting, isNew] = m_sittings.try_emplace(
        std::tuple(placed.inspection, row.tester, row.inspector, row.milliCelsius),
        static_cast<std::uint32_t>(m_plan.sittings.size()));
    if (isNew) {
        m_plan.sittings.push_back(
            {SittingId(), placed.inspection, row.tester, row.inspector, row.milliCelsius});
    }
    return sitting->second;
}

/// All rows of one spring in one inspection, by hit, then in their order.
void EngineCheck::checkGroup(Group group) {
    if (!isEvenlyNumbered(group)) {
        return;
    }
    const std::vector<const StoredHit*> stored =
        m_hits.of(group.front().inspection, group.front().spring);
    if (!standsAtOnePlace(group, stored)) {
        return;
    }
    if (group.front().hit > 0) {
        matchNumbered(group, stored);
    } else {
        matchUnnumbered(group, stored);
    }
}

bool EngineCheck::isEvenlyNumbered(Group group) {
    const std::uint32_t first =
        std::min_element(group.begin(), group.end(), [](const PlacedRow& a, const PlacedRow& b) {
            return a.row < b.row;
        })->row;
    const bool isNumbered = readingAt(first).hit > 0;
    bool isEven = true;
    for (const PlacedRow& placed : group) {
        const ReadingRow& row = readingAt(placed.row);
        if ((row.hit > 0) != isNumbered) {
            isEven = false;
            m_faults.add(row, Column::Hit, InputFault::HitsPartlyNumbered,
                         QStringList(m_input.texts.text(row.spring)) +
                             m_faults.whereIs(readingAt(first), row));
        }
    }
    return isEven;
}

/// In one inspection a spring stands at one place. A row that equals what was stored before the
/// place was amended may name the place of that time.
bool EngineCheck::standsAtOnePlace(Group group, const std::vector<const StoredHit*>& stored) {
    const auto isInForce = [&](const StoredHit* hit) {
        return !hit->isWithdrawn && hit->current.spring == group.front().spring &&
               hit->current.inspection == group.front().inspection;
    };
    const auto there = std::find_if(stored.begin(), stored.end(), isInForce);
    const std::uint32_t first =
        std::min_element(group.begin(), group.end(), [](const PlacedRow& a, const PlacedRow& b) {
            return a.row < b.row;
        })->row;
    const Place place = there != stored.end() ? (*there)->current.place : readingAt(first).place();
    bool isOne = true;
    for (const PlacedRow& placed : group) {
        const ReadingRow& row = readingAt(placed.row);
        const auto isOfOldPlace = [&](const StoredHit* hit) {
            return hit->isAmended && hit->original.place == row.place();
        };
        if (row.place() == place || std::any_of(stored.begin(), stored.end(), isOfOldPlace)) {
            continue;
        }
        isOne = false;
        const QStringList where = there != stored.end()
                                      ? QStringList{QString(), QStringLiteral("0")}
                                      : m_faults.whereIs(readingAt(first), row);
        m_faults.add(
            row, row.place().cylinder != place.cylinder ? Column::Cylinder : Column::Valve,
            InputFault::SpringAtTwoPlaces,
            QStringList{m_input.texts.text(row.spring), placeText(row.place()), placeText(place)} +
                where);
    }
    return isOne;
}

void EngineCheck::matchNumbered(Group group, const std::vector<const StoredHit*>& stored) {
    for (std::size_t i = 0; i < group.size(); ++i) {
        const PlacedRow& placed = group[i];
        const ReadingRow& row = readingAt(placed.row);
        if (i > 0 && group[i - 1].hit == placed.hit) {
            m_faults.add(row, Column::Hit, InputFault::HitTwice,
                         QStringList{m_input.texts.text(row.spring), QString::number(row.hit)} +
                             m_faults.whereIs(readingAt(group[i - 1].row), row));
            continue;
        }
        const StoredHit* rival = nullptr;
        bool known = false;
        for (const StoredHit* hit : stored) {
            if (hit->current.hit == row.hit || hit->original.hit == row.hit) {
                known = known || isKnown(row, *hit, placed);
                rival = rival == nullptr || rival->isWithdrawn ? hit : rival;
            }
        }
        if (!known && rival != nullptr) {
            contradict(row, *rival);
        } else if (!known) {
            add(placed, row.hit);
        }
    }
}

/// Rows without numbers are hits 1, 2 … in their order: what is stored must come first. A row may
/// be missing where the stored hit was withdrawn.
void EngineCheck::matchUnnumbered(Group group, const std::vector<const StoredHit*>& stored) {
    auto next = stored.begin();
    std::int32_t lastHit = 0;
    for (const StoredHit* hit : stored) {
        lastHit = std::max({lastHit, hit->current.hit, hit->original.hit});
    }
    for (const PlacedRow& placed : group) {
        const ReadingRow& row = readingAt(placed.row);
        while (next != stored.end() && !isKnown(row, **next, placed)) {
            if (!(*next)->isWithdrawn) {
                contradict(row, **next);
                return;
            }
            ++next;
        }
        if (next != stored.end()) {
            ++next;
        } else {
            add(placed, ++lastHit);
        }
    }
}

/// Whether a row says what is stored, in its present form or as first written. Counts it if so.
bool EngineCheck::isKnown(const ReadingRow& row, const StoredHit& hit, const PlacedRow& placed) {
    const auto agrees = [&](const HitForm& form) {
        return form.inspection == placed.inspection && form.spring == placed.spring &&
               (row.hit == 0 || row.hit == form.hit) && !form.differenceTo(row);
    };
    const bool isCurrent = !hit.isWithdrawn && agrees(hit.current);
    if (!isCurrent && !agrees(hit.original)) {
        return false;
    }
    ++m_plan.report.readingsKnown;
    m_plan.report.amendedOriginals += isCurrent ? 0 : 1;
    return true;
}

void EngineCheck::contradict(const ReadingRow& row, const StoredHit& hit) {
    const HitForm& form = hit.current;
    const TextPool& texts = m_input.texts;
    const auto degrees = [](std::int32_t milli) {
        return milli == ReadingRow::kNoTemperature
                   ? QString()
                   : QString::number(milli / 1000.0) + QStringLiteral(" °C");
    };
    const auto letter = [](bool flag) {
        return flag ? QStringLiteral("1") : QStringLiteral("0");
    };
    // A row that agrees in all columns differs from a withdrawn hit only in that it is there.
    const Column column = form.differenceTo(row).value_or(Column::Hit);
    QStringList saidAndStored;
    switch (column) {
    case Column::Retest:
        saidAndStored = {letter(row.retest), letter(form.retest)};
        break;
    case Column::Tester:
        saidAndStored = {texts.text(row.tester), texts.text(form.tester)};
        break;
    case Column::Inspector:
        saidAndStored = {texts.text(row.inspector), texts.text(form.inspector)};
        break;
    case Column::Note:
        saidAndStored = {texts.text(row.note), texts.text(form.note)};
        break;
    case Column::EngineTempC:
        saidAndStored = {degrees(row.milliCelsius), degrees(form.milliCelsius)};
        break;
    case Column::Cylinder:
    case Column::Valve:
        saidAndStored = {placeText(row.place()), placeText(form.place)};
        break;
    default:
        saidAndStored = {textWithUnit(row.value()), textWithUnit(form.value)};
        break;
    }
    m_faults.add(row, column, InputFault::ContradictsStored, saidAndStored);
}

void EngineCheck::add(const PlacedRow& placed, std::int32_t hit) {
    m_plan.readings.push_back({placed.row, sittingOf(placed), placed.spring, hit});
}

void EngineCheck::findMovedBaselines() {
    const auto momentOf = [&](std::size_t inspection) {
        return std::pair(m_plan.inspections[inspection].day,
                         m_plan.inspections[inspection].engineRaces);
    };
    std::map<std::size_t, DayAndRaces> before;
    for (const StoredHit& hit : m_hits.all()) {
        if (!hit.isWithdrawn && hit.current.inspection < m_stored.inspections.size()) {
            const DayAndRaces moment = momentOf(hit.current.inspection);
            const auto [known, isFirst] = before.emplace(hit.current.spring, moment);
            known->second = isFirst ? moment : std::min(known->second, moment);
        }
    }
    std::map<std::size_t, DayAndRaces> after = before;
    for (const ImportPlan::Reading& reading : m_plan.readings) {
        const auto spring = after.find(reading.spring);
        if (spring != after.end()) {
            const std::uint32_t inspection = m_plan.sittings[reading.sitting].inspection;
            spring->second = std::min(spring->second, momentOf(inspection));
        }
    }
    for (const auto& [spring, moment] : before) {
        if (after[spring] < moment && spring < m_plan.springs.size()) {
            m_plan.report.movedBaselines.push_back(
                {m_input.texts.text(m_plan.name), m_input.texts.text(m_plan.springs[spring].label),
                 QDate::fromJulianDay(moment.first), QDate::fromJulianDay(after[spring].first)});
        }
    }
}

} // namespace coilbook
