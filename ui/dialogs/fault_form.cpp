#include "ui/dialogs/fault_form.h"

#include "ui/drawing/scheme.h"

#include <QFormLayout>
#include <QLabel>
#include <QVBoxLayout>

#include <algorithm>

namespace coilbook {

FaultForm::FaultForm(QWidget* parent)
    : QWidget(parent)
    , m_rows(new QFormLayout) {
    m_rows->setFieldGrowthPolicy(QFormLayout::ExpandingFieldsGrow);
    m_rows->setRowWrapPolicy(QFormLayout::WrapLongRows);
    auto* column = new QVBoxLayout(this);
    column->addLayout(m_rows);
    m_foot.fault = makeFaultLabel();
    column->addWidget(m_foot.fault);
    column->addStretch();
}

QLabel* FaultForm::makeFaultLabel() {
    auto* label = new QLabel(this);
    label->setTextFormat(Qt::PlainText);
    label->setWordWrap(true);
    label->hide();
    return label;
}

void FaultForm::addField(const QString& label, QWidget* field) {
    Row row{field, makeFaultLabel()};
    auto* column = new QVBoxLayout;
    column->setSpacing(0);
    column->addWidget(field);
    column->addWidget(row.fault);
    auto* name = new QLabel(label, this);
    name->setBuddy(field);
    field->setAccessibleName(QString(label).remove(QLatin1Char('&')));
    m_rows->addRow(name, column);
    m_fields.push_back(row);
}

void FaultForm::addAdvice(const QString& text) {
    auto* advice = new QLabel(text, this);
    advice->setTextFormat(Qt::PlainText);
    advice->setWordWrap(true);
    m_rows->addRow(advice);
}

bool FaultForm::owns(const QWidget* field) const {
    return std::any_of(m_fields.begin(), m_fields.end(),
                       [field](const Row& row) { return row.field == field; });
}

void FaultForm::showFault(QWidget* field, const QString& sentence) {
    const auto found = std::find_if(m_fields.begin(), m_fields.end(),
                                    [field](const Row& row) { return row.field == field; });
    QLabel* label = found != m_fields.end() ? found->fault : m_foot.fault;
    QPalette colours = palette();
    colours.setColor(QPalette::WindowText, schemeFor(colours).pastLimit);
    label->setPalette(colours);
    label->setText(sentence);
    label->show();
    if (field != nullptr) {
        field->setFocus();
        field->setAccessibleDescription(sentence);
    }
}

void FaultForm::clearFaults() {
    for (const Row& row : m_fields) {
        row.fault->clear();
        row.fault->hide();
        row.field->setAccessibleDescription({});
    }
    m_foot.fault->clear();
    m_foot.fault->hide();
}

QString FaultForm::faults() const {
    QStringList sentences;
    for (const Row& row : m_fields) {
        sentences << row.fault->text();
    }
    sentences << m_foot.fault->text();
    sentences.removeAll(QString());
    return sentences.join(QLatin1Char('\n'));
}

} // namespace coilbook
