#include "ui/pages/sheet_page.h"

#include "core/services/logbook_session.h"
#include "core/services/plan_content.h"
#include "core/services/planner.h"
#include "core/services/sheet_content.h"
#include "core/services/sheet_content_form.h"
#include "core/wording/wording.h"
#include "ui/printing/page_preview.h"
#include "ui/printing/plan_painter.h"
#include "ui/printing/round_form.h"
#include "ui/printing/sheet_painter.h"
#include "ui/printing/sheet_printer.h"

#include <QAction>
#include <QButtonGroup>
#include <QDir>
#include <QHBoxLayout>
#include <QLabel>
#include <QPrinter>
#include <QRadioButton>
#include <QRegularExpression>
#include <QStackedLayout>
#include <QStandardPaths>
#include <QToolButton>
#include <QVBoxLayout>

namespace coilbook {

namespace {

/// A name that every file system takes.
QString asFileName(const QString& text) {
    static const QRegularExpression unfit(QStringLiteral("[^\\w .-]"),
                                          QRegularExpression::UseUnicodePropertiesOption);
    QString name = text;
    return name.replace(unfit, QStringLiteral("_")).simplified().left(80);
}

QToolButton* buttonFor(QAction* action, QWidget* parent) {
    auto* button = new QToolButton(parent);
    button->setDefaultAction(action);
    button->setToolButtonStyle(Qt::ToolButtonTextOnly);
    button->setFocusPolicy(Qt::StrongFocus);
    return button;
}

} // namespace

SheetPage::SheetPage(LogbookSession& session, Preferences& preferences, QWidget* parent)
    : QWidget(parent)
    , m_session(session)
    , m_preferences(preferences)
    , m_dialogs(std::make_unique<DesktopSheetDialogs>())
    , m_message(new QLabel(this))
    , m_empty(new QLabel(this))
    , m_preview(new PagePreview(this))
    , m_stack(new QStackedLayout)
    , m_planner(new Planner(session, this))
    , m_assessmentIsCurrent(session.assessment() != nullptr) {
    makeActions();
    m_message->setTextFormat(Qt::PlainText);
    m_message->setWordWrap(true);
    m_message->hide();
    m_empty->setTextFormat(Qt::PlainText);
    m_empty->setWordWrap(true);
    m_empty->setAlignment(Qt::AlignCenter);
    m_stack->addWidget(m_empty);
    m_stack->addWidget(m_preview);

    auto* layout = new QVBoxLayout(this);
    layout->addWidget(makeBar());
    layout->addWidget(m_message);
    layout->addLayout(m_stack, 1);

    connect(&m_session, &LogbookSession::logChanged, this, [this] {
        m_assessmentIsCurrent = false;
        say({});
        refresh();
    });
    connect(&m_session, &LogbookSession::assessmentChanged, this, [this] {
        m_assessmentIsCurrent = m_session.assessment() != nullptr;
        refresh();
    });
    connect(&m_session, &LogbookSession::opened, this, &SheetPage::refresh);
    connect(&m_session, &LogbookSession::closed, this, &SheetPage::refresh);
    connect(&m_preferences, &Preferences::changed, this, &SheetPage::refresh);
    connect(m_planner, &Planner::planChanged, this, &SheetPage::refresh);
    refresh();
}

SheetPage::~SheetPage() = default;

void SheetPage::makeActions() {
    m_print = new QAction(tr("&Print…"), this);
    m_print->setShortcut(QKeySequence::Print);
    connect(m_print, &QAction::triggered, this, &SheetPage::print);
    m_savePdf = new QAction(tr("Save as P&DF…"), this);
    m_savePdf->setShortcut(Qt::CTRL | Qt::SHIFT | Qt::Key_P);
    connect(m_savePdf, &QAction::triggered, this, &SheetPage::savePdf);
    // On the page itself, so that the keys work while it is shown and only then.
    addActions({m_print, m_savePdf});
}

QWidget* SheetPage::makeBar() {
    auto* bar = new QWidget(this);
    auto* layout = new QHBoxLayout(bar);
    layout->setContentsMargins(0, 0, 0, 0);
    const auto choice = [&](const QString& text, QButtonGroup* group) {
        auto* button = new QRadioButton(text, bar);
        group->addButton(button);
        layout->addWidget(button);
        return button;
    };
    auto* documents = new QButtonGroup(bar);
    m_sheet = choice(tr("&Spring sheet"), documents);
    m_plan = choice(tr("S&wap plan"), documents);
    m_roundForm = choice(tr("Blank &round form"), documents);
    m_sheet->setChecked(true);
    connect(documents, &QButtonGroup::buttonToggled, this, [this](QAbstractButton*, bool on) {
        if (on) {
            say({});
            m_planner->setWanted(document() == Document::Plan);
            refresh();
        }
    });
    layout->addSpacing(fontMetrics().averageCharWidth() * 3);

    auto* papers = new QButtonGroup(bar);
    m_a4 = choice(tr("&A4"), papers);
    m_letter = choice(tr("&Letter"), papers);
    (m_preferences.paper() == Paper::Letter ? m_letter : m_a4)->setChecked(true);
    connect(m_letter, &QRadioButton::toggled, this,
            [this](bool letter) { m_preferences.setPaper(letter ? Paper::Letter : Paper::A4); });
    layout->addStretch(1);

    const auto zoom = [&](const QString& text, const QKeySequence& key,
                          void (PagePreview::*how)()) {
        auto* action = new QAction(text, this);
        action->setShortcut(key);
        connect(action, &QAction::triggered, m_preview, how);
        addAction(action);
        layout->addWidget(buttonFor(action, bar));
    };
    zoom(tr("Smaller"), QKeySequence::ZoomOut, &PagePreview::zoomOut);
    zoom(tr("Larger"), QKeySequence::ZoomIn, &PagePreview::zoomIn);
    zoom(tr("&Whole page"), Qt::CTRL | Qt::Key_0, &PagePreview::showWholePage);
    layout->addSpacing(fontMetrics().averageCharWidth() * 3);
    layout->addWidget(buttonFor(m_savePdf, bar));
    layout->addWidget(buttonFor(m_print, bar));
    return bar;
}

void SheetPage::setDialogs(std::unique_ptr<SheetDialogs> dialogs) {
    m_dialogs = std::move(dialogs);
}

void SheetPage::choose(Document document) {
    (document == Document::Sheet  ? m_sheet
     : document == Document::Plan ? m_plan
                                  : m_roundForm)
        ->setChecked(true);
}

SheetPage::Document SheetPage::document() const {
    return m_sheet->isChecked()  ? Document::Sheet
           : m_plan->isChecked() ? Document::Plan
                                 : Document::RoundForm;
}

QString SheetPage::emptyText() const {
    return m_stack->currentWidget() == m_empty ? m_empty->text() : QString();
}

QString SheetPage::message() const {
    return m_message->text();
}

void SheetPage::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    refresh();
}

