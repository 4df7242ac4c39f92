#include "ui/pages/bench_cautions.h"

#include "ui/widgets/follow_font.h"
#include "ui/widgets/large_label.h"

#include <QKeyEvent>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

namespace coilbook {

namespace {

constexpr double kTitleMillimetres = 6.0;

// Common practice of the trade, no source.
QStringList cautions() {
    return {
        BenchCautions::tr("Ignition off, and nobody can switch it on."),
        BenchCautions::tr("Plugs out, so that no cylinder pushes the crank."),
        BenchCautions::tr("Hands, sleeves and hair clear of fan and belts."),
        BenchCautions::tr("Engine cool enough to touch."),
        BenchCautions::tr("Eye protection on: a compressed spring can throw keepers and retainer."),
        BenchCautions::tr("Test a spring only with its valve closed and its rocker loose or on the "
                          "base circle."),
        BenchCautions::tr("Where the engine builder\u2019s procedure says otherwise, it rules."),
    };
}

} // namespace

BenchCautions::BenchCautions(QWidget* parent)
    : QWidget(parent)
    , m_done(new QPushButton(tr("All this is done  (Enter)"))) {
    auto* title = new LargeLabel(kTitleMillimetres);
    title->setBold(true);
    title->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    title->setText(tr("Before the crank is turned by hand"));
    auto* list = new QLabel(text());
    list->setObjectName(QStringLiteral("cautions"));
    list->setTextFormat(Qt::PlainText);
    list->setWordWrap(true);
    followFont(*list, *this, 1.15);
    keepTarget(*m_done);
    m_done->setAutoDefault(true);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(fontMetrics().height() / 2);
    column->addWidget(title);
    column->addWidget(list);
    column->addWidget(m_done, 0, Qt::AlignLeft);
    column->addStretch(1);
    connect(m_done, &QPushButton::clicked, this, &BenchCautions::heeded);
}

void BenchCautions::takeFocus() {
    m_done->setFocus(Qt::OtherFocusReason);
}

QString BenchCautions::text() const {
    QStringList lines;
    for (const QString& caution : cautions()) {
        lines << QStringLiteral("\u2013 ") + caution;
    }
    return lines.join(QLatin1Char('\n'));
}

void BenchCautions::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) {
        Q_EMIT heeded();
    } else {
        QWidget::keyPressEvent(event);
    }
}

} // namespace coilbook
