#include "ui/pages/shelf_view.h"

#include "core/services/logbook_session.h"
#include "ui/preferences.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QTreeWidget>
#include <QVBoxLayout>

#include <algorithm>

namespace coilbook {

namespace {

QString heightText(const std::optional<Length>& height) {
    return height ? ShelfView::tr("%1 in", "a height in inches")
                        .arg(QString::number(height->inInches(), 'f', 3))
                  : QString();
}

QString pressureText(const ShelvedSpring& spring, const Quantities& quantities) {
    if (spring.pressure) {
        return quantities.forceWithUnit(spring.pressure->force());
    }
    return spring.lastInEngine ? ShelfView::tr("%1 in the engine", "a force")
                                     .arg(quantities.forceWithUnit(*spring.lastInEngine))
                               : ShelfView::tr("not measured");
}

} // namespace

ShelfView::ShelfView(LogbookSession& session, Preferences& preferences, QWidget* parent)
    : QWidget(parent)
    , m_session(session)
    , m_preferences(preferences)
    , m_summary(new QLabel)
    , m_list(new QTreeWidget)
    , m_change(new QPushButton(tr("&Change…"))) {
    m_summary->setTextFormat(Qt::PlainText);
    m_summary->setWordWrap(true);
    m_list->setRootIsDecorated(false);
    m_list->setUniformRowHeights(true);
    m_list->setAllColumnsShowFocus(true);
    m_list->setAlternatingRowColors(true);
    m_list->setAccessibleName(tr("Springs that stand in no place"));
    m_list->setHeaderLabels({tr("Spring"), tr("Where"), tr("Part"), tr("Batch"), tr("Pressure"),
                             tr("At height"), tr("Races run"), tr("Since"), tr("Why")});
    auto* fresh = new QPushButton(tr("&New spare…"));
    auto* head = new QHBoxLayout;
    head->addWidget(m_summary, 1);
    head->addWidget(fresh);
    head->addWidget(m_change);
    auto* page = new QVBoxLayout(this);
    page->addLayout(head);
    page->addWidget(m_list, 1);
    setFocusProxy(m_list);
    connect(fresh, &QPushButton::clicked, this, [this] { Q_EMIT recordWanted(std::nullopt); });
    const auto change = [this] {
        const int row = m_list->indexOfTopLevelItem(m_list->currentItem());
        if (row >= 0) {
            Q_EMIT recordWanted(m_shelf[static_cast<std::size_t>(row)].spring.id);
        }
    };
    connect(m_change, &QPushButton::clicked, this, change);
    connect(m_list, &QTreeWidget::itemActivated, this, change);
    connect(&m_session, &LogbookSession::logChanged, this, &ShelfView::refresh);
    connect(&m_session, &LogbookSession::closed, this, &ShelfView::refresh);
    connect(&m_preferences, &Preferences::changed, this, &ShelfView::refresh);
    refresh();
}

QString ShelfView::summary() const {
    return m_summary->text();
}

void ShelfView::refresh() {
    const auto log = m_session.log();
    const auto history = m_session.history();
    m_list->clear();
    m_shelf.clear();
    m_change->setEnabled(false);
    if (!log || !history) {
        m_summary->clear();
        return;
    }
    const Quantities quantities = m_preferences.quantities();
    m_shelf = shelfOf(*log, *history);
    std::stable_partition(m_shelf.begin(), m_shelf.end(), [](const ShelvedSpring& spring) {
        return spring.where == Storage::Shelf;
    });
    int spares = 0;
    for (const ShelvedSpring& spring : m_shelf) {
        const bool isSpare = spring.where == Storage::Shelf;
        spares += isSpare ? 1 : 0;
        new QTreeWidgetItem(m_list, {spring.spring.label, isSpare ? tr("shelf") : tr("thrown out"),
                                     spring.spring.part, spring.spring.batch,
                                     pressureText(spring, quantities), heightText(spring.height),
                                     QString::number(spring.races), quantities.date(spring.since),
                                     spring.reason});
    }
    if (m_shelf.empty()) {
        m_summary->setText(tr("The shelf is empty. Enter the spares that lie ready for this "
                              "engine; what comes out in a swap is listed here by itself."));
    } else {
        m_summary->setText(tr("On the shelf: %1. Thrown out: %2.")
                               .arg(spares)
                               .arg(static_cast<int>(m_shelf.size()) - spares));
        m_list->setCurrentItem(m_list->topLevelItem(0));
    }
    m_change->setEnabled(!m_shelf.empty());
    for (int column = 0; column < m_list->columnCount(); ++column) {
        m_list->resizeColumnToContents(column);
    }
}

} // namespace coilbook
