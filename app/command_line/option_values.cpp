#include "app/command_line/option_values.h"

#include "app/command_line/text.h"
#include "core/support/text.h"

#include <QLocale>
#include <QRegularExpression>

#include <algorithm>
#include <cmath>

namespace coilbook {

namespace {

constexpr int kMostRacesAhead = 60;

const QString kEngine = QStringLiteral("engine");
const QString kAsOf = QStringLiteral("as-of");
const QString kLimit = QStringLiteral("limit");
const QString kAhead = QStringLiteral("ahead");

bool looksLike(const QString& text, const QString& pattern) {
    return QRegularExpression(QRegularExpression::anchoredPattern(pattern)).match(text).hasMatch();
}

Outcome<QDate> parseDate(const QString& text) {
    const QDate date = QDate::fromString(text, Qt::ISODate);
    if (!date.isValid() || !looksLike(text, QStringLiteral("[0-9]{4}-[0-9]{2}-[0-9]{2}"))) {
        return misused(UsageFault::BadDate, {text});
    }
    return date;
}

Outcome<Force> parseLimit(const QString& text) {
    bool isNumber = looksLike(text, QStringLiteral("[0-9]*\\.?[0-9]+"));
    const double lbf = isNumber ? QLocale::c().toDouble(text, &isNumber) : 0.0;
    if (!isNumber || !std::isfinite(lbf) || lbf <= 0.0) {
        return misused(UsageFault::BadLimit, {text});
    }
    return Force::poundsForce(lbf);
}

Outcome<int> parseRacesAhead(const QString& text) {
    bool isNumber = looksLike(text, QStringLiteral("[0-9]+"));
    const int races = isNumber ? text.toInt(&isNumber) : 0;
    if (!isNumber || races > kMostRacesAhead) {
        return misused(UsageFault::BadRacesAhead, {text});
    }
    return races;
}

/// Parses the option's value into `target`, if it was given.
template <class T>
Outcome<void> take(const Request& request, const QString& option,
                   Outcome<T> (*parse)(const QString&), std::optional<T>& target) {
    if (const auto text = request.value(option)) {
        const Outcome<T> value = parse(*text);
        if (!value) {
            return tl::unexpected(value.error());
        }
        target = *value;
    }
    return {};
}

} // namespace

JudgingRules JudgingRequest::applied(JudgingRules rules) const {
    rules.limit = limit.value_or(rules.limit);
    rules.racesAhead = racesAhead.value_or(rules.racesAhead);
    return rules;
}

Option engineOption(bool isNeeded) {
    return {kEngine, CommandText::tr("NAME"),
            isNeeded ? CommandText::tr("the engine")
                     : CommandText::tr("this engine only, instead of all in the logbook"),
            isNeeded};
}

Option asOfOption() {
    return {kAsOf, CommandText::tr("YYYY-MM-DD"),
            CommandText::tr("as things stood on that day; else on the engine's newest day"), false};
}

Option limitOption() {
    return {kLimit, CommandText::tr("LBF"),
            CommandText::tr("loss at which a spring is swapped; else the engine's own limit"),
            false};
}

Option aheadOption() {
    return {kAhead, CommandText::tr("N"),
            CommandText::tr("races to look ahead, 0 to 60; else the engine's own number"), false};
}

Outcome<JudgingRequest> judgingRequestOf(const Request& request) {
    JudgingRequest result;
    return take(request, kAsOf, parseDate, result.asOf)
        .and_then([&] { return take(request, kLimit, parseLimit, result.limit); })
        .and_then([&] { return take(request, kAhead, parseRacesAhead, result.racesAhead); })
        .map([&] { return result; });
}

Result<EngineSummary> engineNamed(const QString& name, const std::vector<EngineSummary>& engines,
                                  const QString& file) {
    const auto found =
        std::find_if(engines.begin(), engines.end(),
                     [&](const EngineSummary& engine) { return engine.name == normalised(name); });
    if (found != engines.end()) {
        return *found;
    }
    QStringList names{name};
    for (const EngineSummary& engine : engines) {
        names << engine.name;
    }
    return fail(LogbookFault::UnknownEngine, names, file);
}

} // namespace coilbook
