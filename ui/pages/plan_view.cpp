#include "ui/pages/plan_view.h"

#include "core/services/logbook_session.h"
#include "ui/preferences.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QShortcut>
#include <QTableWidget>
#include <QTextEdit>
#include <QVBoxLayout>

#include <algorithm>

namespace coilbook {

namespace {

enum Column { PlaceColumn, SpringColumn, StandingColumn, ChangeColumn, FirstRace };

/// Percentages to choose from, the usual one first marked.
void offer(QComboBox& box, const std::vector<int>& percents, double usual) {
    for (const int percent : percents) {
        box.addItem(QStringLiteral("%1 %").arg(percent), percent / 100.0);
        if (percent / 100.0 == usual) {
            box.setCurrentIndex(box.count() - 1);
        }
    }
}

QTableWidgetItem* cell(const QString& text, Qt::Alignment alignment = Qt::AlignLeft) {
    auto* item = new QTableWidgetItem(text);
    item->setFlags(Qt::ItemIsSelectable | Qt::ItemIsEnabled);
    item->setTextAlignment(alignment | Qt::AlignVCenter);
    return item;
}

/// What stands over and under the springs for each race: a caption and its number.
QString raceHead(const PlanRace& race) {
    return race.venue.isEmpty() ? race.day : race.day + QLatin1Char('\n') + race.venue;
}

} // namespace

PlanView::PlanView(LogbookSession& session, Preferences& preferences, QWidget* parent)
    : QWidget(parent)
    , m_session(session)
    , m_preferences(preferences)
    , m_planner(new Planner(session, this))
    , m_risk(new QComboBox)
    , m_certainty(new QComboBox)
    , m_swap(new QPushButton(tr("&Swap… (S)")))
    , m_table(new QTableWidget)
    , m_said(new QTextEdit) {
    m_said->setAcceptRichText(false);
    makeTable();
    m_said->setReadOnly(true);
    m_said->setTabChangesFocus(true);
    m_said->setAccessibleName(tr("What the plan comes to"));
    auto* page = new QVBoxLayout(this);
    page->addWidget(makeHead());
    page->addWidget(m_said, 2);
    page->addWidget(m_table, 5);
    auto* key = new QShortcut(QKeySequence(Qt::Key_S), this);
    key->setContext(Qt::WidgetWithChildrenShortcut);
    connect(key, &QShortcut::activated, this, &PlanView::wantSwap);
    connect(m_swap, &QPushButton::clicked, this, &PlanView::wantSwap);
    connect(m_planner, &Planner::planChanged, this, &PlanView::refresh);
    connect(&m_preferences, &Preferences::changed, this, &PlanView::refresh);
    setFocusProxy(m_table);
    refresh();
}

QWidget* PlanView::makeHead() {
    offer(*m_risk, {2, 5, 10, 20, 30}, m_planner->question().risk);
    offer(*m_certainty, {80, 90, 95, 99}, m_planner->question().certainty);
    m_risk->setAccessibleName(tr("Accepted chance of going past the limit in a race"));
    m_certainty->setAccessibleName(tr("How sure to be of not running out of spares"));
    auto* head = new QWidget(this);
    auto* row = new QHBoxLayout(head);
    row->setContentsMargins(0, 0, 0, 0);
    const auto labelled = [&](const QString& text, QComboBox* box) {
        auto* label = new QLabel(text, head);
        label->setBuddy(box);
        row->addWidget(label);
        row->addWidget(box);
        connect(box, &QComboBox::activated, this, &PlanView::ask);
    };
    labelled(tr("Accepted &risk a race"), m_risk);
    labelled(tr("S&ure of spares"), m_certainty);
    row->addStretch(1);
    const auto button = [&](const QString& text, void (PlanView::*wanted)()) {
        auto* made = new QPushButton(text, head);
        connect(made, &QPushButton::clicked, this, wanted);
        row->addWidget(made);
    };
    row->addWidget(m_swap);
    button(tr("&Calendar…"), &PlanView::calendarWanted);
    button(tr("&Print…"), &PlanView::printWanted);
    return head;
}

void PlanView::makeTable() {
    m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_table->setSelectionMode(QAbstractItemView::SingleSelection);
    m_table->setTabKeyNavigation(false);
    m_table->setShowGrid(false);
    m_table->setAlternatingRowColors(true);
    m_table->setWordWrap(false);
    m_table->setAccessibleName(tr("Springs, those to be changed first on top"));
    m_table->verticalHeader()->hide();
    m_table->horizontalHeader()->setHighlightSections(false);
    m_table->horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    connect(m_table, &QTableWidget::itemSelectionChanged, this,
            [this] { m_swap->setEnabled(selected().has_value()); });
}

std::optional<Place> PlanView::selected() const {
    const int row = m_table->currentRow();
    return row >= 0 && static_cast<std::size_t>(row) < m_rows.size()
               ? std::optional(m_rows[static_cast<std::size_t>(row)].place)
               : std::nullopt;
}

void PlanView::select(const Place& place) {
    for (std::size_t row = 0; row < m_rows.size(); ++row) {
        if (m_rows[row].place == place) {
            m_table->setCurrentCell(static_cast<int>(row), PlaceColumn);
        }
    }
}

void PlanView::setMoreLines(const std::vector<PlanLine>& lines) {
    m_more = lines;
    refresh();
}

QString PlanView::said() const {
    return m_said->toPlainText();
}

void PlanView::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    m_planner->setWanted(true);
}

