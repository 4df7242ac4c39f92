#pragma once

#include "core/assessment/spring_lives.h"

#include <QWidget>

#include <vector>

namespace coilbook {

/// The share of the springs of each group that have not reached the limit, against the races run:
/// one step curve a group, told apart by dash and label, ticks where springs were seen last, and
/// the likely range of the chosen group as a band.
class SurvivalChart : public QWidget {
    Q_OBJECT
public:
    explicit SurvivalChart(QWidget* parent = nullptr);

    void showGroups(const std::vector<LifeGroup>& groups, std::size_t chosen);

    [[nodiscard]] QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    [[nodiscard]] double lastRace() const;

    std::vector<LifeGroup> m_groups;
    std::size_t m_chosen = 0;
};

} // namespace coilbook
