#pragma once

#include "core/domain/changes.h"
#include "core/services/round_order.h"
#include "core/support/result.h"

#include <QWidget>

#include <functional>
#include <optional>

class QLabel;
class QStackedLayout;

namespace coilbook {

class BenchRound;
class BenchStartForm;
class LogbookSession;
class Preferences;
struct BenchStart;
struct EngineLog;

/// The place where readings are entered: says what to do while there is nothing to do it with,
/// starts an inspection, and then shows its round.
class BenchPage : public QWidget {
    Q_OBJECT
public:
    /// Both must outlive the page.
    BenchPage(LogbookSession& session, Preferences& preferences, QWidget* parent = nullptr);

    [[nodiscard]] BenchRound& round() const { return *m_round; }

    [[nodiscard]] BenchStartForm& form() const { return *m_form; }

    [[nodiscard]] bool showsRound() const;

    [[nodiscard]] bool showsForm() const;

    [[nodiscard]] QString emptyText() const;

protected:
    void showEvent(QShowEvent* event) override;

private:
    using Then = std::function<void()>;

    void onLogChanged();
    void loadEngine(const EngineLog& log);
    void showForm(const QString& sentence);
    void showEmpty(const QString& sentence);
    void start(const BenchStart& start);
    void startNew(const BenchStart& start);
    void goOn(const BenchStart& start);
    void resumeOpen(RoundOrder order);
    /// Adds the tester that was typed, if it is new, then goes on.
    void withTester(const BenchStart& start, std::function<void(const BenchStart&)> then);
    void applyThen(const Change& change, const Then& then);
    void begin(const InspectionId& inspection, RoundOrder order, std::optional<Place> only);
    void takeFocus();

    LogbookSession& m_session;
    Preferences& m_preferences;
    QStackedLayout* m_stack;
    QLabel* m_empty;
    BenchStartForm* m_form;
    BenchRound* m_round;
    EngineId m_engine; ///< whose form or round is shown
};

} // namespace coilbook
