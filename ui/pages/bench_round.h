#pragma once

#include "core/domain/changes.h"
#include "core/services/live_reading.h"
#include "core/services/round_closing.h"
#include "core/services/round_records.h"
#include "core/services/typed_judgement.h"
#include "core/support/result.h"

#include <QElapsedTimer>
#include <QTimer>
#include <QWidget>

#include <map>
#include <optional>

class QStackedWidget;

namespace coilbook {

class BenchCautions;
class BenchReadingPanel;
class BenchRoundPlan;
class BenchSummary;
class LogbookSession;
class Preferences;

/// The round itself: goes from spring to spring, hands what is typed to the session, and shows a
/// reading as saved only when the session has said so. What is judged and which spring is next
/// comes from Round; nothing is decided here but the flow.
class BenchRound : public QWidget {
    Q_OBJECT
public:
    BenchRound(LogbookSession& session, Preferences& preferences, QWidget* parent = nullptr);
    ~BenchRound() override;

    /// Walks that inspection, which the session's log must hold. Begins where the draft was left,
    /// else at the first spring without a reading. `only`: a quick test of one place.
    void begin(const InspectionId& inspection, RoundOrder order, std::optional<Place> only);

    /// Takes up the session's newest log. False: it holds the inspection no longer.
    bool refresh();

    /// Forgets the round; what is typed has been kept as the draft.
    void end();

    [[nodiscard]] bool isActive() const { return m_round.has_value(); }

    [[nodiscard]] EngineId engine() const;

    [[nodiscard]] BenchReadingPanel& panel() const { return *m_panel; }

    [[nodiscard]] BenchSummary& summary() const { return *m_summary; }

    [[nodiscard]] bool showsSummary() const;

    /// Before the first spring: what to do before the crank is turned.
    [[nodiscard]] bool showsCautions() const;

    void takeFocus();

Q_SIGNALS:
    /// The round is over or was left; a sentence about it for the place that follows.
    void finished(const QString& sentence);
    /// What the trend says of the newest key stroke is on the screen.
    void trendTold();

protected:
    void hideEvent(QHideEvent* event) override;

private:
    /// A hit on its way to the disk. It is kept after a failure, so that the same text is saved
    /// again under the same ids.
    struct Pending {
        Place place;
        RoundEntry entry;
        RecordReadings record;
        bool stays = false; ///< a further hit at the same spring follows
        TypedJudgement judgement = TypedJudgement::NoBand;
        bool disagrees = false; ///< with the other hits of its spring
    };

    struct Amending {
        std::size_t hit = 0;
        QString typedBefore; ///< what stood in the field, to come back afterwards
    };

    [[nodiscard]] const RoundStop& stop() const { return m_round->stops()[m_index]; }

    [[nodiscard]] const JudgingRules& rules() const;

    [[nodiscard]] bool wasSaved(const Draft& draft) const;
    void connectPanel();
    void goTo(std::size_t index);
    void enter(std::size_t index);
    void step(int by);
    void skip();
    void showStop();
    void judge();
    void judgeText(const QString& text, ForceUnit unit);
    void askTrend(const std::optional<TypedForce>& typed);
    void tellTrend(const std::optional<LiveFigures>& figures);
    void warnOfRound();
    [[nodiscard]] std::optional<ForceEstimate> expected() const;
    [[nodiscard]] HitSpread spreadWith(const TypedForce& typed) const;
    [[nodiscard]] const Tester* testerInUse() const;
    void sound(bool accepted) const;
    void showSummary();
    void updateSummary();
    void toggleRetest();
    void setRetest(bool retest);

    void startRetests();
    void takeNextRetest();

    void commit(bool stays);
    [[nodiscard]] bool isSureOf(const QString& text, const TypedForce& value, bool stays);
    [[nodiscard]] QStringList doubtsAbout(const TypedForce& value, bool stays) const;
    [[nodiscard]] static QString adviceOn(const Pending& saved);
    void onRecorded(const Result<void>& result);
    [[nodiscard]] bool awaitedIsThere() const;
    void finishRecording();

    void amendNextHit();
    void chooseHit(std::size_t hit);
    void leaveAmending();
    void amend(bool withdraw);
    void onAmended(const Result<void>& result, const QString& sentence);
    [[nodiscard]] Authorship authorOf(const QString& why) const;

    void finish();
    void closeRound();
    void leave();
    void setSaving(bool saving);
    void onTyped();
    void saveDraft();

    LogbookSession& m_session;
    Preferences& m_preferences;
    QStackedWidget* m_stack;
    BenchCautions* m_cautions;
    BenchReadingPanel* m_panel;
    BenchSummary* m_summary;
    BenchRoundPlan* m_plan;
    LiveReading m_live;
    QTimer m_draftTimer;

    std::optional<Round> m_round;
    RoundOrder m_order = RoundOrder::ByBank;
    std::optional<Place> m_only;
    std::size_t m_index = 0;
    bool m_retest = false;
    bool m_saving = false;
    QString m_sureOf;                     ///< the text that has been asked about
    QElapsedTimer m_asked;                ///< since then
    std::optional<LiveFigures> m_figures; ///< of the spring at hand, as answered last
    std::optional<RoundCheck> m_check;    ///< of the round, as answered last
    std::optional<RoundReview> m_review;  ///< for the summary
    std::vector<Place> m_retests;         ///< still to be tested again, the next one first
    std::optional<Pending> m_pending;
    std::optional<ReadingId> m_awaited; ///< saved, and not in the log yet
    std::optional<Amending> m_amending;
    std::map<Place, QString> m_typed; ///< left in the field when walking on
    std::optional<Draft> m_draft;     ///< as kept last
};

} // namespace coilbook
