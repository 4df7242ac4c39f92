#pragma once

#include <QString>
#include <QWidget>

#include <vector>

class QFormLayout;
class QLabel;

namespace coilbook {

/// A form of labelled fields that says what is wrong right under the field where it is wrong.
class FaultForm : public QWidget {
    Q_OBJECT
public:
    explicit FaultForm(QWidget* parent = nullptr);

    /// Adds a row; takes the field over. The label gets the field as its buddy.
    void addField(const QString& label, QWidget* field);
    /// A line of plain advice across the form.
    void addAdvice(const QString& text);

    /// Shows the sentence under the field and puts the cursor there. Without a field, or with one
    /// of another form, it stands at the foot.
    void showFault(QWidget* field, const QString& sentence);
    void clearFaults();

    [[nodiscard]] bool owns(const QWidget* field) const;
    /// All sentences shown now, top to bottom, one a line.
    [[nodiscard]] QString faults() const;

private:
    struct Row {
        QWidget* field = nullptr; ///< null: the foot of the form
        QLabel* fault = nullptr;
    };

    QLabel* makeFaultLabel();

    QFormLayout* m_rows;
    std::vector<Row> m_fields;
    Row m_foot;
};

} // namespace coilbook
