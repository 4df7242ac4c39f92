#pragma once

#include "core/services/round_verdict.h"
#include "core/wording/quantities.h"
#include "ui/drawing/standing_mark.h"

#include <QWidget>

#include <optional>

namespace coilbook {

class LargeLabel;

/// The verdict on a spring by measurement: our mark, the loss, and its words, large.
class BenchVerdict : public QWidget {
    Q_OBJECT
public:
    explicit BenchVerdict(QWidget* parent = nullptr);

    void judge(const std::optional<RoundVerdict>& verdict, const JudgingRules& rules,
               const Quantities& quantities);

    /// Loss and words in one line, for tests and screen readers.
    [[nodiscard]] QString text() const;

protected:
    void paintEvent(QPaintEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    void colour();

    LargeLabel* m_loss;
    LargeLabel* m_words;
    QWidget* m_markPlace;
    std::optional<StandingMark> m_mark;
};

} // namespace coilbook
