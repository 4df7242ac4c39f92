#include "ui/pages/bench_correction_bar.h"

#include "ui/widgets/follow_font.h"

#include <QComboBox>
#include <QGridLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

namespace coilbook {

BenchCorrectionBar::BenchCorrectionBar(QWidget* parent)
    : QWidget(parent)
    , m_title(new QLabel)
    , m_reason(new QComboBox)
    , m_keep(new QPushButton(tr("Keep the correction  (Enter)")))
    , m_withdraw(new QPushButton(tr("Withdraw this hit"))) {
    m_reason->setEditable(true);
    m_reason->setInsertPolicy(QComboBox::NoInsert);
    m_reason->setCompleter(nullptr); // what is typed is what counts
    m_reason->addItems(
        {tr("Slip while typing"), tr("Gauge misread"), tr("Another spring was on the tester")});
    m_reason->setAccessibleName(tr("Reason of the amendment"));
    m_reason->lineEdit()->setPlaceholderText(tr("Why? (arrow keys choose)"));
    keepTargetHeight(*m_reason);
    m_reason->installEventFilter(this);
    auto* cancel = new QPushButton(tr("Leave as it is  (Esc)"));
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->addWidget(m_title, 0, 0);
    grid->addWidget(m_reason, 0, 1, 1, 2);
    grid->addWidget(m_keep, 1, 0);
    grid->addWidget(m_withdraw, 1, 1);
    grid->addWidget(cancel, 1, 2);
    for (QPushButton* button : {m_keep, m_withdraw, cancel}) {
        keepTarget(*button);
        button->setFocusPolicy(Qt::NoFocus);
    }
    connect(m_keep, &QPushButton::clicked, this, &BenchCorrectionBar::correctionGiven);
    connect(m_withdraw, &QPushButton::clicked, this, &BenchCorrectionBar::withdrawalGiven);
    connect(cancel, &QPushButton::clicked, this, &BenchCorrectionBar::cancelled);
}

void BenchCorrectionBar::ask(const QString& hit) {
    m_title->setText(tr("Amending %1. Reason:").arg(hit));
    m_reason->setCurrentIndex(-1);
    m_reason->clearEditText();
}

void BenchCorrectionBar::focusReason() {
    m_reason->setFocus(Qt::OtherFocusReason);
}

QString BenchCorrectionBar::reason() const {
    return m_reason->currentText();
}

bool BenchCorrectionBar::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::KeyPress) {
        const int key = static_cast<QKeyEvent*>(event)->key();
        if (key == Qt::Key_Return || key == Qt::Key_Enter) {
            Q_EMIT correctionGiven();
            return true;
        }
        if (key == Qt::Key_Escape) {
            Q_EMIT cancelled();
            return true;
        }
    }
    return QWidget::eventFilter(watched, event);
}

} // namespace coilbook