QString SheetPage::whyEmpty() const {
    if (!m_session.isOpen()) {
        return tr("No logbook is open. Open one, or make a new one, and the sheet of its engine "
                  "appears here.");
    }
    if (!m_session.log()) {
        return m_session.engines().empty()
                   ? tr("This logbook has no engine yet. Add one, and its sheet appears here.")
                   : tr("Choose an engine, and its sheet appears here.");
    }
    if (!m_assessmentIsCurrent) {
        return tr("The springs are being judged. The sheet appears in a moment.");
    }
    if (document() == Document::Plan && !m_planner->plan()) {
        return tr("The plan is being made. It appears in a moment.");
    }
    if (document() != Document::RoundForm && m_session.history()->inspections.empty()) {
        return tr("This engine has no inspection yet. Test its springs at the Bench first; the "
                  "blank round form can be printed now.");
    }
    return {};
}

void SheetPage::refresh() {
    const Paper paper = m_preferences.paper();
    (paper == Paper::Letter ? m_letter : m_a4)->setChecked(true);
    const QString why = whyEmpty();
    m_print->setEnabled(why.isEmpty());
    m_savePdf->setEnabled(why.isEmpty());
    // While the same engine is judged anew, its page stays in view.
    const bool isBeingRenewed = m_session.log() && m_session.assessment() && !m_assessmentIsCurrent;
    if (isBeingRenewed && m_stack->currentWidget() == m_preview) {
        return;
    }
    if (!why.isEmpty()) {
        m_empty->setText(why);
        m_stack->setCurrentWidget(m_empty);
        return;
    }
    m_stack->setCurrentWidget(m_preview);
    if (isVisible()) {
        const Page shown = page();
        m_preview->showPage(paper, shown.painting, shown.title);
    }
}

