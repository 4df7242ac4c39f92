#include "ui/pages/bench_page.h"

#include "core/services/logbook_session.h"
#include "core/services/round_start.h"
#include "core/support/clock.h"
#include "core/support/text.h"
#include "core/wording/waiting_words.h"
#include "core/wording/wording.h"
#include "ui/pages/bench_round.h"
#include "ui/pages/bench_start_form.h"
#include "ui/preferences.h"
#include "ui/widgets/follow_font.h"

#include <QLabel>
#include <QScrollArea>
#include <QStackedLayout>
#include <QVBoxLayout>

namespace coilbook {

namespace {

bool sameFacts(const Sitting& sitting, const RoundFacts& facts) {
    return sitting.tester == facts.tester && sitting.inspector == normalised(facts.inspector) &&
           sitting.engineTemperature == facts.engineTemperature;
}

} // namespace

BenchPage::BenchPage(LogbookSession& session, Preferences& preferences, QWidget* parent)
    : QWidget(parent)
    , m_session(session)
    , m_preferences(preferences)
    , m_stack(new QStackedLayout)
    , m_empty(new QLabel)
    , m_form(new BenchStartForm)
    , m_round(new BenchRound(session, preferences)) {
    followFont(*m_empty, *this, 1.4);
    m_empty->setAlignment(Qt::AlignCenter);
    m_empty->setWordWrap(true);
    m_empty->setTextFormat(Qt::PlainText);
    // With large text on a small screen the form is taller than the window.
    auto* scroll = new QScrollArea;
    scroll->setWidget(m_form);
    scroll->setWidgetResizable(true);
    scroll->setFrameShape(QFrame::NoFrame);
    auto* frame = new QVBoxLayout(this); // a stacked layout has no margins of its own
    frame->addLayout(m_stack);
    m_stack->addWidget(m_empty);
    m_stack->addWidget(scroll);
    m_stack->addWidget(m_round);

    connect(m_form, &BenchStartForm::startAsked, this, &BenchPage::start);
    connect(m_form, &BenchStartForm::existingAsked, this, [this](const BenchStart& filled) {
        withTester(filled, [this](const BenchStart& ready) { goOn(ready); });
    });
    connect(m_form, &BenchStartForm::openAsked, this, &BenchPage::resumeOpen);
    connect(m_round, &BenchRound::finished, this, &BenchPage::showForm);
    connect(&m_session, &LogbookSession::logChanged, this, &BenchPage::onLogChanged);
    connect(&m_session, &LogbookSession::opened, this, &BenchPage::onLogChanged);
    connect(&m_session, &LogbookSession::closed, this, &BenchPage::onLogChanged);
    onLogChanged();
}

bool BenchPage::showsRound() const {
    return m_stack->currentIndex() == 2;
}

bool BenchPage::showsForm() const {
    return m_stack->currentIndex() == 1;
}

QString BenchPage::emptyText() const {
    return m_empty->text();
}

void BenchPage::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    takeFocus();
}

void BenchPage::onLogChanged() {
    const std::shared_ptr<const EngineLog> log = m_session.log();
    if (!log || !m_session.isOpen()) {
        m_round->end();
        m_engine = {};
        showEmpty(m_session.isOpen()
                      ? tr("Choose an engine above, or add one, to enter its readings here.")
                      : tr("Open a logbook, make a new one, or look at the demo, to enter "
                           "readings here."));
        return;
    }
    if (m_session.isReadOnly()) {
        m_round->end();
        m_engine = {};
        showEmpty(wording::readOnly(*m_session.readOnlyWhy()));
        return;
    }
    if (log->engine.id != m_engine) {
        loadEngine(*log);
    } else if (m_round->isActive()) {
        if (!m_round->refresh()) {
            m_round->end();
            showForm({});
        }
    } else {
        m_form->adopt(*log);
    }
}

void BenchPage::loadEngine(const EngineLog& log) {
    m_round->end();
    m_engine = log.engine.id;
    const std::optional<Draft> draft = m_session.draft();
    if (const Inspection* open = openInspection(log)) {
        begin(open->id, m_preferences.roundOrder(), {});
    } else if (draft && !draft->typed.isEmpty() && inspectionWith(log, draft->inspection)) {
        begin(draft->inspection, m_preferences.roundOrder(), draft->place);
    } else {
        showForm({});
    }
}

