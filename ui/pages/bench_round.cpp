#include "ui/pages/bench_round.h"

#include "core/services/logbook_session.h"
#include "core/services/round_start.h"
#include "core/wording/wording.h"
#include "ui/pages/bench_cautions.h"
#include "ui/pages/bench_correction_bar.h"
#include "ui/pages/bench_message.h"
#include "ui/pages/bench_reading_panel.h"
#include "ui/pages/bench_round_plan.h"
#include "ui/pages/bench_summary.h"
#include "ui/pages/bench_words.h"
#include "ui/preferences.h"
#include "ui/widgets/reading_field.h"

#include <QHBoxLayout>
#include <QLineEdit>
#include <QStackedWidget>

#include <algorithm>
#include <utility>

namespace coilbook {

namespace {

/// A half-typed reading is on the disk this long after the last key.
constexpr int kDraftDelayMilliseconds = 100;

/// In a draft before what is typed: it is meant as a re-test.
const QChar kRetestMark = QLatin1Char('*');

using Kind = BenchMessage::Kind;

} // namespace

BenchRound::BenchRound(LogbookSession& session, Preferences& preferences, QWidget* parent)
    : QWidget(parent)
    , m_session(session)
    , m_preferences(preferences)
    , m_stack(new QStackedWidget)
    , m_cautions(new BenchCautions)
    , m_panel(new BenchReadingPanel)
    , m_summary(new BenchSummary)
    , m_plan(new BenchRoundPlan) {
    m_stack->addWidget(m_panel);
    m_stack->addWidget(m_summary);
    m_stack->addWidget(m_cautions);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(fontMetrics().height());
    row->addWidget(m_stack, 5);
    row->addWidget(m_plan, 3);
    m_draftTimer.setSingleShot(true);
    m_draftTimer.setInterval(kDraftDelayMilliseconds);
    connect(&m_draftTimer, &QTimer::timeout, this, &BenchRound::saveDraft);
    connect(&m_live, &LiveReading::answered, this, &BenchRound::tellTrend);
    connect(&m_live, &LiveReading::reviewed, this, [this](const RoundReview& review) {
        m_review = review;
        updateSummary();
    });
    connect(&m_session, &LogbookSession::assessmentChanged, this, &BenchRound::updateSummary);
    connectPanel();
}

BenchRound::~BenchRound() {
    if (m_draftTimer.isActive()) {
        saveDraft();
    }
}

void BenchRound::connectPanel() {
    const ReadingField* field = &m_panel->field();
    connect(field, &ReadingField::committed, this, [this] { commit(m_only.has_value()); });
    connect(field, &ReadingField::furtherCommitted, this, [this] { commit(true); });
    connect(field, &ReadingField::skipped, this, &BenchRound::skip);
    connect(field, &ReadingField::retestToggled, this, &BenchRound::toggleRetest);
    connect(field, &ReadingField::correctionAsked, this, &BenchRound::amendNextHit);
    connect(field, &ReadingField::steppedBack, this, [this] { step(-1); });
    connect(field, &ReadingField::steppedOn, this, [this] { step(+1); });
    connect(field, &ReadingField::cancelled, this, &BenchRound::leaveAmending);
    connect(field, &ReadingField::textEdited, this, &BenchRound::onTyped);
    connect(m_panel, &BenchReadingPanel::hitChosen, this, &BenchRound::chooseHit);
    connect(m_panel, &BenchReadingPanel::finishAsked, this, &BenchRound::finish);
    connect(m_panel, &BenchReadingPanel::leaveAsked, this, &BenchRound::leave);
    const BenchCorrectionBar* bar = &m_panel->correction();
    connect(bar, &BenchCorrectionBar::correctionGiven, this, [this] { amend(false); });
    connect(bar, &BenchCorrectionBar::withdrawalGiven, this, [this] { amend(true); });
    connect(bar, &BenchCorrectionBar::cancelled, this, &BenchRound::leaveAmending);
    connect(m_summary, &BenchSummary::closeAsked, this, &BenchRound::closeRound);
    connect(m_summary, &BenchSummary::backAsked, this, [this] {
        m_retests.clear();
        goTo(m_index);
    });
    connect(m_summary, &BenchSummary::retestsAsked, this, &BenchRound::startRetests);
    connect(m_cautions, &BenchCautions::heeded, this, [this] {
        m_stack->setCurrentWidget(m_panel);
        takeFocus();
    });
    connect(m_plan, &EnginePlan::selectedByUser, this, [this](const Place& place) {
        const std::optional<std::size_t> index = m_round ? m_round->indexOf(place) : std::nullopt;
        if (index && !m_saving && !showsCautions()) {
            goTo(*index);
        } else if (m_round) {
            m_plan->setSelected(stop().place);
        }
    });
    connect(&m_preferences, &Preferences::changed, this, [this] { refresh(); });
}

void BenchRound::begin(const InspectionId& inspection, RoundOrder order,
                       std::optional<Place> only) {
    m_order = order;
    m_only = only;
    m_typed.clear();
    m_pending.reset();
    m_awaited.reset();
    m_saving = false;
    m_figures.reset();
    m_check.reset();
    m_review.reset();
    m_retests.clear();
    m_round = Round(*m_session.log(), inspection, m_order, m_only);
    const std::optional<Draft> kept = m_draft ? m_draft : m_session.draft();
    const bool fits = kept && kept->inspection == inspection;
    const std::optional<std::size_t> left = fits ? m_round->indexOf(kept->place) : std::nullopt;
    const bool wasRetest = left && kept->typed.startsWith(kRetestMark);
    if (left && wasSaved(*kept)) {
        enter(m_round->untestedAfter(*left).value_or(*left));
        return;
    }
    if (left) {
        m_typed[kept->place] = wasRetest ? kept->typed.mid(1) : kept->typed;
    }
    m_panel->setQuickTest(m_only.has_value());
    enter(left ? *left : m_round->firstUntested().value_or(0));
    if (wasRetest) {
        setRetest(true);
    }
    if (!left && !m_only && !m_round->firstUntested()) {
        showSummary();
    } else if (!left && !m_only && m_round->tested() == 0) {
        m_stack->setCurrentWidget(m_cautions);
        takeFocus();
    }
}

/// A process that ends between the saving of a reading and that of the next draft leaves the
/// reading in the draft too: it must not be entered twice.
bool BenchRound::wasSaved(const Draft& draft) const {
    const std::vector<RoundHit>& hits = m_round->stops()[*m_round->indexOf(draft.place)].hits;
    if (hits.empty() || m_round->lastRead() != draft.place) {
        return false;
    }
    const QString typed = QString(draft.typed).remove(kRetestMark);
    const std::optional<TypedForce> value =
        TypedForce::parse(typed.trimmed(), hits.back().value.unit());
    return value == hits.back().value;
}

bool BenchRound::refresh() {
    const std::shared_ptr<const EngineLog> log = m_session.log();
    if (!m_round || !log || !inspectionWith(*log, m_round->inspection().id)) {
        return false;
    }
    const Place here = stop().place;
    m_round = Round(*log, m_round->inspection().id, m_order, m_only);
    m_index = m_round->indexOf(here).value_or(0);
    if (m_amending && m_amending->hit >= stop().hits.size()) {
        m_panel->field().setText(std::exchange(m_amending, std::nullopt)->typedBefore);
    }
    if (awaitedIsThere()) {
        finishRecording();
    } else {
        updateSummary();
        showStop();
    }
    return true;
}

void BenchRound::end() {
    if (m_round && m_draftTimer.isActive()) {
        saveDraft();
    }
    m_draftTimer.stop();
    m_panel->field().releaseAndForget();
    m_live.forget();
    m_panel->tellTrend({});
    m_round.reset();
    m_amending.reset();
    m_pending.reset();
    m_awaited.reset();
}

EngineId BenchRound::engine() const {
    return m_round ? m_round->inspection().engine : EngineId();
}

bool BenchRound::showsSummary() const {
    return m_stack->currentWidget() == m_summary;
}

bool BenchRound::showsCautions() const {
    return m_stack->currentWidget() == m_cautions;
}

void BenchRound::takeFocus() {
    if (showsSummary()) {
        m_summary->takeFocus();
    } else if (showsCautions()) {
        m_cautions->takeFocus();
    } else {
        m_panel->field().setFocus(Qt::OtherFocusReason);
    }
}

void BenchRound::hideEvent(QHideEvent* event) {
    if (m_round && m_draftTimer.isActive()) {
        saveDraft();
    }
    QWidget::hideEvent(event);
}

const JudgingRules& BenchRound::rules() const {
    return m_session.log()->engine.rules;
}

// Walking

void BenchRound::goTo(std::size_t index) {
    if (m_amending) {
        leaveAmending();
    }
    if (!showsSummary()) {
        m_typed[stop().place] = m_panel->field().text();
    }
    enter(index);
}

void BenchRound::enter(std::size_t index) {
    m_index = index;
    const auto typed = m_typed.find(stop().place);
    m_panel->field().setText(typed == m_typed.end() ? QString() : typed->second);
    m_panel->springLabel().clear();
    m_panel->message().say(Kind::Hint);
    m_retest = stop().hasRetest();
    m_sureOf.clear();
    m_figures.reset();
    m_panel->tellTrend({}); // that of the spring before
    m_stack->setCurrentWidget(m_panel);
    showStop();
    takeFocus();
    saveDraft();
}

void BenchRound::step(int by) {
    if (m_saving || m_amending) {
        return;
    }
    if (by < 0 && m_index > 0) {
        goTo(m_index - 1);
    } else if (by > 0 && m_index + 1 < m_round->stops().size()) {
        goTo(m_index + 1);
    }
}

void BenchRound::skip() {
    if (m_saving || m_amending || m_only) {
        return;
    }
    const QString skipped = placeText(stop().place);
    const bool tested = stop().isTested();
    if (!m_retests.empty()) {
        m_typed[stop().place] = m_panel->field().text();
        std::erase(m_retests, stop().place);
        takeNextRetest();
        return;
    }
    const std::optional<std::size_t> next = m_round->untestedAfter(m_index);
    if (!next) {
        m_typed[stop().place] = m_panel->field().text();
        showSummary();
        return;
    }
    goTo(*next);
    if (!tested) {
        m_panel->message().say(Kind::Hint, tr("%1 skipped; it stays to do.").arg(skipped));
    }
}

void BenchRound::showStop() {
    const Quantities quantities = m_preferences.quantities();
    const QString progress =
        m_only ? tr("Quick test of one spring")
               : tr("%1 of %2 tested").arg(m_round->tested()).arg(m_round->stops().size());
    m_panel->showStop(stop(), progress, quantities);
    m_panel->tellCrank(crankWords(crankStepTo(m_index, *m_round, m_session.log()->engine.layout)));
    m_panel->setUnit(m_amending ? stop().hits[m_amending->hit].value.unit()
                                : m_preferences.forceUnit());
    m_panel->setRetest(m_retest);
    m_panel->showHits(stop(), m_amending ? std::optional(m_amending->hit) : std::nullopt);
    m_plan->showRound(*m_round, m_session.log()->engine.layout, rules().limit, quantities);
    m_plan->setSelected(stop().place);
    judge();
}

void BenchRound::toggleRetest() {
    if (m_saving || m_amending) {
        return;
    }
    if (!stop().isTested()) {
        m_panel->setRetest(false);
        m_panel->message().say(
            Kind::Hint,
            tr("A re-test follows a first hit; %1 has none yet.").arg(placeText(stop().place)));
        return;
    }
    setRetest(!m_retest);
    m_draftTimer.start();
    m_panel->message().say(
        Kind::Hint,
        m_retest ? tr("Re-test: the next hits count, the first ones are crossed out.") : QString());
}

void BenchRound::setRetest(bool retest) {
    m_retest = retest;
    m_panel->setRetest(retest);
    judge();
}

void BenchRound::onTyped() {
    m_sureOf.clear();
    if (!m_saving) {
        m_panel->message().say(Kind::Hint);
        warnOfRound();
    }
    judge();
    if (!m_amending) {
        m_draftTimer.start();
    }
}

void BenchRound::saveDraft() {
    m_draftTimer.stop();
    if (!m_round || !m_session.isOpen() || m_session.isReadOnly()) {
        return;
    }
    QString typed = m_amending ? m_amending->typedBefore : m_panel->field().text();
    if (m_retest && !stop().hasRetest()) {
        typed.prepend(kRetestMark);
    }
    const Draft draft{m_round->inspection().engine, m_round->inspection().id, stop().place, typed};
    if (m_draft != draft) {
        m_draft = draft;
        m_session.saveDraft(draft);
    }
}

} // namespace coilbook
