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

Result<std::vector<Place>> readPlaces(const QString& text) {
    std::vector<Place> places;
    const QStringList words = text.split(separators(), Qt::SkipEmptyParts);
    for (const QString& word : words) {
        const Result<Place> place = readPlace(word);
        if (!place) {
            return tl::unexpected(place.error());
        }
        places.push_back(*place);
    }
    return places;
}

Result<Bank> readBank(const QString& line) {
    const qsizetype colon = line.indexOf(QLatin1Char(':'));
    Bank bank{normalised(line.left(std::max<qsizetype>(colon, 0))), {}};
    return readPlaces(line.mid(colon + 1)).map([&](std::vector<Place> places) {
        bank.places = std::move(places);
        return std::move(bank);
    });
}

/// Tenths of a degree, from words such as `75` and `102.9`.
Result<std::vector<int>> readIntervals(const QString& text) {
    static const QRegularExpression blanks(QStringLiteral("[\\s;°]+"));
    static const QRegularExpression expression(QStringLiteral("^([0-9]{1,3})(?:[.,]([0-9]))?$"));
    std::vector<int> intervals;
    const QStringList words = text.split(blanks, Qt::SkipEmptyParts);
    for (const QString& word : words) {
        const QRegularExpressionMatch match = expression.match(word);
        if (!match.hasMatch()) {
            return fail(LogbookFault::BadLayout, {word});
        }
        intervals.push_back(match.captured(1).toInt() * 10 + match.captured(2).toInt());
    }
    return intervals;
}

QString writePlaces(const std::vector<Place>& places) {
    QStringList words;
    for (const Place& place : places) {
        words << placeText(place).remove(QLatin1Char(' '));
    }
    return words.join(QLatin1Char(' '));
}

} // namespace

LayoutText writeLayout(const EngineLayout& layout) {
    QStringList lines;
    for (const Bank& bank : layout.banks) {
        const QString words = writePlaces(bank.places);
        lines << (bank.name.isEmpty() ? words : QStringLiteral("%1: %2").arg(bank.name, words));
    }
    QStringList order;
    for (const Cylinder& cylinder : layout.firingOrder) {
        order << QString::number(cylinder.number());
    }
    QStringList intervals;
    for (const int tenths : layout.firingIntervals) {
        intervals << QString::number(tenths / 10.0);
    }
    return {lines.join(QLatin1Char('\n')), order.join(QLatin1Char(' ')),
            intervals.join(QLatin1Char(' ')), writePlaces(layout.ownRound)};
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
    Result<std::vector<int>> intervals = readIntervals(text.intervals);
    if (!intervals) {
        return tl::unexpected(intervals.error());
    }
    Result<std::vector<Place>> ownRound = readPlaces(text.ownRound);
    if (!ownRound) {
        return tl::unexpected(ownRound.error());
    }
    layout.firingIntervals = std::move(*intervals);
    layout.ownRound = std::move(*ownRound);
    return checkedLayout(std::move(layout));
}

} // namespace coilbook