void PlanView::hideEvent(QHideEvent* event) {
    m_planner->setWanted(false);
    QWidget::hideEvent(event);
}

void PlanView::ask() {
    m_planner->ask({m_risk->currentData().toDouble(), m_certainty->currentData().toDouble()});
}

void PlanView::refresh() {
    const auto log = m_session.log();
    const auto history = m_session.history();
    const auto plan = m_planner->plan();
    if (!log || !history || !plan) {
        m_said->setPlainText(log ? tr("The plan is being made…") : QString());
        return;
    }
    const std::optional<Place> before = selected();
    fill(planContentOf(*log, *plan, springsOnShelf(*log, *history), m_more,
                       m_preferences.quantities(), {}));
    if (before) {
        select(*before);
    } else if (!m_rows.empty()) {
        m_table->setCurrentCell(0, PlaceColumn);
    }
    m_swap->setEnabled(selected().has_value());
}

void PlanView::fill(const PlanContent& content) {
    m_rows = content.rows;
    QStringList heads{tr("Place"), tr("Spring"), tr("Standing"), tr("Change before")};
    for (const PlanRace& race : content.races) {
        heads << raceHead(race);
    }
    m_table->clear();
    m_table->setColumnCount(static_cast<int>(heads.size()));
    m_table->setHorizontalHeaderLabels(heads);
    // Below the springs: what each race asks of the set as it stands, and of a new one.
    constexpr int kSums = 4;
    const bool hasSums = !content.races.empty() && !content.races.front().needed.isEmpty();
    const int rows = static_cast<int>(content.rows.size());
    m_table->setRowCount(rows + (hasSums ? kSums : 0));
    for (int r = 0; r < rows; ++r) {
        const PlanRow& row = content.rows[static_cast<std::size_t>(r)];
        m_table->setItem(r, PlaceColumn, cell(placeText(row.place)));
        m_table->setItem(r, SpringColumn, cell(row.spring));
        m_table->setItem(r, StandingColumn, cell(row.standing));
        m_table->setItem(r, ChangeColumn, cell(row.changeBefore));
        for (int race = 0; race < row.odds.size(); ++race) {
            QTableWidgetItem* odds = cell(row.odds.at(race), Qt::AlignRight);
            if (row.changeIndex && static_cast<std::size_t>(race) >= *row.changeIndex) {
                QFont bold = odds->font();
                bold.setBold(true);
                odds->setFont(bold);
            }
            m_table->setItem(r, FirstRace + race, odds);
        }
    }
    if (hasSums) {
        const auto sum = [&](int offset, const QString& caption, QString PlanRace::*value) {
            m_table->setItem(rows + offset, PlaceColumn, cell(caption));
            m_table->setSpan(rows + offset, PlaceColumn, 1, FirstRace);
            for (std::size_t race = 0; race < content.races.size(); ++race) {
                m_table->setItem(rows + offset, FirstRace + static_cast<int>(race),
                                 cell(content.races[race].*value, Qt::AlignRight));
            }
        };
        sum(0, tr("Springs likely at the limit once it is run"), &PlanRace::due);
        sum(1, tr("Spares to have until then"), &PlanRace::needed);
        sum(2, tr("With a whole new set: likely at the limit"), &PlanRace::dueRenewed);
        sum(3, tr("With a whole new set: spares to have"), &PlanRace::neededRenewed);
    }
    m_table->resizeColumnsToContents();
    m_table->verticalHeader()->setDefaultSectionSize(fontMetrics().height() * 13 / 10);
    QStringList sentences = content.summary;
    for (const PlanLine& line : content.lines) {
        sentences << (line.when.isEmpty() ? line.what
                                          : line.when + QStringLiteral(": ") + line.what);
    }
    m_said->setPlainText(sentences.join(QLatin1Char('\n')));
}

void PlanView::wantSwap() {
    if (const std::optional<Place> place = selected()) {
        Q_EMIT swapWanted(*place);
    }
}

} // namespace coilbook
