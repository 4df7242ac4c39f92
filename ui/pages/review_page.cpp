#include "ui/pages/review_page.h"

#include "core/services/logbook_session.h"
#include "core/wording/wording.h"
#include "ui/pages/lives_view.h"
#include "ui/pages/plan_view.h"
#include "ui/pages/review_board.h"
#include "ui/pages/shelf_view.h"
#include "ui/preferences.h"
#include "ui/widgets/message_strip.h"

#include <QLabel>
#include <QPushButton>
#include <QShortcut>
#include <QStackedLayout>
#include <QTabBar>
#include <QVBoxLayout>

#include <algorithm>

namespace coilbook {

namespace {

/// How the dialog asks about a decision.
struct DecisionWords {
    QString title;
    QString advice;
    QString action;
};

DecisionWords decisionWords(ReadingJudgement judgement) {
    switch (judgement) {
    case ReadingJudgement::SetAside:
        return {ReviewPage::tr("Set a reading aside"),
                ReviewPage::tr("The spring's hits of this inspection are left out of the trend. "
                               "They stay in the logbook and in the measured loss."),
                ReviewPage::tr("Set aside")};
    case ReadingJudgement::Kept:
        return {ReviewPage::tr("Keep a reading"),
                ReviewPage::tr("The spring's hits of this inspection count as they stand, whatever "
                               "the trend makes of them."),
                ReviewPage::tr("Keep")};
    case ReadingJudgement::DropConfirmed:
        return {
            ReviewPage::tr("Confirm a drop"),
            ReviewPage::tr("The spring was tested again and did lose that much at once. Take it "
                           "out and look for a crack."),
            ReviewPage::tr("Confirm the drop")};
    case ReadingJudgement::DropDenied:
        return {ReviewPage::tr("Deny a drop"),
                ReviewPage::tr("The spring was tested again and did not drop: the low reading is "
                               "left out of the trend and stays in the logbook."),
                ReviewPage::tr("Deny the drop")};
    case ReadingJudgement::LeftToModel:
        break;
    }
    return {ReviewPage::tr("Take a decision back"),
            ReviewPage::tr("From now on the trend decides again about the spring's hits of this "
                           "inspection."),
            ReviewPage::tr("Take it back")};
}

} // namespace

ReviewPage::ReviewPage(LogbookSession& session, Preferences& preferences, QWidget* parent)
    : QWidget(parent)
    , m_session(session)
    , m_preferences(preferences)
    , m_stack(new QStackedLayout)
    , m_empty(new QLabel)
    , m_toBench(new QPushButton(tr("Go to the &Bench")))
    , m_message(new MessageStrip(this))
    , m_views(new QTabBar)
    , m_board(new ReviewBoard)
    , m_plan(new PlanView(session, preferences))
    , m_shelf(new ShelfView(session, preferences))
    , m_lives(new LivesView(session, preferences)) {
    m_empty->setTextFormat(Qt::PlainText);
    m_empty->setWordWrap(true);
    m_empty->setAlignment(Qt::AlignHCenter);
    auto* empty = new QWidget;
    auto* middle = new QVBoxLayout(empty);
    middle->addStretch();
    middle->addWidget(m_empty);
    middle->addWidget(m_toBench, 0, Qt::AlignHCenter);
    middle->addStretch();
    m_stack->addWidget(empty);
    for (QWidget* view : std::initializer_list<QWidget*>{m_board, m_plan, m_shelf, m_lives}) {
        m_stack->addWidget(view);
    }
    auto* page = new QVBoxLayout(this);
    page->setContentsMargins(0, 0, 0, 0);
    page->addWidget(m_message);
    page->addWidget(makeViews());
    page->addLayout(m_stack, 1);

    connect(m_toBench, &QPushButton::clicked, this, &ReviewPage::benchWanted);
    connect(m_board, &ReviewBoard::swapWanted, this, &ReviewPage::onSwapWanted);
    connect(m_board, &ReviewBoard::decided, this, &ReviewPage::onDecided);
    connect(m_plan, &PlanView::swapWanted, this, &ReviewPage::onSwapWanted);
    connect(m_plan, &PlanView::printWanted, this, &ReviewPage::printPlanWanted);
    connect(m_plan, &PlanView::calendarWanted, this,
            [this] { showRecords(RecordsDialog::Page::Calendar); });
    connect(m_shelf, &ShelfView::recordWanted, this, [this](const std::optional<SpringId>& spring) {
        showRecords(RecordsDialog::Page::Shelf);
        if (m_records) {
            m_records->showShelf(spring);
        }
    });
    connect(&m_session, &LogbookSession::logChanged, this, &ReviewPage::refresh);
    connect(&m_session, &LogbookSession::assessmentChanged, this, &ReviewPage::refresh);
    connect(&m_session, &LogbookSession::closed, this, &ReviewPage::refresh);
    connect(&m_preferences, &Preferences::changed, this, &ReviewPage::refresh);
    refresh();
}

QWidget* ReviewPage::makeViews() {
    m_views->setAccessibleName(tr("What Review shows"));
    m_views->setDrawBase(false);
    m_views->setExpanding(false);
    int number = 0;
    for (const QString& name : {tr("Springs"), tr("Plan"), tr("Shelf"), tr("Lives")}) {
        const QKeySequence key(Qt::CTRL | static_cast<Qt::Key>(Qt::Key_1 + number));
        m_views->addTab(name);
        m_views->setTabToolTip(number, key.toString(QKeySequence::NativeText));
        auto* shortcut = new QShortcut(key, this);
        shortcut->setContext(Qt::WidgetWithChildrenShortcut);
        connect(shortcut, &QShortcut::activated, this,
                [this, number] { showView(static_cast<View>(number)); });
        ++number;
    }
    connect(m_views, &QTabBar::currentChanged, this, &ReviewPage::refresh);
    return m_views;
}

void ReviewPage::showView(View view) {
    m_views->setCurrentIndex(static_cast<int>(view));
    if (m_stack->currentIndex() != 0) {
        m_stack->currentWidget()->setFocus();
    }
}

ReviewPage::View ReviewPage::view() const {
    return static_cast<View>(m_views->currentIndex());
}

void ReviewPage::showRecords(RecordsDialog::Page page) {
    if (!mayWrite(tr("This logbook is open for reading only, so nothing can be entered.")) ||
        m_records) {
        return;
    }
    auto* records = new RecordsDialog(m_session, m_preferences, page, this);
    records->open();
    m_records = records;
}

QString ReviewPage::emptyText() const {
    return m_stack->currentIndex() != 0 ? QString() : m_empty->text();
}

void ReviewPage::refresh() {
    const auto log = m_session.log();
    if (!log) {
        showEmpty(m_session.isOpen()
                      ? tr("No engine is chosen. Choose one at the top of the window, or add one.")
                      : tr("No logbook is open. Open one, or start a new one."),
                  false);
        return;
    }
    dropOldNews(*log);
    if (log->inspections.empty()) {
        showEmpty(tr("%1 has no inspection yet, so there is nothing to compare. Enter a first "
                     "inspection at the Bench (key F2): its readings become the baselines.",
                     "an engine")
                      .arg(log->engine.name),
                  true);
        return;
    }
    const auto history = m_session.history();
    const auto assessment = m_session.assessment();
    if (!history || !assessment || assessment->engine != log->engine.name) {
        showEmpty(tr("The springs are being assessed…"), false);
        return;
    }
    m_board->show(log, *history, assessment, m_preferences.quantities());
    m_views->show();
    m_stack->setCurrentIndex(1 + m_views->currentIndex());
}

void ReviewPage::showEmpty(const QString& sentence, bool offerBench) {
    m_empty->setText(sentence);
    m_toBench->setVisible(offerBench);
    m_views->hide();
    m_stack->setCurrentIndex(0);
}

void ReviewPage::startSwap() {
    if (m_stack->currentWidget() == m_board && m_board->selected()) {
        onSwapWanted(*m_board->selected());
    } else if (m_stack->currentWidget() == m_plan && m_plan->selected()) {
        onSwapWanted(*m_plan->selected());
    }
}

void ReviewPage::onSwapWanted(const Place& place) {
    if (!mayWrite(tr("This logbook is open for reading only, so no swap can be recorded."))) {
        return;
    }
    if (m_dialog || !m_session.log()) {
        return;
    }
    auto* dialog = new SwapDialog(m_session.log(), place, m_preferences, m_clock, this);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    connect(dialog, &SwapDialog::swapReady, this, &ReviewPage::applySwap);
    dialog->open();
    m_dialog = dialog;
}

bool ReviewPage::mayWrite(const QString& refusal) {
    if (m_session.isReadOnly()) {
        m_message->tell(MessageStrip::Kind::Notice, refusal);
    }
    return !m_session.isReadOnly();
}

void ReviewPage::onDecided(const InspectionId& inspection, const SpringId& spring,
                           ReadingJudgement judgement) {
    if (!mayWrite(tr("This logbook is open for reading only, so nothing can be decided.")) ||
        m_reason) {
        return;
    }
    const DecisionWords words = decisionWords(judgement);
    auto* dialog = new ReasonDialog(
        m_session, m_preferences, words.title, words.advice, words.action,
        [inspection, spring, judgement](const Authorship& author) -> Change {
            return DecideReading{
                Decision{DecisionId::make(), inspection, spring, judgement, author}};
        },
        this);
    connect(dialog, &QDialog::accepted, this, [this] {
        m_message->tell(MessageStrip::Kind::Notice,
                        tr("That is noted, and the springs are assessed with it. Undo takes it "
                           "back."));
    });
    dialog->open();
    m_reason = dialog;
}

void ReviewPage::applySwap(const FitSpring& swap) {
    const Fitting fitting = swap.fitting;
    m_session.apply(swap, this, [this, fitting](const Result<void>& result) {
        SwapDialog* dialog = m_dialog.data();
        if (dialog != nullptr && result) {
            dialog->accept();
        } else if (dialog != nullptr) {
            dialog->showFailure(wording::sentence(result.error()));
        }
        if (result) {
            m_told = fitting.id;
            m_message->tell(MessageStrip::Kind::Notice,
                            tr("The swap at %1 is recorded. Undo takes it back.", "a place")
                                .arg(placeText(fitting.place)));
        }
    });
}

/// An undone swap is no longer news.
void ReviewPage::dropOldNews(const EngineLog& log) {
    const bool undone =
        std::any_of(log.fittings.begin(), log.fittings.end(), [this](const Fitting& fitting) {
            return fitting.id == m_told && fitting.withdrawn;
        });
    if (undone) {
        m_message->dismiss();
    }
}

} // namespace coilbook
