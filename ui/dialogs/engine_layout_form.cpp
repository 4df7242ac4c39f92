#include "ui/dialogs/engine_layout_form.h"

#include "core/domain/layout_schemes.h"
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

QString numberingWords(V8Numbering numbering) {
    switch (numbering) {
    case V8Numbering::OddLeft:
        return EngineLayoutForm::tr("Odd left, even right");
    case V8Numbering::FirstRight:
        return EngineLayoutForm::tr("1\u20134 right, 5\u20138 left");
    case V8Numbering::FirstLeft:
        return EngineLayoutForm::tr("1\u20134 left, 5\u20138 right");
    }
    Q_UNREACHABLE();
}

QString schemeWords(const LayoutScheme& scheme) {
    const QString fires =
        writeLayout(scheme.layout).firingOrder.replace(QLatin1Char(' '), QLatin1Char('-'));
    return (scheme.crank == CrankKind::FlatPlane
                ? EngineLayoutForm::tr("%1; flat-plane crank, %2", "numbering; firing order")
                : EngineLayoutForm::tr("%1; cross-plane crank, %2", "numbering; firing order"))
        .arg(numberingWords(scheme.numbering), fires);
}

void paintPlace(QPainter& painter, const EnginePlan::Cell& cell, const Scheme& scheme) {
    painter.setPen(scheme.text);
    painter.drawText(cell.area, Qt::AlignCenter, placeText(cell.place));
}

} // namespace

EngineLayoutForm::EngineLayoutForm(QWidget* parent)
    : QWidget(parent)
    , m_scheme(new QComboBox(this))
    , m_banks(new QPlainTextEdit(this))
    , m_firingOrder(new QLineEdit(this))
    , m_intervals(new QLineEdit(this))
    , m_ownRound(new QLineEdit(this))
    , m_fault(new QLabel(this))
    , m_plan(new EnginePlan(this)) {
    m_banks->setObjectName(QStringLiteral("banks"));
    m_firingOrder->setObjectName(QStringLiteral("firingOrder"));
    m_scheme->setObjectName(QStringLiteral("scheme"));
    m_intervals->setObjectName(QStringLiteral("intervals"));
    m_ownRound->setObjectName(QStringLiteral("ownRound"));
    m_scheme->addItem(tr("As written below"));
    for (const LayoutScheme& scheme : v8Schemes()) {
        m_scheme->addItem(schemeWords(scheme));
    }
    m_scheme->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    m_scheme->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    m_intervals->setPlaceholderText(tr("empty: even"));
    m_ownRound->setPlaceholderText(tr("1E 1I 3I \u2026, or empty"));
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
    const auto add = [&](QVBoxLayout* column, const QString& label, QWidget* field) {
        auto* name = new QLabel(label, this);
        name->setBuddy(field);
        column->addWidget(name);
        column->addWidget(field);
    };
    written->addWidget(advice);
    add(written, tr("Engines of &eight cylinders"), m_scheme);
    add(written, tr("&Banks"), m_banks);
    auto* order = new QVBoxLayout;
    add(order, tr("&Firing order"), m_firingOrder);
    auto* degrees = new QVBoxLayout;
    add(degrees, tr("&Degrees to the next firing"), m_intervals);
    auto* firing = new QHBoxLayout;
    firing->addLayout(order);
    firing->addLayout(degrees);
    written->addLayout(firing);
    add(written, tr("Own order of the &round"), m_ownRound);
    written->addWidget(m_fault);
    written->addStretch();
    auto* row = new QHBoxLayout(this);
    row->addLayout(written, 3);
    row->addWidget(m_plan, 2);

    connect(m_scheme, &QComboBox::activated, this, &EngineLayoutForm::takeScheme);
    connect(m_banks, &QPlainTextEdit::textChanged, this, &EngineLayoutForm::check);
    for (QLineEdit* field : {m_firingOrder, m_intervals, m_ownRound}) {
        connect(field, &QLineEdit::textChanged, this, &EngineLayoutForm::check);
    }
    setLayoutOf(defaultLayout());
}

void EngineLayoutForm::setLayoutOf(const EngineLayout& layout) {
    const LayoutText text = writeLayout(layout);
    m_firingOrder->setText(text.firingOrder);
    m_intervals->setText(text.intervals);
    m_ownRound->setText(text.ownRound);
    m_banks->setPlainText(text.banks);
}

LayoutText EngineLayoutForm::writtenNow() const {
    return {m_banks->toPlainText(), m_firingOrder->text(), m_intervals->text(), m_ownRound->text()};
}

Result<EngineLayout> EngineLayoutForm::layoutNow() const {
    return readLayout(writtenNow());
}

void EngineLayoutForm::showFault(const QString& sentence) {
    QPalette colours = palette();
    colours.setColor(QPalette::WindowText, schemeFor(colours).pastLimit);
    m_fault->setPalette(colours);
    m_fault->setText(sentence);
}

void EngineLayoutForm::takeScheme(int index) {
    if (index > 0) {
        const EngineLayout& chosen = v8Schemes().at(static_cast<std::size_t>(index) - 1).layout;
        const LayoutText text = writeLayout(chosen);
        m_intervals->clear();
        m_firingOrder->setText(text.firingOrder);
        m_banks->setPlainText(text.banks);
    }
}

void EngineLayoutForm::check() {
    const LayoutText now = writtenNow();
    int known = 0;
    for (std::size_t i = 0; i < v8Schemes().size(); ++i) {
        const LayoutText text = writeLayout(v8Schemes()[i].layout);
        if (now.banks == text.banks && now.firingOrder == text.firingOrder &&
            now.intervals.isEmpty()) {
            known = static_cast<int>(i) + 1;
        }
    }
    m_scheme->setCurrentIndex(known);
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
