#pragma once

#include "core/domain/engine_log.h"
#include "core/services/round_order.h"
#include "core/services/round_start.h"
#include "core/support/error.h"

#include <QWidget>

#include <memory>
#include <optional>

class QComboBox;
class QDateEdit;
class QGridLayout;
class QLabel;
class QLineEdit;
class QPushButton;
class QSpinBox;

namespace coilbook {

/// What the form holds when its user goes on.
struct BenchStart {
    RoundFacts facts;
    QString newTester; ///< name of a tester to be added first; empty: the one in `facts`
    RoundOrder order = RoundOrder::ByBank;
    std::optional<Place> only; ///< a quick test of one spring
};

/// Starts an inspection: asks in place, says in one sentence beside the field what is wrong with
/// it, and loses nothing that was filled in.
class BenchStartForm : public QWidget {
    Q_OBJECT
public:
    explicit BenchStartForm(QWidget* parent = nullptr);

    /// Fills the form with what is known of the engine.
    void prefill(const EngineLog& log, const QDate& today, const QString& person, RoundOrder order);
    /// A newer log of the same engine: what was filled in stays.
    void adopt(const EngineLog& log);

    /// A sentence at the top, e.g. what became of the round before.
    void tell(const QString& sentence);
    /// Offers to go on with a round that was left open; empty: there is none.
    void offerOpen(const QString& round);
    /// Offers to go on with the inspection of that day and count, which is there already.
    void offerExisting(const QString& inspection);
    /// Beside the field it concerns, or at the foot.
    void showError(const Error& error, const QString& sentence);
    void setSaving(bool saving);

    void takeFocus();

Q_SIGNALS:
    void startAsked(const coilbook::BenchStart& start);
    void existingAsked(const coilbook::BenchStart& start);
    void openAsked(coilbook::RoundOrder order);

private:
    QLabel* addRow(QGridLayout* grid, const QString& name, QWidget* field);
    void listTesters(const EngineLog& log);
    void clearErrors();
    /// Warns, beside the fields, of an overdue calibration and of a temperature that will be
    /// missed.
    void advise();
    [[nodiscard]] const Tester* chosenTester() const;
    [[nodiscard]] std::optional<BenchStart> filledIn(bool quick);
    void start(bool quick);
    void forgetOffer();

    QLabel* m_title;
    QLabel* m_sentence;
    QPushButton* m_open;
    QDateEdit* m_on;
    QLabel* m_onError;
    QSpinBox* m_races;
    QLabel* m_racesError;
    QComboBox* m_tester;
    QLabel* m_testerError;
    QLineEdit* m_inspector;
    QLineEdit* m_temperature;
    QLabel* m_temperatureError;
    QComboBox* m_order;
    QLabel* m_offer;
    QPushButton* m_existing;
    QPushButton* m_start;
    QComboBox* m_place;
    QPushButton* m_quick;
    std::vector<Tester> m_testers;
    std::vector<Calibration> m_calibrations;
    bool m_correctsTemperature = false;
    bool m_existingQuick = false;
};

} // namespace coilbook
