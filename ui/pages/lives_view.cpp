#include "ui/pages/lives_view.h"

#include "core/services/logbook_session.h"
#include "core/wording/life_words.h"
#include "ui/charts/survival_chart.h"
#include "ui/preferences.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QTreeWidget>
#include <QVBoxLayout>

namespace coilbook {

namespace {

/// The last column takes the room that is left; what is cut off there is told on hover.
void fitColumns(QTreeWidget& list) {
    const int last = list.columnCount() - 1;
    for (int column = 0; column < last; ++column) {
        list.resizeColumnToContents(column);
    }
    for (int row = 0; row < list.topLevelItemCount(); ++row) {
        QTreeWidgetItem* item = list.topLevelItem(row);
        item->setToolTip(last, item->text(last));
    }
}

QTreeWidget* makeList(const QStringList& heads, const QString& name) {
    auto* list = new QTreeWidget;
    list->setRootIsDecorated(false);
    list->setUniformRowHeights(true);
    list->setAllColumnsShowFocus(true);
    list->setAlternatingRowColors(true);
    list->setHeaderLabels(heads);
    list->setAccessibleName(name);
    list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff); // the last column gives way
    return list;
}

} // namespace

LivesView::LivesView(LogbookSession& session, Preferences& preferences, QWidget* parent)
    : QWidget(parent)
    , m_session(session)
    , m_reader(new LivesReader(this))
    , m_grouping(new QComboBox)
    , m_said(new QLabel)
    , m_chart(new SurvivalChart)
    , m_groups(makeList(
          {tr("Group"), tr("Springs"), tr("At limit"), tr("Not yet"), tr("How long they last")},
          tr("Groups of springs")))
    , m_springs(makeList(
          {tr("Spring"), tr("Part"), tr("Batch"), tr("Races"), tr("Came to"), tr("Where it stood")},
          tr("Every spring and its history"))) {
    m_grouping->addItems({tr("by part"), tr("by batch"), tr("by engine"), tr("by kind of valve")});
    m_grouping->setAccessibleName(tr("Compare the lives"));
    m_said->setTextFormat(Qt::PlainText);
    m_said->setWordWrap(true);
    auto* label = new QLabel(tr("&Compare"));
    label->setBuddy(m_grouping);
    auto* head = new QHBoxLayout;
    head->addWidget(label);
    head->addWidget(m_grouping);
    head->addWidget(m_said, 1);
    auto* comparison = new QHBoxLayout;
    comparison->addWidget(m_chart, 1);
    comparison->addWidget(m_groups, 1);
    auto* page = new QVBoxLayout(this);
    page->addLayout(head);
    page->addLayout(comparison, 3);
    page->addWidget(m_springs, 2);
    setFocusProxy(m_grouping);
    connect(m_grouping, &QComboBox::currentIndexChanged, this, &LivesView::refresh);
    connect(m_groups, &QTreeWidget::currentItemChanged, this, &LivesView::showChosen);
    connect(m_reader, &LivesReader::livesRead, this,
            [this](const std::shared_ptr<const std::vector<SpringLife>>& lives) {
                m_lives = lives;
                refresh();
            });
    const auto renew = [this] {
        m_isOld = true;
        if (isVisible()) {
            readAgain();
        }
    };
    connect(&m_session, &LogbookSession::logChanged, this, renew);
    connect(&m_session, &LogbookSession::closed, this, renew);
    connect(&preferences, &Preferences::changed, this, &LivesView::refresh);
}

void LivesView::compareBy(LifeGrouping grouping) {
    m_grouping->setCurrentIndex(static_cast<int>(grouping));
}

QString LivesView::said() const {
    return m_said->text();
}

void LivesView::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    readAgain();
}

void LivesView::readAgain() {
    if (!m_isOld || !m_session.isOpen()) {
        return;
    }
    m_isOld = false;
    m_said->setText(tr("The lives of all springs of this logbook are being read…"));
    m_reader->read(m_session.path());
}

void LivesView::refresh() {
    if (!m_lives) {
        return;
    }
    m_comparison = compareLives(*m_lives, static_cast<LifeGrouping>(m_grouping->currentIndex()));
    m_groups->clear();
    for (const LifeGroup& group : m_comparison.groups) {
        const std::size_t springs = group.curve ? group.curve->n : group.running;
        new QTreeWidgetItem(m_groups, {wording::lifeGroup(group), QString::number(springs),
                                       QString::number(springs - group.running),
                                       QString::number(group.running), wording::medianLife(group)});
    }
    m_springs->clear();
    for (const SpringLife& life : *m_lives) {
        QStringList stays;
        for (const LifeStay& stay : life.stays) {
            stays << wording::lifeStay(stay);
        }
        new QTreeWidgetItem(m_springs,
                            {life.label, life.part, life.batch, QString::number(life.races),
                             wording::lifeEnd(life.end), stays.join(QStringLiteral("; "))});
    }
    fitColumns(*m_groups);
    fitColumns(*m_springs);
    m_said->setText(m_lives->empty() ? tr("No spring has a life to tell of yet.")
                                     : wording::lifeDifference(m_comparison));
    m_groups->setCurrentItem(m_groups->topLevelItem(0));
    showChosen();
}

void LivesView::showChosen() {
    const int row = m_groups->indexOfTopLevelItem(m_groups->currentItem());
    m_chart->showGroups(m_comparison.groups, static_cast<std::size_t>(std::max(row, 0)));
}

} // namespace coilbook
