#pragma once

#include "core/domain/engine_layout.h"
#include "core/support/result.h"

#include <QWidget>

class QComboBox;
class QLabel;
class QLineEdit;
class QPlainTextEdit;

namespace coilbook {

class EnginePlan;
struct LayoutText;

/// How an engine is laid out, written down and drawn beside it as one types.
class EngineLayoutForm : public QWidget {
    Q_OBJECT
public:
    explicit EngineLayoutForm(QWidget* parent = nullptr);

    void setLayoutOf(const EngineLayout& layout);

    /// What is written, checked.
    [[nodiscard]] Result<EngineLayout> layoutNow() const;

    void showFault(const QString& sentence);

Q_SIGNALS:
    /// What is written holds again, and is another layout than before.
    void layoutChanged(const coilbook::EngineLayout& layout);

private:
    void takeScheme(int index);
    [[nodiscard]] LayoutText writtenNow() const;
    void check();

    QComboBox* m_scheme;
    QPlainTextEdit* m_banks;
    QLineEdit* m_firingOrder;
    QLineEdit* m_intervals;
    QLineEdit* m_ownRound;
    QLabel* m_fault;
    EnginePlan* m_plan;
    EngineLayout m_shown;
};

} // namespace coilbook
