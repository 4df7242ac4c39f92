#include "ui/widgets/work_strip.h"

#include "ui/look/icons.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>

#include <algorithm>
#include <cmath>

namespace coilbook {

namespace {

constexpr int kSteps = 1000;

} // namespace

WorkStrip::WorkStrip(QWidget* parent)
    : QFrame(parent)
    , m_what(new QLabel(this))
    , m_bar(new QProgressBar(this)) {
    m_what->setTextFormat(Qt::PlainText);
    m_bar->setRange(0, kSteps);
    auto* cancel = new QPushButton(icon(Picture::Close), tr("Cancel"), this);
    cancel->setObjectName(QStringLiteral("cancelWork"));
    cancel->setFocusPolicy(Qt::TabFocus);
    connect(cancel, &QPushButton::clicked, this, &WorkStrip::cancelled);
    auto* row = new QHBoxLayout(this);
    row->addWidget(m_what);
    row->addWidget(m_bar, 1);
    row->addWidget(cancel);
    hide();
}

void WorkStrip::start(const QString& what) {
    m_what->setText(what);
    m_bar->setAccessibleName(what);
    m_bar->setValue(0);
    show();
}

void WorkStrip::setPart(double part) {
    m_bar->setValue(static_cast<int>(std::lround(std::clamp(part, 0.0, 1.0) * kSteps)));
}

void WorkStrip::finish() {
    hide();
}

} // namespace coilbook
