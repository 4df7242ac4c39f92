#include "core/services/swap.h"

#include "core/domain/history.h"
#include "core/domain/shelf.h"
#include "core/services/round_start.h"
#include "core/services/round_verdict.h"
#include "core/support/text.h"

#include <algorithm>
#include <set>

namespace coilbook {

namespace {

const QDate kFirstDay(1950, 1, 1);

QString isoDate(const QDate& date) {
    return date.toString(Qt::ISODate);
}

const Spring* springWith(const EngineLog& log, const SpringId& id) {
    const auto found = std::find_if(log.springs.begin(), log.springs.end(),
                                    [&](const Spring& spring) { return spring.id == id; });
    return found == log.springs.end() ? nullptr : &*found;
}

const Spring* springLabelled(const EngineLog& log, const QString& label) {
    const auto found = std::find_if(log.springs.begin(), log.springs.end(),
                                    [&](const Spring& spring) { return spring.label == label; });
    return found == log.springs.end() ? nullptr : &*found;
}

/// `S-27` gives `S-`, 27 and two digits; a label without a number at its end counts from 1.
struct NumberedLabel {
    QString stem;
    qlonglong number = 0;
    int digits = 1;
};

NumberedLabel numbered(const QString& label) {
    qsizetype start = label.size();
    while (start > 0 && label.size() - start < 15 && label.at(start - 1) >= QLatin1Char('0') &&
           label.at(start - 1) <= QLatin1Char('9')) {
        --start;
    }
    if (start == label.size()) {
        return {label + QLatin1Char('-'), 1, 1};
    }
    return {label.left(start), label.mid(start).toLongLong(),
            static_cast<int>(label.size() - start)};
}

/// The outgoing label counted on, past every number in use with the same beginning.
QString nextLabel(const EngineLog& log, const QString& outgoing) {
    const NumberedLabel pattern = numbered(outgoing);
    qlonglong highest = pattern.number;
    for (const Spring& spring : log.springs) {
        const NumberedLabel other = numbered(spring.label);
        if (caseKey(other.stem) == caseKey(pattern.stem)) {
            highest = std::max(highest, other.number);
        }
    }
    return pattern.stem +
           QStringLiteral("%1").arg(highest + 1, pattern.digits, 10, QLatin1Char('0'));
}

/// Checks one entry field by field and keeps what is wrong.
class SwapCheck {
public:
    SwapCheck(const EngineLog& log, const EngineHistory& history, const SwapEntry& entry,
              const QDate& today)
        : m_log(log)
        , m_history(history)
        , m_entry(entry)
        , m_label(normalised(entry.label))
        , m_today(today) {}

    std::vector<SwapProblem> problems() {
        checkPlace();
        checkLabel();
        checkDate();
        checkRaces();
        checkBaseline();
        return std::move(m_problems);
    }

private:
    template <class Fault>
    void note(SwapField field, Fault fault, const QStringList& arguments) {
        m_problems.push_back({field, Error{fault, arguments, {}, 0, {}, 0, {}}});
    }

    void checkPlace() {
        if (!m_log.engine.layout.has(m_entry.place)) {
            note(SwapField::Place, LogbookFault::NoSuchPlace, {placeText(m_entry.place)});
        }
    }

    void checkLabel() {
        if (m_label.isEmpty()) {
            note(SwapField::Label, LogbookFault::EmptyName, {QStringLiteral("spring")});
            return;
        }
        for (const HistoryLife& life : m_history.lives) {
            if (life.fitted && life.label == m_label) {
                note(SwapField::Label, LogbookFault::SpringFitted,
                     {m_label, placeText(life.place)});
                return;
            }
        }
        for (const ShelvedSpring& shelved : shelfOf(m_log, m_history)) {
            if (shelved.where == Storage::Scrap && shelved.spring.label == m_label) {
                note(SwapField::Label, LogbookFault::SpringScrapped, {m_label});
                return;
            }
        }
        for (const Spring& spring : m_log.springs) {
            if (spring.label != m_label && caseKey(spring.label) == caseKey(m_label)) {
                note(SwapField::Label, LogbookFault::NameDiffersInCaseOnly,
                     {m_label, spring.label});
                return;
            }
        }
    }

