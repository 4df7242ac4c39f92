#include "ui/pages/start_page.h"

#include "ui/widgets/choice_card.h"
#include "ui/widgets/scrolling.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QLayoutItem>
#include <QScrollArea>
#include <QVBoxLayout>

namespace coilbook {

namespace {

constexpr double kHeadlineScale = 1.7;

} // namespace

StartPage::StartPage(QWidget* parent)
    : QWidget(parent)
    , m_headline(new QLabel(this))
    , m_sentence(new QLabel(this))
    , m_choices(new QVBoxLayout) {
    m_headline->setTextFormat(Qt::PlainText);
    m_headline->setWordWrap(true);
    m_sentence->setTextFormat(Qt::PlainText);
    m_sentence->setWordWrap(true);
    auto* middle = new QWidget(this);
    auto* column = new QVBoxLayout(middle);
    column->addStretch(2);
    column->addWidget(m_headline);
    column->addWidget(m_sentence);
    column->addSpacing(fontMetrics().height());
    column->addLayout(m_choices);
    column->addStretch(3);
    auto* page = new QWidget;
    auto* row = new QHBoxLayout(page);
    row->addStretch(1);
    row->addWidget(middle, 4);
    row->addStretch(1);
    auto* whole = new QVBoxLayout(this);
    whole->setContentsMargins(0, 0, 0, 0);
    whole->addWidget(scrolling(page)); // for windows smaller than any screen we know
    setObjectName(QStringLiteral("startPage"));
    enlargeHeadline();
    showNoLogbook();
}

void StartPage::enlargeHeadline() {
    QFont large = font();
    large.setPointSizeF(large.pointSizeF() * kHeadlineScale);
    large.setWeight(QFont::DemiBold);
    m_headline->setFont(large);
}

void StartPage::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::FontChange) {
        enlargeHeadline();
    }
}

QString StartPage::headline() const {
    return m_headline->text();
}

void StartPage::say(const QString& headline, const QString& sentence) {
    m_headline->setText(headline);
    m_sentence->setText(sentence);
    m_sentence->setVisible(!sentence.isEmpty());
    clearChoices();
}

void StartPage::clearChoices() {
    while (QLayoutItem* item = m_choices->takeAt(0)) {
        if (QWidget* card = item->widget()) {
            card->hide();
            card->deleteLater(); // its click may be what brought us here
        }
        delete item;
    }
}

void StartPage::addChoice(const QString& name, Picture picture, const QString& title,
                          const QString& sentence, void (StartPage::*wanted)()) {
    auto* card = new ChoiceCard(picture, title, sentence, this);
    card->setObjectName(name);
    connect(card, &QAbstractButton::clicked, this, wanted);
    m_choices->addWidget(card);
    card->show();
    if (m_choices->count() == 1) {
        card->setFocus();
    }
}

void StartPage::showNoLogbook(const QString& fault) {
    say(fault.isEmpty() ? tr("Keep the springs of your engines in one logbook")
                        : tr("This logbook could not be opened"),
        fault.isEmpty() ? tr("A logbook is one file on this machine. Any number of engines, "
                             "inspections and races go into it.")
                        : fault);
    addChoice(QStringLiteral("newLogbook"), Picture::New, tr("New logbook"),
              tr("Choose where it is kept, then set up your first engine."),
              &StartPage::newLogbookWanted);
    addChoice(QStringLiteral("demoLogbook"), Picture::Demo, tr("Demo logbook"),
              tr("An invented team with two engines and a season of readings, to try everything "
                 "on. Nothing in it touches your own data."),
              &StartPage::demoWanted);
    addChoice(QStringLiteral("openLogbook"), Picture::Open, tr("Open a logbook"),
              tr("Choose a .coilbook file, or drop one on this window."), &StartPage::openWanted);
}

void StartPage::showOpening(const QString& fileName) {
    say(tr("Opening %1").arg(fileName), {});
}

void StartPage::showNoEngine(bool readOnly) {
    if (readOnly) {
        say(tr("This logbook has no engine yet"),
            tr("It cannot be written to, so none can be set up here. Allow writing to the file, or "
               "open another one."));
        addChoice(QStringLiteral("openLogbook"), Picture::Open, tr("Open another logbook"),
                  tr("Choose a .coilbook file, or drop one on this window."),
                  &StartPage::openWanted);
        return;
    }
    say(tr("Set up your first engine"),
        tr("Name it, say how its cylinders are numbered and which springs stand in it. The first "
           "inspection is then a minute away."));
    addChoice(QStringLiteral("newEngine"), Picture::Engine, tr("New engine"),
              tr("A V8 with two valves a cylinder is filled in; change what differs."),
              &StartPage::engineWanted);
    addChoice(QStringLiteral("importFiles"), Picture::Import, tr("Import readings"),
              tr("Choose CSV files in Coilbook's exchange form, or drop them on this window. "
                 "Engines in them are set up by the import."),
              &StartPage::importWanted);
}

} // namespace coilbook
