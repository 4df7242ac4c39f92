#include "ui/pages/bench_words.h"

#include <QCoreApplication>
#include <QLocale>

namespace coilbook {

namespace {

QString words(const char* text) {
    return QCoreApplication::translate("BenchWords", text);
}

} // namespace

BenchJudgement judgementWords(TypedJudgement judgement, const HitSpread& spread,
                              const Quantities& quantities) {
    if (judgement == TypedJudgement::Open) {
        return {};
    }
    if (judgement == TypedJudgement::TooFar) {
        return {words("too far off to be a reading"), JudgementTone::Stop};
    }
    if (spread.isTooWide()) {
        return {words("hits differ by %1: take another  (+)")
                    .arg(quantities.forceWithUnit(spread.range)),
                JudgementTone::Look};
    }
    switch (judgement) {
    case TypedJudgement::AsExpected:
        return {words("as expected"), JudgementTone::Good};
    case TypedJudgement::Below:
        return {words("below what this spring\u2019s history allows: test again"),
                JudgementTone::Look};
    case TypedJudgement::Above:
        return {words("above what this spring\u2019s history allows: test again"),
                JudgementTone::Look};
    case TypedJudgement::Open:
    case TypedJudgement::NoBand:
    case TypedJudgement::TooFar:
        break;
    }
    return {};
}

QString crankWords(const CrankStep& step) {
    const QString cylinder = QString::number(step.cylinder.number());
    if (!step.turn) {
        return words("Turn the crank until cylinder %1 is at top dead centre of its power stroke: "
                     "both its springs can be tested.")
            .arg(cylinder);
    }
    if (*step.turn == 0.0) {
        return words("Leave the crank: cylinder %1 is at top dead centre of its power stroke.")
            .arg(cylinder);
    }
    const bool whole = *step.turn == static_cast<int>(*step.turn);
    return words("Turn the crank %1\u00B0 on: cylinder %2 is then at top dead centre of its power "
                 "stroke, both its springs can be tested.")
        .arg(QLocale().toString(*step.turn, 'f', whole ? 0 : 1), cylinder);
}

} // namespace coilbook
