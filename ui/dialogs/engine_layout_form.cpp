#include "ui/dialogs/engine_layout_form.h"

#include "core/wording/wording.h"
#include "ui/dialogs/layout_text.h"
#include "ui/drawing/scheme.h"
#include "ui/widgets/engine_plan.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPainter>
#include <QPlainTextEdit>
#include <QVBoxLayout>

namespace coilbook {

namespace {

/// Two banks whose cylinders take the numbers given, front to rear, exhaust and intake in turns.
QString banksText(std::initializer_list<int> left, std::initializer_list<int> right) {
    const auto bank = [](const QString& name, std::initializer_list<int> cylinders) {
        QStringList words;
        bool exhaustFirst = true;
        for (const int number : cylinders) {
            const QString pair =
                exhaustFirst ? QStringLiteral("%1E %1I") : QStringLiteral("%1I %1E");
            words << pair.arg(number);
            exhaustFirst = !exhaustFirst;
        }
        return QStringLiteral("%1: %2").arg(name, words.join(QLatin1Char(' ')));
    };
    return bank(EngineLayoutForm::tr("Left"), left) + QLatin1Char('\n') +
           bank(EngineLayoutForm::tr("Right"), right);
}

void paintPlace(QPainter& painter, const EnginePlan::Cell& cell, const Scheme& scheme) {
    painter.setPen(scheme.text);
    painter.drawText(cell.area, Qt::AlignCenter, placeText(cell.place));
}

} // namespace

EngineLayoutForm::EngineLayoutForm(QWidget* parent)
    : QWidget(parent)
    , m_numbering(new QComboBox(this))
    , m_banks(new QPlainTextEdit(this))
    , m_firingOrder(new QLineEdit(this))
    , m_fault(new QLabel(this))
    , m_plan(new EnginePlan(this)) {
    m_banks->setObjectName(QStringLiteral("banks"));
    m_firingOrder->setObjectName(QStringLiteral("firingOrder"));
    m_numbering->addItem(tr("As written below"));
    m_numbering->addItem(tr("Odd on the left, even on the right"),
                         banksText({1, 3, 5, 7}, {2, 4, 6, 8}));
    m_numbering->addItem(tr("1 to 4 on the left, 5 to 8 on the right"),
                         banksText({1, 2, 3, 4}, {5, 6, 7, 8}));
    m_numbering->addItem(tr("1 to 4 on the right, 5 to 8 on the left"),
                         banksText({5, 6, 7, 8}, {1, 2, 3, 4}));
    m_banks->setTabChangesFocus(true);
    m_banks->setLineWrapMode(QPlainTextEdit::NoWrap);
    m_banks->setFixedHeight(m_banks->fontMetrics().lineSpacing() * 4);
    m_fault->setTextFormat(Qt::PlainText);
    m_fault->setWordWrap(true);
    m_plan->setCellPainter(paintPlace);
    m_plan->setLargestCell(
        QSizeF(fontMetrics().averageCharWidth() * 10.0, fontMetrics().lineSpacing() * 1.6));
    m_plan->setMinimumHeight(fontMetrics().lineSpacing() * 16); // enough for such cells
    m_plan->setFocusPolicy(Qt::NoFocus);

    auto* advice = new QLabel(tr("Seen from above with the front at the top. One bank a line, left "
                                 "to right; its springs from front to rear, I for intake and E for "
                                 "exhaust. Go by the engine builder's data."),
                              this);
    advice->setTextFormat(Qt::PlainText);
    advice->setWordWrap(true);
    auto* written = new QVBoxLayout;
    const auto add = [&](const QString& label, QWidget* field) {
        auto* name = new QLabel(label, this);
        name->setBuddy(field);
        written->addWidget(name);
        written->addWidget(field);
    };
    written->addWidget(advice);
    add(tr("&Numbering of the cylinders"), m_numbering);
    add(tr("&Banks"), m_banks);
    add(tr("&Firing order"), m_firingOrder);
    written->addWidget(m_fault);
    written->addStretch();
    auto* row = new QHBoxLayout(this);
    row->addLayout(written, 3);
    row->addWidget(m_plan, 2);

    connect(m_numbering, &QComboBox::activated, this, &EngineLayoutForm::takeNumbering);
    connect(m_banks, &QPlainTextEdit::textChanged, this, &EngineLayoutForm::check);
    connect(m_firingOrder, &QLineEdit::textChanged, this, &EngineLayoutForm::check);
    setLayoutOf(defaultLayout());
}

void EngineLayoutForm::setLayoutOf(const EngineLayout& layout) {
    const LayoutText text = writeLayout(layout);
    m_firingOrder->setText(text.firingOrder);
    m_banks->setPlainText(text.banks);
}

Result<EngineLayout> EngineLayoutForm::layoutNow() const {
    return readLayout({m_banks->toPlainText(), m_firingOrder->text()});
}

void EngineLayoutForm::showFault(const QString& sentence) {
    QPalette colours = palette();
    colours.setColor(QPalette::WindowText, schemeFor(colours).pastLimit);
    m_fault->setPalette(colours);
    m_fault->setText(sentence);
}

void EngineLayoutForm::takeNumbering(int index) {
    const QString banks = m_numbering->itemData(index).toString();
    if (!banks.isEmpty()) {
        m_banks->setPlainText(banks);
    }
}

void EngineLayoutForm::check() {
    const int known = m_numbering->findData(m_banks->toPlainText());
    m_numbering->setCurrentIndex(std::max(known, 0));
    const Result<EngineLayout> layout = layoutNow();
    if (!layout) {
        showFault(wording::sentence(layout.error()));
        return;
    }
    m_fault->setPalette(palette());
    const int cylinders = layout->cylinders();
    m_fault->setText(cylinders == 1 ? tr("1 cylinder, all springs placed.")
                                    : tr("%n cylinders, all springs placed.", nullptr, cylinders));
    if (*layout != m_shown) {
        m_shown = *layout;
        m_plan->setEngine(m_shown);
        Q_EMIT layoutChanged(m_shown);
    }
}

} // namespace coilbook
