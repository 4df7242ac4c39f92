#pragma once

#include "core/services/spare_match.h"
#include "core/services/swap.h"
#include "ui/preferences.h"

#include <QDialog>

#include <memory>
#include <vector>

class QComboBox;
class QLabel;
class QLineEdit;
class QPushButton;
class QSpinBox;

namespace coilbook {

class DateField;
class FaultForm;

/// Asks what a swap needs and hands it over as a change. Says what is wrong under the field where
/// it is wrong; whoever shows the dialog puts the change on the disk and closes it then.
class SwapDialog : public QDialog {
    Q_OBJECT
public:
    /// `clock` and `preferences` must outlive the dialog.
    SwapDialog(std::shared_ptr<const EngineLog> log, const Place& place,
               const Preferences& preferences, const Clock& clock, QWidget* parent = nullptr);

    /// The change could not be put on the disk; what was typed stays.
    void showFailure(const QString& sentence);

    /// All sentences about faults shown now.
    [[nodiscard]] QString faults() const;

Q_SIGNALS:
    void swapReady(const coilbook::FitSpring& swap);

private:
    void fillIn(const SwapPrefill& prefill);
    void onLabel();
    /// What a spare is offered as: its label, how far it lies from the set, its height and races.
    [[nodiscard]] QString offerOf(const SpareProposal& spare) const;
    void record();
    void growToFit();
    [[nodiscard]] SwapEntry entry() const;
    [[nodiscard]] QWidget* fieldOf(SwapField field) const;

    std::shared_ptr<const EngineLog> m_log;
    Place m_place;
    const Preferences& m_preferences;
    const Clock& m_clock;
    std::vector<SpareProposal> m_shelf; ///< those that match the set best first

    FaultForm* m_form;
    QComboBox* m_label;
    QLabel* m_match;
    QLineEdit* m_part;
    QLineEdit* m_batch;
    DateField* m_date;
    QSpinBox* m_races;
    QLineEdit* m_baseline;
    QComboBox* m_tester;
    QLineEdit* m_reason;
    QComboBox* m_outgoing; ///< where the spring goes that comes out
    QPushButton* m_record;
};

} // namespace coilbook
