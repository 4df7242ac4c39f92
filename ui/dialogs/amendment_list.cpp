#include "ui/dialogs/amendment_list.h"

#include "core/wording/amendment_words.h"

#include <QDateTime>
#include <QHeaderView>

#include <algorithm>

namespace coilbook {

struct AmendmentList::Line {
    wording::AmendmentWords words;
    Authorship author;
};

namespace {

/// Day and time where it was written, as the clock on the wall showed it.
QString wallTime(const Moment& moment) {
    const QDateTime utc = QDateTime::fromString(moment.utc, Qt::ISODateWithMs);
    if (!utc.isValid()) {
        return {};
    }
    return utc.toOffsetFromUtc(moment.utcOffsetMinutes * 60)
        .toString(QStringLiteral("yyyy-MM-dd HH:mm"));
}

} // namespace

AmendmentList::AmendmentList(QWidget* parent)
    : QTreeWidget(parent) {
    setHeaderLabels({tr("What"), tr("Was"), tr("Is now"), tr("Why"), tr("By"), tr("When")});
    setRootIsDecorated(false);
    setUniformRowHeights(true);
    setAccessibleName(tr("Changes made afterwards"));
    header()->setSectionResizeMode(QHeaderView::ResizeToContents);
}

void AmendmentList::add(const Line& line) {
    auto* item =
        new QTreeWidgetItem(this, {line.words.what, line.words.oldValue, line.words.newValue,
                                   line.author.why, line.author.who, wallTime(line.author.at)});
    QFont struckOut = font();
    struckOut.setStrikeOut(true);
    item->setFont(1, struckOut);
}

void AmendmentList::showAmendments(const EngineLog& log, const std::optional<QUuid>& record) {
    clear();
    std::vector<Line> lines;
    for (const Amendment& amendment : log.amendments) {
        if (!record || amendment.record == *record) {
            lines.push_back({wording::amendmentWords(amendment, log), amendment.author});
        }
    }
    if (!record) {
        for (const Reading& reading : log.readings) {
            if (reading.amends) {
                lines.push_back({wording::amendmentWords(reading, log), reading.author});
            }
        }
    }
    std::stable_sort(lines.begin(), lines.end(), [](const Line& a, const Line& b) {
        return a.author.at.utc > b.author.at.utc;
    });
    for (const Line& line : lines) {
        add(line);
    }
}

} // namespace coilbook
