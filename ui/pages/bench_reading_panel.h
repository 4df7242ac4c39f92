#pragma once

#include "core/domain/engine.h"
#include "core/services/round_verdict.h"
#include "core/wording/quantities.h"
#include "ui/pages/bench_words.h"

#include <QWidget>

#include <optional>

class QLabel;
class QLineEdit;
class QPushButton;
class QStackedWidget;

namespace coilbook {

class BenchCorrectionBar;
class BenchHits;
class BenchMessage;
class BenchVerdict;
class LargeLabel;
class ReadingField;

/// The spring in work, to be read from two metres: its place, the value being typed and the
/// verdict, then what was read before. Shows and asks; BenchRound decides.
class BenchReadingPanel : public QWidget {
    Q_OBJECT
public:
    explicit BenchReadingPanel(QWidget* parent = nullptr);

    /// `progress` such as "5 of 16 tested". Leaves what is typed alone.
    void showStop(const RoundStop& stop, const QString& progress, const Quantities& quantities);
    void judge(const std::optional<RoundVerdict>& verdict, const JudgingRules& rules,
               const Quantities& quantities);
    /// What to do with the crank before this spring is tested.
    void tellCrank(const QString& sentence);
    /// The band in which the reading is expected; may be empty.
    void tellExpected(const QString& text);
    /// What the text in the field is against that band; may be empty.
    void tellJudgement(const BenchJudgement& judgement);
    /// What the trend says beside the measured loss; may be empty.
    void tellTrend(const QString& text);
    void setUnit(ForceUnit unit);
    void setRetest(bool retest);
    void setQuickTest(bool quick);

    /// Shows the hits, and the bar that asks for a reason while one is chosen.
    void showHits(const RoundStop& stop, std::optional<std::size_t> chosen);

    [[nodiscard]] ReadingField& field() const { return *m_field; }

    [[nodiscard]] QLineEdit& springLabel() const { return *m_springLabel; }

    [[nodiscard]] BenchMessage& message() const { return *m_message; }

    [[nodiscard]] BenchCorrectionBar& correction() const { return *m_correction; }

    [[nodiscard]] QString placeText() const;
    [[nodiscard]] QString verdictText() const;
    [[nodiscard]] QString trendText() const;
    [[nodiscard]] QString beforeText() const;
    [[nodiscard]] QString previousText() const;
    [[nodiscard]] QString expectedText() const;
    [[nodiscard]] QString judgementText() const;
    [[nodiscard]] QString crankText() const;
    [[nodiscard]] QString hitsText() const;

Q_SIGNALS:
    void hitChosen(std::size_t index);
    void finishAsked();
    void leaveAsked();

protected:
    void changeEvent(QEvent* event) override;

private:
    QWidget* makeHeader();
    QWidget* makeValueRow();
    QWidget* makeButtons();
    QPushButton* makeButton(const QString& text);
    void mute();

    LargeLabel* m_place;
    QLabel* m_placeWords;
    QLabel* m_crank;
    QLineEdit* m_springLabel;
    QLabel* m_progress;
    ReadingField* m_field;
    LargeLabel* m_unit;
    LargeLabel* m_previous;
    LargeLabel* m_expected;
    LargeLabel* m_judgement;
    JudgementTone m_tone = JudgementTone::Calm;
    BenchVerdict* m_verdict;
    QLabel* m_trend;
    QLabel* m_before;
    BenchHits* m_hits;
    BenchMessage* m_message;
    QStackedWidget* m_foot;
    BenchCorrectionBar* m_correction;
    QPushButton* m_retest = nullptr;
    QPushButton* m_skip = nullptr;
    QPushButton* m_finish = nullptr;
    QPushButton* m_leave = nullptr;
};

} // namespace coilbook