SheetPage::Page SheetPage::page() const {
    const Quantities quantities = m_preferences.quantities();
    const Paper paper = m_preferences.paper();
    const EngineLog& log = *m_session.log();
    const Assessment& assessment = *m_session.assessment();
    const QString day = quantities.date(assessment.asOf);
    if (document() == Document::RoundForm) {
        const QString title = tr("Round form %1").arg(log.engine.name);
        return {[paper,
                 content = roundFormContentOf(log.engine, assessment, quantities, m_clock.now())](
                    QPainter& painter, const QRectF& device) {
                    paintRoundForm(painter, device, paper, content);
                },
                title, asFileName(title) + QStringLiteral(".pdf")};
    }
    if (document() == Document::Plan) {
        const QString title = tr("Swap plan %1 %2", "engine, day").arg(log.engine.name, day);
        return {[paper, content = planContentOf(
                            log, *m_planner->plan(), springsOnShelf(log, *m_session.history()), {},
                            quantities, m_clock.now())](QPainter& painter, const QRectF& device) {
                    paintPlan(painter, device, paper, content);
                },
                title, asFileName(title) + QStringLiteral(".pdf")};
    }
    const QString title = tr("Spring sheet %1 %2", "engine, day").arg(log.engine.name, day);
    return {[paper, content = sheetContentOf(log, *m_session.history(), assessment, quantities,
                                             m_clock.now(), m_session.seal())](
                QPainter& painter, const QRectF& device) {
                paintSheet(painter, device, paper, content);
            },
            title, asFileName(title) + QStringLiteral(".pdf")};
}

void SheetPage::say(const QString& sentence) {
    m_message->setText(sentence);
    m_message->setVisible(!sentence.isEmpty());
}

void SheetPage::print() {
    if (!m_print->isEnabled()) {
        return;
    }
    say({});
    const Page printed = page();
    QPrinter printer(QPrinter::HighResolution);
    preparePrinter(printer, m_preferences.paper(), printed.title);
    if (!m_dialogs->setUp(this, printer)) {
        return;
    }
    say(printPage(printer, m_preferences.paper(), printed.painting)
            ? tr("The page was sent to the printer.")
            : tr("The printer took no page. Check that it is switched on and reachable, or save "
                 "the page as PDF."));
}

void SheetPage::savePdf() {
    if (!m_savePdf->isEnabled()) {
        return;
    }
    say({});
    const Page saved = page();
    const QString folder = QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation);
    const std::optional<QString> path =
        m_dialogs->askPdfPath(this, QDir(folder).filePath(saved.fileName));
    if (!path) {
        return;
    }
    const Result<void> result =
        writePagePdf(*path, m_preferences.paper(), saved.title, saved.painting);
    say(result ? tr("Saved as %1.").arg(QDir::toNativeSeparators(*path))
               : wording::line(result.error()));
}

} // namespace coilbook
