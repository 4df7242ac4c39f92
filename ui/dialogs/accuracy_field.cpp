#include "ui/dialogs/accuracy_field.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLineEdit>

namespace coilbook {

namespace {

/// What the list offers beside the grades, which stand for themselves.
enum Kind { NotKnown = -5, OfSpan, OfReading, InPoundsForce, InNewtons };

QString inLocale(QString figure) {
    return figure.replace(QLatin1Char('.'), QLocale().decimalPoint());
}

} // namespace

AccuracyField::AccuracyField(QWidget* parent)
    : QWidget(parent)
    , m_kind(new QComboBox(this))
    , m_figure(new QLineEdit(this)) {
    m_kind->setObjectName(QStringLiteral("accuracyKind"));
    m_figure->setObjectName(QStringLiteral("accuracyFigure"));
    m_kind->setAccessibleName(tr("Kind of accuracy"));
    m_figure->setAccessibleName(tr("Figure of the accuracy"));
    m_figure->setInputMethodHints(Qt::ImhFormattedNumbersOnly);
    m_kind->addItem(tr("not known"), NotKnown);
    for (const GradeRow& row : kGradeRows) {
        const QString name = QLatin1String(row.name);
        const QString middle = QString::number(row.middleHalf);
        m_kind->addItem(row.lowerQuarter == row.middleHalf
                            ? tr("grade %1: %2 % of span").arg(name, middle)
                            : tr("grade %1: %2 % of span, %3 % in the middle half")
                                  .arg(name, QString::number(row.lowerQuarter), middle),
                        static_cast<int>(row.grade));
    }
    m_kind->addItem(tr("in % of span"), OfSpan);
    m_kind->addItem(tr("in % of reading"), OfReading);
    m_kind->addItem(tr("in lbf"), InPoundsForce);
    m_kind->addItem(tr("in N"), InNewtons);
    m_kind->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    m_kind->setMinimumContentsLength(18);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(m_kind, 2);
    row->addWidget(m_figure, 1);
    setFocusProxy(m_kind);
    connect(m_kind, &QComboBox::currentIndexChanged, this, &AccuracyField::onKind);
    connect(m_figure, &QLineEdit::textEdited, this, &AccuracyField::edited);
    onKind();
}

void AccuracyField::onKind() {
    const int kind = m_kind->currentData().toInt();
    m_figure->setVisible(kind < 0 && kind != NotKnown);
    Q_EMIT edited();
}

void AccuracyField::setAccuracy(const std::optional<TesterAccuracy>& accuracy) {
    int kind = NotKnown;
    QString figure;
    if (accuracy) {
        if (const auto* grade = std::get_if<GaugeGrade>(&*accuracy)) {
            kind = static_cast<int>(*grade);
        } else if (const auto* span = std::get_if<PercentOfSpan>(&*accuracy)) {
            kind = OfSpan;
            figure = percentageToText(span->percent);
        } else if (const auto* reading = std::get_if<PercentOfReading>(&*accuracy)) {
            kind = OfReading;
            figure = percentageToText(reading->percent);
        } else if (const auto* error = std::get_if<TypedForce>(&*accuracy)) {
            kind = error->unit() == ForceUnit::PoundForce ? InPoundsForce : InNewtons;
            figure = error->text();
        }
    }
    m_figure->setText(inLocale(figure));
    m_kind->setCurrentIndex(m_kind->findData(kind));
    onKind();
}

std::optional<TesterAccuracy> AccuracyField::accuracy() const {
    const int kind = m_kind->currentData().toInt();
    const QString figure = m_figure->text().trimmed();
    if (kind >= 0) {
        return static_cast<GaugeGrade>(kind);
    }
    if (kind == OfSpan || kind == OfReading) {
        const std::optional<Percentage> percent = percentageFromText(figure);
        if (!percent) {
            return std::nullopt;
        }
        return kind == OfSpan ? TesterAccuracy(PercentOfSpan{*percent})
                              : TesterAccuracy(PercentOfReading{*percent});
    }
    if (kind == InPoundsForce || kind == InNewtons) {
        const auto error = TypedForce::parse(figure, kind == InPoundsForce ? ForceUnit::PoundForce
                                                                           : ForceUnit::Newton);
        if (error && error->isWithinBounds()) {
            return *error;
        }
    }
    return std::nullopt;
}

bool AccuracyField::isFault() const {
    return m_kind->currentData().toInt() != NotKnown && !accuracy();
}

} // namespace coilbook