void BenchPage::showForm(const QString& sentence) {
    const std::shared_ptr<const EngineLog> log = m_session.log();
    if (!log) {
        return;
    }
    m_form->prefill(*log, SystemClock().today(), m_preferences.personName(),
                    m_preferences.roundOrder());
    m_form->tell(sentence);
    const Inspection* open = openInspection(*log);
    m_form->offerOpen(open == nullptr
                          ? QString()
                          : tr("Go on with the round of %1")
                                .arg(m_preferences.quantities().date(open->inspectedOn)));
    m_stack->setCurrentIndex(1);
    takeFocus();
}

void BenchPage::showEmpty(const QString& sentence) {
    m_empty->setText(sentence);
    m_stack->setCurrentIndex(0);
}

void BenchPage::start(const BenchStart& start) {
    const std::shared_ptr<const EngineLog> log = m_session.log();
    if (const Inspection* there = inspectionOn(*log, start.facts.on, start.facts.races)) {
        m_form->offerExisting(wording::sentence(
            Error{LogbookFault::InspectionExists,
                  {there->inspectedOn.toString(Qt::ISODate), QString::number(there->engineRaces)},
                  {},
                  0,
                  {},
                  0,
                  {}}));
        return;
    }
    withTester(start, [this](const BenchStart& ready) { startNew(ready); });
}

void BenchPage::withTester(const BenchStart& start, std::function<void(const BenchStart&)> then) {
    if (m_preferences.personName().isEmpty()) {
        m_preferences.setPersonName(normalised(start.facts.inspector));
    }
    m_preferences.setRoundOrder(start.order);
    if (start.newTester.isEmpty()) {
        then(start);
        return;
    }
    Tester tester;
    tester.id = TesterId::make();
    tester.name = start.newTester;
    BenchStart ready = start;
    ready.newTester.clear();
    ready.facts.tester = tester.id;
    applyThen(AddTester{tester}, [ready, then = std::move(then)] { then(ready); });
}

void BenchPage::startNew(const BenchStart& start) {
    const StartInspection change = startOf(m_engine, start.facts, !start.only);
    applyThen(change,
              [this, change, start] { begin(change.inspection.id, start.order, start.only); });
}

void BenchPage::goOn(const BenchStart& start) {
    const std::shared_ptr<const EngineLog> log = m_session.log();
    const Inspection* there = inspectionOn(*log, start.facts.on, start.facts.races);
    if (there == nullptr) {
        startNew(start);
        return;
    }
    Inspection opened = *there;
    opened.closed = false;
    const Then walk = [this, id = there->id, start] {
        begin(id, start.order, start.only);
    };
    const Then open = [this, opened, walk, quick = start.only.has_value(), closed = there->closed] {
        if (quick || !closed) {
            walk();
        } else {
            applyThen(
                AmendInspection{opened, {m_preferences.personName(), SystemClock().now(), {}}},
                walk);
        }
    };
    const Sitting* newest = newestSitting(*log, there->id);
    if (newest != nullptr && sameFacts(*newest, start.facts)) {
        open();
    } else {
        applyThen(sittingOf(there->id, start.facts), open);
    }
}

void BenchPage::resumeOpen(RoundOrder order) {
    m_preferences.setRoundOrder(order);
    const std::shared_ptr<const EngineLog> log = m_session.log();
    if (const Inspection* open = openInspection(*log)) {
        begin(open->id, order, {});
    }
}

void BenchPage::applyThen(const Change& change, const Then& then) {
    m_form->setSaving(true);
    m_session.apply(change, this, [this, then](const Result<void>& result) {
        m_form->setSaving(false);
        if (result) {
            then();
        } else {
            m_form->showError(result.error(), wording::sentence(result.error()));
        }
    });
}

void BenchPage::begin(const InspectionId& inspection, RoundOrder order, std::optional<Place> only) {
    m_round->begin(inspection, order, only);
    m_stack->setCurrentIndex(2);
    takeFocus();
}

void BenchPage::takeFocus() {
    if (!isVisible()) {
        return;
    }
    if (showsRound()) {
        m_round->takeFocus();
    } else if (showsForm()) {
        m_form->takeFocus();
    }
}

} // namespace coilbook
