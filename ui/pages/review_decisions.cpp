#include "ui/pages/review_decisions.h"

#include <QHBoxLayout>
#include <QPushButton>

#include <set>

namespace coilbook {

namespace {

using Judgement = ReadingJudgement;

/// What changes something about a reading as it stands.
std::set<Judgement> sensible(const LossChart::Point& reading, Judgement inForce) {
    std::set<Judgement> offered;
    const bool dropped = reading.event && reading.event->kind != EventFinding::Kind::Misread;
    const bool wasDrop = inForce == Judgement::DropConfirmed || inForce == Judgement::DropDenied;
    if (reading.event || reading.hitsSetAside > 0) {
        offered.insert(Judgement::Kept);
    }
    if (dropped || wasDrop) {
        offered.insert({Judgement::DropConfirmed, Judgement::DropDenied});
    } else if (!reading.isSetAside()) {
        offered.insert(Judgement::SetAside);
    }
    if (inForce != Judgement::LeftToModel) {
        offered.erase(inForce);
        offered.insert(Judgement::LeftToModel);
    }
    return offered;
}

} // namespace

ReviewDecisions::ReviewDecisions(QWidget* parent)
    : QWidget(parent) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    add(Judgement::SetAside, tr("Set as&ide…"), tr("Leave this reading out of the estimate"));
    add(Judgement::Kept, tr("&Keep…"), tr("Let this reading count as it stands"));
    add(Judgement::DropConfirmed, tr("It &dropped…"),
        tr("Tested again: the spring lost that much at once"));
    add(Judgement::DropDenied, tr("&No drop…"), tr("Tested again: the reading was wrong"));
    add(Judgement::LeftToModel, tr("&Take back…"), tr("Let the trend decide about this reading"));
    row->addStretch();
}

void ReviewDecisions::add(Judgement judgement, const QString& text, const QString& explanation) {
    auto* button = new QPushButton(text, this);
    button->setToolTip(explanation);
    button->setAccessibleDescription(explanation);
    button->hide();
    layout()->addWidget(button);
    connect(button, &QPushButton::clicked, this, [this, judgement] { Q_EMIT decided(judgement); });
    m_buttons.emplace(judgement, button);
}

void ReviewDecisions::offer(const LossChart::Point& reading, Judgement inForce) {
    const std::set<Judgement> offered = sensible(reading, inForce);
    for (const auto& [judgement, button] : m_buttons) {
        button->setVisible(offered.count(judgement) > 0);
    }
}

void ReviewDecisions::offerNothing() {
    for (const auto& [judgement, button] : m_buttons) {
        button->hide();
    }
}

QPushButton* ReviewDecisions::button(Judgement judgement) const {
    QPushButton* button = m_buttons.at(judgement);
    return button->isHidden() ? nullptr : button;
}

} // namespace coilbook
