#include "ui/pages/review_board.h"

#include "core/services/urgency.h"
#include "core/wording/wording.h"
#include "core/wording/words.h"
#include "ui/models/standing_delegate.h"
#include "ui/pages/review_detail.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QScrollBar>
#include <QShortcut>
#include <QSortFilterProxyModel>
#include <QStackedLayout>
#include <QTableView>
#include <QTextEdit>
#include <QVBoxLayout>

#include <algorithm>

namespace coilbook {

namespace {

/// Parts of the page that the table may take: with all its columns, and with the needed ones.
constexpr double kWidestSide = 0.48;
constexpr double kWidestNeededSide = 0.6;

QFont bold(QFont font) {
    font.setBold(true);
    return font;
}

} // namespace

ReviewBoard::ReviewBoard(QWidget* parent)
    : QWidget(parent)
    , m_model(new StandingTableModel(this))
    , m_sorted(new QSortFilterProxyModel(this))
    , m_plan(new EnginePlan(this))
    , m_detail(new ReviewDetail(this))
    , m_views(new QStackedLayout)
    , m_table(new QTableView(this))
    , m_summary(new QLabel(this))
    , m_shift(new QLabel(this))
    , m_reasonsHead(new QLabel(this))
    , m_reasons(new QTextEdit(this))
    , m_enlarge(new QPushButton(this))
    , m_swap(new QPushButton(tr("Record a s&wap… (S)"), this))
    , m_escape(new QShortcut(QKeySequence(Qt::Key_Escape), this))
    , m_side(makeSide()) {
    m_plan->setCellPainter([this](QPainter& painter, const EnginePlan::Cell& cell,
                                  const Scheme& scheme) { m_cells.paint(painter, cell, scheme); });
    m_plan->setFooter(1.4, [this](QPainter& painter, const QRectF& area, const Scheme& scheme) {
        m_cells.paintScale(painter, area, scheme);
    });
    m_plan->setCellText([this](const Place& place) { return m_cells.describe(place); });
    m_views->addWidget(m_plan);
    m_views->addWidget(m_detail);
    makeTable();

    auto* body = new QHBoxLayout;
    body->addLayout(m_views, 1);
    body->addWidget(m_side);
    auto* page = new QVBoxLayout(this);
    page->addWidget(makeHead());
    m_shift->setTextFormat(Qt::PlainText);
    m_shift->setWordWrap(true);
    m_shift->setFont(bold(m_shift->font()));
    page->addWidget(m_shift);
    page->addLayout(body, 1);

    connect(m_plan, &EnginePlan::selectedByUser, this, &ReviewBoard::select);
    connect(m_plan, &EnginePlan::activated, this, &ReviewBoard::enlarge);
    connect(m_table, &QTableView::activated, this, &ReviewBoard::enlarge);
    connect(m_enlarge, &QPushButton::clicked, this,
            [this] { isEnlarged() ? backToPlan() : enlarge(); });
    connect(m_swap, &QPushButton::clicked, this, &ReviewBoard::wantSwap);
    connect(m_detail, &ReviewDetail::decided, this, &ReviewBoard::decided);
    m_escape->setContext(Qt::WidgetWithChildrenShortcut);
    connect(m_escape, &QShortcut::activated, this, &ReviewBoard::backToPlan);
    auto* swapKey = new QShortcut(QKeySequence(Qt::Key_S), this);
    swapKey->setContext(Qt::WidgetWithChildrenShortcut);
    connect(swapKey, &QShortcut::activated, this, &ReviewBoard::wantSwap);
    backToPlan();
}

QWidget* ReviewBoard::makeHead() {
    m_summary->setTextFormat(Qt::PlainText);
    m_summary->setWordWrap(true);
    m_swap->setToolTip(tr("Put another spring in at the selected place"));
    auto* head = new QWidget(this);
    auto* row = new QHBoxLayout(head);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(m_summary, 1);
    row->addWidget(m_enlarge);
    row->addWidget(m_swap);
    return head;
}

QWidget* ReviewBoard::makeSide() {
    auto* side = new QWidget(this);
    m_reasonsHead->setFont(bold(m_reasonsHead->font()));
    m_reasonsHead->setTextFormat(Qt::PlainText);
    m_reasonsHead->setWordWrap(true);
    m_reasons->setReadOnly(true);
    m_reasons->setTabChangesFocus(true);
    m_reasons->setAcceptRichText(false);
    m_reasons->setAccessibleName(tr("Reasons"));
    m_reasons->setMinimumHeight(fontMetrics().height() * 4);
    auto* column = new QVBoxLayout(side);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(m_table, 3);
    column->addWidget(m_reasonsHead);
    column->addWidget(m_reasons, 1);
    return side;
}

void ReviewBoard::makeTable() {
    m_sorted->setSourceModel(m_model);
    m_sorted->setSortRole(StandingTableModel::SortRole);
    m_table->setModel(m_sorted);
    m_table->setItemDelegateForColumn(StandingTableModel::StandingColumn,
                                      new StandingDelegate(this));
    m_table->setSortingEnabled(true);
    m_table->sortByColumn(StandingTableModel::StandingColumn, Qt::AscendingOrder);
    m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_table->setSelectionMode(QAbstractItemView::SingleSelection);
    m_table->setTabKeyNavigation(false);
    m_table->setShowGrid(false);
    m_table->setAlternatingRowColors(true);
    m_table->setWordWrap(false);
    m_table->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_table->setAccessibleName(tr("Springs, most urgent first"));
    m_table->verticalHeader()->hide();
    m_table->horizontalHeader()->setSectionResizeMode(QHeaderView::Fixed);
    m_table->horizontalHeader()->setHighlightSections(false);
    m_table->horizontalHeader()->setSectionsClickable(true);
    connect(m_table->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            &ReviewBoard::onTableRow);
}

void ReviewBoard::show(std::shared_ptr<const EngineLog> log, const EngineHistory& history,
                       std::shared_ptr<const Assessment> assessment, const Quantities& quantities) {
    m_log = std::move(log);
    m_assessment = std::move(assessment);
    m_quantities = quantities;
    m_cells.set(history, m_assessment, quantities);
    const std::optional<Place> before = m_selected;
    m_model->setAssessment(m_assessment, quantities);
    m_plan->setEngine(m_log->engine.layout);
    writeSummary();
    fitColumns();
    if (before && m_log->engine.layout.has(*before)) {
        m_selected = before;
    } else {
        m_selected =
            m_model->rowCount() > 0 ? std::optional(m_model->springAt(0).place) : std::nullopt;
    }
    showSelected();
}

void ReviewBoard::select(const Place& place) {
    if (m_selected != place) {
        m_selected = place;
        showSelected();
    }
}

bool ReviewBoard::isEnlarged() const {
    return m_views->currentWidget() == m_detail;
}

void ReviewBoard::enlarge() {
    if (!m_selected || m_cells.chartAt(*m_selected) == nullptr) {
        return;
    }
    m_views->setCurrentWidget(m_detail);
    m_enlarge->setText(tr("&All springs (Esc)"));
    m_escape->setEnabled(true);
    showSelected();
    m_detail->chart().setFocus();
}

void ReviewBoard::backToPlan() {
    const bool hadFocus = m_detail->isAncestorOf(focusWidget());
    m_views->setCurrentWidget(m_plan);
    m_enlarge->setText(tr("En&large (Enter)"));
    m_escape->setEnabled(false);
    if (hadFocus) {
        m_plan->setFocus();
    }
}

QString ReviewBoard::summary() const {
    return m_summary->text();
}

QString ReviewBoard::shiftNotice() const {
    return m_shift->text();
}

QString ReviewBoard::reasons() const {
    return m_reasons->toPlainText();
}

void ReviewBoard::resizeEvent(QResizeEvent*) {
    fitColumns();
}

void ReviewBoard::changeEvent(QEvent* event) {
    if (event->type() == QEvent::FontChange) {
        fitColumns();
    }
    QWidget::changeEvent(event);
}

void ReviewBoard::onTableRow() {
    const QModelIndex current = m_sorted->mapToSource(m_table->currentIndex());
    if (current.isValid()) {
        select(m_model->springAt(current.row()).place);
    }
}

/// Brings plan, table, reasons and the enlarged chart to the selected place.
void ReviewBoard::showSelected() {
    m_plan->setSelected(m_selected);
    m_swap->setEnabled(m_selected.has_value());
    const LossChart* chart = m_selected ? m_cells.chartAt(*m_selected) : nullptr;
    m_enlarge->setEnabled(chart != nullptr || isEnlarged());
    const int row = m_selected ? m_model->rowOf(*m_selected) : -1;
    if (row >= 0) {
        m_table->setCurrentIndex(
            m_sorted->mapFromSource(m_model->index(row, StandingTableModel::PlaceColumn)));
    } else {
        m_table->clearSelection();
    }
    writeReasons();
    if (!isEnlarged()) {
        return;
    }
    if (chart == nullptr) {
        backToPlan();
    } else {
        m_detail->showSpring(*m_log, *chart, m_cells.range(), m_quantities);
    }
}

void ReviewBoard::writeSummary() {
    const StandingCounts counts = standingCounts(*m_assessment);
    const int ahead = m_assessment->rules.racesAhead;
    QStringList parts;
    const auto add = [&](int count, Standing standing) {
        if (count > 0) {
            parts << tr("%1 %2", "a count of springs, their standing")
                         .arg(QString::number(count), wording::standing(standing, ahead));
        }
    };
    add(counts.pastLimit, Standing::PastLimit);
    add(counts.due, Standing::Due);
    add(counts.sound, Standing::Sound);
    add(counts.noTrend, Standing::NoTrend);
    QString text =
        tr("After %1, %2: %3.", "races, a day, standings with their counts")
            .arg(wording::races(m_assessment->racesNow), m_quantities.date(m_assessment->asOf),
                 parts.join(QStringLiteral(", ")));
    if (m_assessment->inspections.size() == 1) {
        text += QLatin1Char(' ') + tr("This was the first inspection, so its readings are the "
                                      "baselines; the second one shows the first losses.");
    }
    m_summary->setText(text);
    m_shift->setText(wording::newestShift(*m_assessment, m_quantities));
    m_shift->setVisible(!m_shift->text().isEmpty());
}

void ReviewBoard::writeReasons() {
    const SpringAssessment* spring = m_selected ? m_cells.springAt(*m_selected) : nullptr;
    m_reasonsHead->setText(m_selected ? m_cells.describe(*m_selected) : QString());
    QStringList sentences;
    if (spring != nullptr) {
        for (const Reason& reason : spring->reasons) {
            if (reason.kind == ReasonKind::InspectionShifted) {
                continue; // the notice above says it for all springs
            }
            sentences << wording::reason(reason, *spring, *m_assessment, m_quantities);
        }
    }
    m_reasons->setPlainText(sentences.join(QLatin1Char('\n')));
}

/// The table takes the width of its columns, up to a part of the page; where that is not enough the
/// columns that the plan and the reasons repeat give way.
void ReviewBoard::fitColumns() {
    QHeaderView* header = m_table->horizontalHeader();
    for (int column = 0; column < StandingTableModel::ColumnCount; ++column) {
        m_table->showColumn(column);
    }
    m_table->resizeColumnsToContents();
    m_table->verticalHeader()->setDefaultSectionSize(fontMetrics().height() * 13 / 10);
    const int frame = 2 * m_table->frameWidth() + m_table->verticalScrollBar()->sizeHint().width();
    const int widest = static_cast<int>(width() * kWidestSide);
    for (const int column :
         {StandingTableModel::InspectionsColumn, StandingTableModel::PerRaceColumn,
          StandingTableModel::SpringColumn, StandingTableModel::EstimatedColumn}) {
        if (header->length() + frame > widest) {
            m_table->hideColumn(column);
        }
    }
    m_side->setFixedWidth(std::clamp(header->length() + frame, 1,
                                     std::max(1, static_cast<int>(width() * kWidestNeededSide))));
}

void ReviewBoard::wantSwap() {
    if (m_selected) {
        Q_EMIT swapWanted(*m_selected);
    }
}

} // namespace coilbook