    void checkDate() {
        if (m_entry.on.isNull() || m_entry.on < kFirstDay) {
            note(SwapField::Date, LogbookFault::DateTooEarly, {isoDate(m_entry.on)});
            return;
        }
        if (m_entry.on > m_today.addDays(1)) {
            note(SwapField::Date, LogbookFault::DateInFuture, {isoDate(m_entry.on)});
            return;
        }
        for (const HistoryLife& life : m_history.lives) {
            const bool outgoing = life.fitted && life.place == m_entry.place;
            if (outgoing && !life.cells.empty()) {
                checkAfterReading(life);
            }
        }
    }

    /// A spring that was read at a place later cannot have been taken out of it before.
    void checkAfterReading(const HistoryLife& outgoing) {
        const HistoryInspection& newest = m_history.inspections[outgoing.cells.back().inspection];
        if (m_entry.on < newest.on || (m_entry.on == newest.on && m_entry.races < newest.races)) {
            note(SwapField::Date, LogbookFault::SwapBeforeReading,
                 {isoDate(m_entry.on), outgoing.label, isoDate(newest.on)});
        }
    }

    void checkRaces() {
        for (const Inspection& inspection : m_log.inspections) {
            const bool fewerLater =
                inspection.inspectedOn < m_entry.on && inspection.engineRaces > m_entry.races;
            const bool moreEarlier =
                inspection.inspectedOn > m_entry.on && inspection.engineRaces < m_entry.races;
            if (fewerLater || moreEarlier) {
                note(SwapField::Races, LogbookFault::RacesGoBack,
                     {QString::number(m_entry.races), isoDate(inspection.inspectedOn),
                      QString::number(inspection.engineRaces)});
                return;
            }
        }
        for (const Race& race : m_log.races) {
            if (race.number <= m_entry.races && race.racedOn > m_entry.on) {
                note(SwapField::Races, LogbookFault::RaceAfterInspection,
                     {QString::number(race.number), isoDate(race.racedOn), isoDate(m_entry.on)});
                return;
            }
        }
    }

    void checkBaseline() {
        for (const QString& hit : m_entry.hits) {
            if (hit.trimmed().isEmpty()) {
                continue;
            }
            if (const Result<TypedForce> value = readingFromText(hit.trimmed(), m_entry.unit);
                !value) {
                m_problems.push_back({SwapField::Baseline, value.error()});
                return;
            }
        }
    }

