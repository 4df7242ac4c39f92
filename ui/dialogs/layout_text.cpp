#include "ui/dialogs/layout_text.h"

#include "core/support/text.h"

#include <QRegularExpression>
#include <QStringList>

namespace coilbook {

namespace {

const QRegularExpression& separators() {
    static const QRegularExpression expression(QStringLiteral("[\\s,;–-]+"));
    return expression;
}

Result<Place> readPlace(const QString& word) {
    static const QRegularExpression expression(QStringLiteral("^([0-9]{1,2})([IE])$"),
                                               QRegularExpression::CaseInsensitiveOption);
    const QRegularExpressionMatch match = expression.match(word);
    if (!match.hasMatch()) {
        return fail(LogbookFault::BadLayout, {word});
    }
    const bool intake = match.captured(2).compare(QLatin1String("I"), Qt::CaseInsensitive) == 0;
    return Place{Cylinder(match.captured(1).toInt()), intake ? Valve::Intake : Valve::Exhaust};
}

Result<Bank> readBank(const QString& line) {
    const qsizetype colon = line.indexOf(QLatin1Char(':'));
    Bank bank{normalised(line.left(std::max<qsizetype>(colon, 0))), {}};
    const QStringList words = line.mid(colon + 1).split(separators(), Qt::SkipEmptyParts);
    for (const QString& word : words) {
        const Result<Place> place = readPlace(word);
        if (!place) {
            return tl::unexpected(place.error());
        }
        bank.places.push_back(*place);
    }
    return bank;
}

} // namespace

LayoutText writeLayout(const EngineLayout& layout) {
    QStringList lines;
    for (const Bank& bank : layout.banks) {
        QStringList places;
        for (const Place& place : bank.places) {
            places << placeText(place).remove(QLatin1Char(' '));
        }
        const QString words = places.join(QLatin1Char(' '));
        lines << (bank.name.isEmpty() ? words : QStringLiteral("%1: %2").arg(bank.name, words));
    }
    QStringList order;
    for (const Cylinder& cylinder : layout.firingOrder) {
        order << QString::number(cylinder.number());
    }
    return {lines.join(QLatin1Char('\n')), order.join(QLatin1Char(' '))};
}

Result<EngineLayout> readLayout(const LayoutText& text) {
    EngineLayout layout;
    const QStringList lines = text.banks.split(QLatin1Char('\n'), Qt::SkipEmptyParts);
    for (const QString& line : lines) {
        if (line.trimmed().isEmpty()) {
            continue;
        }
        Result<Bank> bank = readBank(line);
        if (!bank) {
            return tl::unexpected(bank.error());
        }
        layout.banks.push_back(std::move(*bank));
    }
    const QStringList words = text.firingOrder.split(separators(), Qt::SkipEmptyParts);
    for (const QString& word : words) {
        bool isNumber = false;
        const int number = word.toInt(&isNumber);
        if (!isNumber) {
            return fail(LogbookFault::BadLayout, {word});
        }
        layout.firingOrder.emplace_back(number);
    }
    return checkedLayout(std::move(layout));
}

} // namespace coilbook
