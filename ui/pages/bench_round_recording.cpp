// The part of the round that puts hits on the disk; see bench_round.h.
#include "core/services/logbook_session.h"
#include "core/services/round_start.h"
#include "core/wording/wording.h"
#include "ui/pages/bench_correction_bar.h"
#include "ui/pages/bench_message.h"
#include "ui/pages/bench_reading_panel.h"
#include "ui/pages/bench_round.h"
#include "ui/pages/bench_summary.h"
#include "ui/preferences.h"
#include "ui/widgets/reading_field.h"

#include <QLineEdit>

#include <algorithm>
#include <utility>

namespace coilbook {

namespace {

using Kind = BenchMessage::Kind;

bool holds(const EngineLog& log, const ReadingId& reading) {
    return std::any_of(log.readings.rbegin(), log.readings.rend(),
                       [&](const Reading& each) { return each.id == reading; });
}

} // namespace

bool BenchRound::awaitedIsThere() const {
    return m_awaited && holds(*m_session.log(), *m_awaited);
}

void BenchRound::commit(bool stays) {
    if (m_saving) {
        return;
    }
    if (m_amending) {
        m_panel->correction().focusReason();
        return;
    }
    const QString text = m_panel->field().text().trimmed();
    if (text.isEmpty()) {
        if (stop().isTested() && !stays) {
            skip();
        } else {
            m_panel->message().say(
                Kind::Hint, tr("Type the reading of %1 first.").arg(wording::place(stop().place)));
        }
        return;
    }
    const RoundEntry entry{text, m_preferences.forceUnit(), m_retest,
                           m_panel->springLabel().text()};
    const bool again = m_pending && m_pending->place == stop().place && m_pending->entry == entry;
    if (!again) {
        const std::shared_ptr<const EngineLog> log = m_session.log();
        const Sitting* sitting = newestSitting(*log, m_round->inspection().id);
        Result<RecordReadings> record =
            recordOf(*m_round, m_index, entry, sitting != nullptr ? sitting->id : SittingId(),
                     SystemClock().now());
        if (!record) {
            m_panel->message().say(Kind::Refused, wording::sentence(record.error()));
            return;
        }
        const TypedForce value = record->readings.front().value;
        if (!isSureOf(text, value, stays)) {
            return;
        }
        m_pending = Pending{stop().place,
                            entry,
                            *std::move(record),
                            stays,
                            judgementOf(value.force(), expected()),
                            spreadWith(value).isTooWide()};
    }
    m_pending->stays = stays;
    setSaving(true);
    m_panel->message().say(Kind::Saving);
    m_session.apply(m_pending->record, this,
                    [this](const Result<void>& result) { onRecorded(result); });
}

void BenchRound::onRecorded(const Result<void>& result) {
    if (!m_round || !m_pending) {
        return;
    }
    if (!result) {
        setSaving(false);
        m_panel->message().say(Kind::NotSaved, wording::sentence(result.error()) +
                                                   QLatin1Char(' ') +
                                                   tr("It stays typed; Enter tries again."));
        sound(false);
        return;
    }
    m_awaited = m_pending->record.readings.front().id;
    if (awaitedIsThere()) {
        refresh();
    }
}

void BenchRound::finishRecording() {
    const bool waits = m_session.waiting().ids.contains(*m_awaited);
    const Kind kind = waits ? Kind::Waiting : Kind::Saved;
    m_awaited.reset();
    const Pending saved = *std::exchange(m_pending, std::nullopt);
    QString sentence = tr("%1: %2 %3", "place, reading, unit")
                           .arg(placeText(saved.place), saved.record.readings.front().value.text(),
                                Quantities(saved.entry.unit).unitName());
    if (waits) {
        sentence += tr("; it is kept on this computer and not in the logbook yet.");
    }
    sound(!waits && adviceOn(saved).isEmpty());
    m_saving = false;
    m_panel->field().clear();
    m_typed.erase(saved.place);
    m_sureOf.clear();
    const std::optional<std::size_t> next = m_round->untestedAfter(m_index);
    if (saved.stays) {
        m_panel->message().say(kind, sentence);
        m_figures.reset();
        showStop();
        saveDraft();
    } else if (!m_retests.empty()) {
        std::erase(m_retests, saved.place);
        takeNextRetest();
        BenchMessage& there = showsSummary() ? m_summary->message() : m_panel->message();
        there.say(kind, sentence);
    } else if (next) {
        goTo(*next);
        m_panel->message().say(kind, sentence + adviceOn(saved));
    } else {
        m_panel->field().releaseAndForget();
        showSummary();
        m_summary->message().say(kind, sentence);
        return;
    }
    m_panel->field().release();
}

void BenchRound::setSaving(bool saving) {
    m_saving = saving;
    if (saving) {
        m_panel->field().hold();
    } else {
        m_panel->field().releaseAndForget();
    }
}

} // namespace coilbook
