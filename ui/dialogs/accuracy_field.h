#pragma once

#include "core/domain/tester_accuracy.h"

#include <QWidget>

#include <optional>

class QComboBox;
class QLineEdit;

namespace coilbook {

/// How far a tester may be off: a grade, a percentage of span or reading, or a force; or nothing.
class AccuracyField : public QWidget {
    Q_OBJECT
public:
    explicit AccuracyField(QWidget* parent = nullptr);

    void setAccuracy(const std::optional<TesterAccuracy>& accuracy);

    /// Empty where nothing is chosen or the figure is at fault.
    [[nodiscard]] std::optional<TesterAccuracy> accuracy() const;

    /// A percentage or a force is chosen, and the figure is none.
    [[nodiscard]] bool isFault() const;

Q_SIGNALS:
    void edited();

private:
    void onKind();

    QComboBox* m_kind;
    QLineEdit* m_figure;
};

} // namespace coilbook
