#pragma once

#include "core/domain/engine.h"
#include "core/support/result.h"
#include "ui/dialogs/fault_form.h"

#include <vector>

class QCheckBox;
class QComboBox;
class QLabel;
class QLineEdit;
class QSpinBox;

namespace coilbook {

class Preferences;
class QuantityField;
class WholeNumberField;

/// Name, seal and judging rules of an engine.
class EngineFactsForm : public FaultForm {
    Q_OBJECT
public:
    explicit EngineFactsForm(const Preferences& preferences, QWidget* parent = nullptr);

    void setEngine(const Engine& engine);

    /// Says of which races laps are missing, should wear go by laps: their numbers.
    void tellLapsMissing(const std::vector<int>& races);

    /// Puts what is typed into `engine`. False when something does not hold; the form says what.
    [[nodiscard]] bool readInto(Engine& engine);

    /// The field that a refusal of the logbook is about; null when none of this form.
    [[nodiscard]] QWidget* fieldAt(LogbookFault fault) const;

private:
    QLineEdit* m_name;
    QLineEdit* m_serial;
    QuantityField* m_limit;
    QSpinBox* m_racesAhead;
    QComboBox* m_caution;
    WholeNumberField* m_rpmCeiling;
    QCheckBox* m_springsRunIn;
    QCheckBox* m_correctsTemperature;
    QComboBox* m_exposure;
    QLabel* m_lapsMissing;
};

} // namespace coilbook
