#include "core/domain/tester_accuracy.h"

#include "core/domain/force_text.h"

#include <algorithm>

namespace coilbook {

namespace {

constexpr int kThousandths = 1000;
constexpr int kPercentDecimals = 3;

const GradeRow& rowOf(GaugeGrade grade) {
    return *std::find_if(kGradeRows.begin(), kGradeRows.end(),
                         [&](const GradeRow& row) { return row.grade == grade; });
}

double percentAt(const GradeRow& row, double partOfSpan) {
    constexpr double kQuarter = 0.25;
    if (partOfSpan < kQuarter) {
        return row.lowerQuarter;
    }
    return partOfSpan > 1.0 - kQuarter ? row.upperQuarter : row.middleHalf;
}

QString ofSpan() {
    return QStringLiteral(" % of span");
}

QString ofReading() {
    return QStringLiteral(" % of reading");
}

struct ErrorAt {
    Force at;
    std::optional<Force> span;

    std::optional<Force> operator()(GaugeGrade grade) const {
        if (!span || *span <= Force()) {
            return std::nullopt;
        }
        return *span * (percentAt(rowOf(grade), at / *span) / 100.0);
    }

    std::optional<Force> operator()(const PercentOfSpan& accuracy) const {
        return span ? std::optional(*span * accuracy.percent.share()) : std::nullopt;
    }

    std::optional<Force> operator()(const PercentOfReading& accuracy) const {
        return at * accuracy.percent.share();
    }

    std::optional<Force> operator()(const TypedForce& error) const { return error.force(); }
};

struct ToText {
    QString operator()(GaugeGrade grade) const {
        return QStringLiteral("grade ") + QLatin1String(rowOf(grade).name);
    }

    QString operator()(const PercentOfSpan& accuracy) const {
        return percentageToText(accuracy.percent) + ofSpan();
    }

    QString operator()(const PercentOfReading& accuracy) const {
        return percentageToText(accuracy.percent) + ofReading();
    }

    QString operator()(const TypedForce& error) const { return forceToText(error); }
};

} // namespace

std::optional<Force> permittedError(const TesterAccuracy& accuracy, Force at,
                                    const std::optional<TypedForce>& span) {
    return std::visit(ErrorAt{at, span ? std::optional(span->force()) : std::nullopt}, accuracy);
}

QString accuracyToText(const TesterAccuracy& accuracy) {
    return std::visit(ToText{}, accuracy);
}

std::optional<TesterAccuracy> accuracyFromText(QStringView text) {
    const QString grade = QStringLiteral("grade ");
    if (text.startsWith(grade)) {
        for (const GradeRow& row : kGradeRows) {
            if (text.mid(grade.size()) == QLatin1String(row.name)) {
                return row.grade;
            }
        }
        return std::nullopt;
    }
    for (const QString& end : {ofSpan(), ofReading()}) {
        if (!text.endsWith(end)) {
            continue;
        }
        const auto percent = percentageFromText(text.chopped(end.size()));
        if (!percent) {
            return std::nullopt;
        }
        return end == ofSpan() ? TesterAccuracy(PercentOfSpan{*percent})
                               : TesterAccuracy(PercentOfReading{*percent});
    }
    const std::optional<TypedForce> error = forceFromText(text);
    return error ? std::optional<TesterAccuracy>(*error) : std::nullopt;
}

std::optional<Percentage> percentageFromText(QStringView text) {
    // Percentages are written as forces are: digits, one mark, decimals.
    const auto typed = TypedForce::parse(text, ForceUnit::PoundForce);
    if (!typed || typed->decimals() > kPercentDecimals) {
        return std::nullopt;
    }
    std::int64_t thousandths = typed->digits();
    for (int i = typed->decimals(); i < kPercentDecimals; ++i) {
        thousandths *= 10;
    }
    if (thousandths <= 0 || thousandths > Percentage::kMost) {
        return std::nullopt;
    }
    return Percentage{static_cast<int>(thousandths)};
}

QString percentageToText(const Percentage& percentage) {
    QString text =
        TypedForce(percentage.thousandths, kPercentDecimals, ForceUnit::PoundForce).text();
    while (text.endsWith(QLatin1Char('0'))) {
        text.chop(1);
    }
    if (text.endsWith(QLatin1Char('.'))) {
        text.chop(1);
    }
    return text;
}

} // namespace coilbook