    const EngineLog& m_log;
    const EngineHistory& m_history;
    const SwapEntry& m_entry;
    QString m_label;
    QDate m_today;
    std::vector<SwapProblem> m_problems;
};

/// Puts the sitting in which the baseline was taken into the change; returns its id.
SittingId addSitting(FitSpring& change, const EngineLog& log, const SwapEntry& entry) {
    const RoundFacts facts{entry.on, entry.races, entry.tester, entry.inspector, std::nullopt};
    const Inspection* inspection = inspectionOn(log, entry.on, entry.races);
    if (inspection == nullptr) {
        const StartInspection start = startOf(log.engine.id, facts, false);
        change.newInspection = start.inspection;
        change.newSitting = start.sitting;
        return start.sitting.id;
    }
    const auto same =
        std::find_if(log.sittings.begin(), log.sittings.end(), [&](const Sitting& sitting) {
            return sitting.inspection == inspection->id && sitting.tester == entry.tester &&
                   sitting.inspector == normalised(entry.inspector);
        });
    if (same != log.sittings.end()) {
        return same->id;
    }
    change.newSitting = sittingOf(inspection->id, facts).sitting;
    return change.newSitting->id;
}

/// The highest number of a hit of this spring in the inspection of the swap; 0: none yet.
int hitsBefore(const EngineLog& log, const SwapEntry& entry, const SpringId& spring) {
    const Inspection* inspection = inspectionOn(log, entry.on, entry.races);
    if (inspection == nullptr) {
        return 0;
    }
    std::set<SittingId> sittings;
    for (const Sitting& sitting : log.sittings) {
        if (sitting.inspection == inspection->id) {
            sittings.insert(sitting.id);
        }
    }
    int highest = 0;
    for (const Reading& reading : log.readings) {
        if (reading.spring == spring && sittings.contains(reading.sitting)) {
            highest = std::max(highest, reading.hit);
        }
    }
    return highest;
}

void addBaseline(FitSpring& change, const EngineLog& log, const SwapEntry& entry,
                 const Moment& now) {
    int hit = hitsBefore(log, entry, change.fitting.spring);
    SittingId sitting;
    for (const QString& text : entry.hits) {
        const Result<TypedForce> value = readingFromText(text.trimmed(), entry.unit);
        if (!value) { // blank: everything else has been checked
            continue;
        }
        if (sitting.isNull()) {
            sitting = addSitting(change, log, entry);
        }
        Reading reading;
        reading.id = ReadingId::make();
        reading.sitting = sitting;
        reading.spring = change.fitting.spring;
        reading.place = entry.place;
        reading.hit = ++hit;
        reading.value = *value;
        reading.author.at = now;
        change.baseline.push_back(std::move(reading));
    }
}

/// Where the spring goes that comes out.
Shelving outgoingOf(const EngineLog& log, const HistoryLife& life, const SwapEntry& entry) {
    Shelving outgoing;
    outgoing.id = ShelvingId::make();
    outgoing.engine = log.engine.id;
    outgoing.spring = life.spring;
    outgoing.to = entry.outgoingTo;
    outgoing.shelvedOn = entry.on;
    outgoing.reason = normalised(entry.outgoingReason);
    return outgoing;
}

} // namespace

SwapPrefill swapPrefill(const EngineLog& log, const Place& place) {
    SwapPrefill prefill;
    const EngineHistory history = historyOf(log);
    for (const HistoryLife& life : history.lives) {
        const Spring* spring =
            life.fitted && life.place == place ? springWith(log, life.spring) : nullptr;
        if (spring != nullptr) {
            prefill.outgoing = *spring;
        }
    }
    prefill.label = nextLabel(log, prefill.outgoing ? prefill.outgoing->label : placeText(place));
    if (!log.inspections.empty()) {
        prefill.on = log.inspections.back().inspectedOn;
        prefill.races = log.inspections.back().engineRaces;
    }
    prefill.tester = roundPrefill(log).tester;
    return prefill;
}

std::vector<Spring> springsOnTheShelf(const EngineLog& log) {
    std::vector<Spring> shelf;
    for (const ShelvedSpring& spring : shelfOf(log, historyOf(log))) {
        if (spring.where == Storage::Shelf) {
            shelf.push_back(spring.spring);
        }
    }
    return shelf;
}

tl::expected<FitSpring, std::vector<SwapProblem>>
swapOf(const EngineLog& log, const SwapEntry& entry, const Clock& clock) {
    const EngineHistory history = historyOf(log);
    std::vector<SwapProblem> problems = SwapCheck(log, history, entry, clock.today()).problems();
    if (!problems.empty()) {
        return tl::unexpected(std::move(problems));
    }
    FitSpring change;
    const QString label = normalised(entry.label);
    const Spring* known = springLabelled(log, label);
    if (known == nullptr) {
        change.newSpring =
            Spring{SpringId::make(), label, normalised(entry.part), normalised(entry.batch), {}};
    }
    change.fitting = {FittingId::make(),
                      log.engine.id,
                      known != nullptr ? known->id : change.newSpring->id,
                      entry.place,
                      entry.on,
                      entry.races,
                      normalised(entry.reason),
                      false};
    for (const HistoryLife& life : history.lives) {
        if (life.fitted && life.place == entry.place) {
            change.outgoing = outgoingOf(log, life, entry);
        }
    }
    addBaseline(change, log, entry, clock.now());
    return change;
}

} // namespace coilbook
