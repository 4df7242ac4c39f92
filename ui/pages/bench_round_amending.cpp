// The part of the round that amends hits and ends the round; see bench_round.h.
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

#include <QStackedWidget>

namespace coilbook {

namespace {

using Kind = BenchMessage::Kind;

} // namespace

void BenchRound::amendNextHit() {
    if (m_saving) {
        return;
    }
    if (!stop().isTested()) {
        m_panel->message().say(Kind::Hint,
                               tr("%1 has no hit to correct yet.").arg(placeText(stop().place)));
        return;
    }
    // The newest first, then the ones before it.
    const std::size_t last = stop().hits.size() - 1;
    const bool goesOn = m_amending && m_amending->hit > 0;
    chooseHit(goesOn ? m_amending->hit - 1 : last);
}

void BenchRound::chooseHit(std::size_t hit) {
    if (m_saving || hit >= stop().hits.size()) {
        return;
    }
    const QString typedBefore = m_amending ? m_amending->typedBefore : m_panel->field().text();
    m_amending = Amending{hit, typedBefore};
    m_panel->field().setText(stop().hits[hit].value.text());
    m_panel->field().selectAll();
    m_panel->message().say(
        Kind::Hint, tr("Type what the hit should read, Enter, then the reason. The old value "
                       "stays in the logbook."));
    m_stack->setCurrentWidget(m_panel);
    showStop();
    takeFocus();
}

void BenchRound::leaveAmending() {
    if (m_saving) {
        return;
    }
    if (!m_amending) {
        if (m_only) {
            finish();
        }
        return;
    }
    m_panel->field().setText(std::exchange(m_amending, std::nullopt)->typedBefore);
    m_panel->message().say(Kind::Hint);
    showStop();
    takeFocus();
}

Authorship BenchRound::authorOf(const QString& why) const {
    const Sitting* sitting = newestSitting(*m_session.log(), m_round->inspection().id);
    const QString person = m_preferences.personName();
    const QString who = person.isEmpty() && sitting != nullptr ? sitting->inspector : person;
    return {who, SystemClock().now(), why};
}

void BenchRound::amend(bool withdraw) {
    if (m_saving || !m_amending) {
        return;
    }
    const std::shared_ptr<const EngineLog> log = m_session.log();
    const RoundHit& hit = stop().hits.at(m_amending->hit);
    const Authorship author = authorOf(m_panel->correction().reason());
    const QString text = m_panel->field().text().trimmed();
    const Result<AmendReading> change =
        withdraw ? withdrawalOf(*log, hit, author) : correctionOf(*log, hit, text, author);
    if (!change) {
        m_panel->message().say(Kind::Refused, wording::sentence(change.error()));
        const bool aboutReason =
            change.error().fault == decltype(Error::fault)(LogbookFault::WhyMissing);
        if (aboutReason) {
            m_panel->correction().focusReason();
        } else {
            takeFocus();
        }
        return;
    }
    const QString sentence = withdraw
                                 ? tr("Hit %1 of %2 is withdrawn.")
                                       .arg(QString::number(hit.number), placeText(stop().place))
                                 : tr("Hit %1 of %2: %3, corrected from %4.")
                                       .arg(QString::number(hit.number), placeText(stop().place),
                                            change->reading.value.text(), hit.value.text());
    setSaving(true);
    m_panel->message().say(Kind::Saving);
    m_session.apply(*change, this,
                    [this, sentence](const Result<void>& result) { onAmended(result, sentence); });
}

void BenchRound::onAmended(const Result<void>& result, const QString& sentence) {
    if (!m_round) {
        return;
    }
    setSaving(false);
    if (!result) {
        m_panel->message().say(Kind::NotSaved, wording::sentence(result.error()));
        return;
    }
    leaveAmending();
    m_panel->message().say(m_session.waiting().isEmpty() ? Kind::Saved : Kind::Waiting, sentence);
}

// Ending

void BenchRound::showSummary() {
    m_panel->message().say(Kind::Hint);
    m_stack->setCurrentWidget(m_summary);
    m_retests.clear();
    m_review.reset();
    updateSummary();
    m_summary->hint();
    showStop();
    saveDraft();
    takeFocus();
    const Tester* tester = testerInUse();
    m_live.askForReview(m_session.log(), tester ? std::optional(tester->id) : std::nullopt);
}

void BenchRound::updateSummary() {
    if (!m_round || !showsSummary()) {
        return;
    }
    const std::shared_ptr<const Assessment> assessment = m_session.assessment();
    m_summary->showRound(
        *m_round,
        closingOf(*m_round, rules().limit, assessment.get(), m_review ? &*m_review : nullptr),
        rules(), m_preferences.quantities());
}

void BenchRound::finish() {
    if (m_saving) {
        return;
    }
    if (!m_only) {
        m_typed[stop().place] = m_panel->field().text();
        showSummary();
        return;
    }
    QString sentence;
    if (stop().isTested()) {
        sentence = m_session.waiting().isEmpty()
                       ? tr("The quick test of %1 is in the logbook.")
                       : tr("The quick test of %1 waits on this computer; "
                            "it is not in the logbook yet.");
        sentence = sentence.arg(wording::place(stop().place));
    }
    m_draftTimer.stop();
    m_draft.reset();
    m_session.clearDraft();
    end();
    Q_EMIT finished(sentence);
}

void BenchRound::closeRound() {
    if (m_saving) {
        return;
    }
    Inspection closed = m_round->inspection();
    closed.closed = true;
    const QString sentence = tr("The round of %1 is closed: %2 of %3 springs tested.")
                                 .arg(m_preferences.quantities().date(closed.inspectedOn))
                                 .arg(m_round->tested())
                                 .arg(m_round->stops().size());
    setSaving(true);
    m_session.apply(
        AmendInspection{closed, authorOf({})}, this, [this, sentence](const Result<void>& result) {
            if (!m_round) {
                return;
            }
            setSaving(false);
            if (!result) {
                m_summary->message().say(Kind::NotSaved, wording::sentence(result.error()));
                return;
            }
            m_draftTimer.stop();
            m_draft.reset();
            m_session.clearDraft();
            end();
            Q_EMIT finished(sentence);
        });
}

void BenchRound::leave() {
    if (m_saving) {
        return;
    }
    saveDraft();
    end();
    Q_EMIT finished(tr("The round is left open; go on with it any time."));
}

} // namespace coilbook
