#pragma once

#include "core/assessment/loss_chart.h"
#include "core/domain/decision.h"

#include <QWidget>

#include <map>

class QPushButton;

namespace coilbook {

/// The user's say about the reading in view: one button for each that makes sense there.
class ReviewDecisions : public QWidget {
    Q_OBJECT
public:
    explicit ReviewDecisions(QWidget* parent = nullptr);

    /// What can be said of this reading; `inForce` is what was said already.
    void offer(const LossChart::Point& reading, ReadingJudgement inForce);
    void offerNothing();

    /// Null: not offered now.
    [[nodiscard]] QPushButton* button(ReadingJudgement judgement) const;

Q_SIGNALS:
    void decided(coilbook::ReadingJudgement judgement);

private:
    void add(ReadingJudgement judgement, const QString& text, const QString& explanation);

    std::map<ReadingJudgement, QPushButton*> m_buttons;
};

} // namespace coilbook
