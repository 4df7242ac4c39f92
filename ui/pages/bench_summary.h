#pragma once

#include "core/services/round_closing.h"
#include "core/wording/quantities.h"

#include <QWidget>

class QLabel;
class QPushButton;

namespace coilbook {

class BenchMessage;
class LargeLabel;

/// What is worth knowing before a round is closed, in the place of the reading.
class BenchSummary : public QWidget {
    Q_OBJECT
public:
    explicit BenchSummary(QWidget* parent = nullptr);

    void showRound(const Round& round, const RoundClosing& closing, const JudgingRules& rules,
                   const Quantities& quantities);
    void hint();
    /// Enter closes the round from here on.
    void takeFocus();

    [[nodiscard]] BenchMessage& message() const { return *m_message; }

    [[nodiscard]] QString text() const;

Q_SIGNALS:
    void closeAsked();
    void backAsked();    ///< to the springs
    void retestsAsked(); ///< of the short list

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    LargeLabel* m_count;
    QLabel* m_lines;
    BenchMessage* m_message;
    QPushButton* m_close;
    QPushButton* m_back;
    QPushButton* m_again;
};

} // namespace coilbook
