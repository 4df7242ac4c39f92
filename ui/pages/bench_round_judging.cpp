// The part of the round that judges what is typed; see bench_round.h.
#include "core/services/logbook_session.h"
#include "core/services/round_start.h"
#include "core/wording/round_words.h"
#include "core/wording/wording.h"
#include "ui/pages/bench_message.h"
#include "ui/pages/bench_reading_panel.h"
#include "ui/pages/bench_round.h"
#include "ui/pages/bench_words.h"
#include "ui/preferences.h"
#include "ui/sound/tones.h"
#include "ui/widgets/reading_field.h"

namespace coilbook {

namespace {

/// An Enter so soon after a question is the same push of a key, or the line feed that a tester
/// sends after its carriage return: it has not been read, so it is no answer.
constexpr qint64 kBounceMilliseconds = 300;

using Kind = BenchMessage::Kind;

} // namespace

void BenchRound::judge() {
    const QString text = m_panel->field().text().trimmed();
    std::optional<RoundVerdict> verdict;
    ForceUnit unit = m_preferences.forceUnit();
    if (m_amending) {
        unit = stop().hits[m_amending->hit].value.unit();
        const Result<TypedForce> value = readingFromText(text, unit);
        verdict = value ? verdictWith(stop(), rules().limit, m_amending->hit, *value)
                        : verdictOf(stop(), rules().limit);
        askTrend(std::nullopt);
    } else {
        const Result<TypedForce> value = readingFromText(text, unit);
        verdict = verdictOf(stop(), rules().limit,
                            value ? std::optional(value->force()) : std::nullopt, m_retest);
        askTrend(value ? std::optional(*value) : std::nullopt);
    }
    m_panel->judge(verdict, rules(), m_preferences.quantities());
    judgeText(text, unit);
}

/// Against the band, which is known before the first key: this waits for nothing.
void BenchRound::judgeText(const QString& text, ForceUnit unit) {
    const Quantities quantities = m_preferences.quantities();
    const std::optional<ForceEstimate> band = expected();
    m_panel->tellExpected(
        band ? tr("expect %1", "a band").arg(wording::expectedReading(*band, quantities))
             : QString());
    const TypedJudgement judgement = judgementOf(text, unit, band);
    const std::optional<TypedForce> typed = TypedForce::parse(text, unit);
    const HitSpread spread = typed && !m_amending ? spreadWith(*typed) : HitSpread();
    m_panel->tellJudgement(judgementWords(judgement, spread, quantities));
}

std::optional<ForceEstimate> BenchRound::expected() const {
    return m_figures ? m_figures->expected : std::nullopt;
}

HitSpread BenchRound::spreadWith(const TypedForce& typed) const {
    return spreadOf(withHit(stop(), typed, m_retest),
                    m_figures ? m_figures->agreement : HitAgreement());
}

const Tester* BenchRound::testerInUse() const {
    const Sitting* sitting = newestSitting(*m_session.log(), m_round->inspection().id);
    return sitting != nullptr && sitting->tester ? testerWith(*m_session.log(), *sitting->tester)
                                                 : nullptr;
}

/// Asks what the trend says, with what is being typed if it is a reading. The answer comes later.
void BenchRound::askTrend(const std::optional<TypedForce>& typed) {
    if (showsSummary()) {
        return; // which asks for a review of its own
    }
    const std::shared_ptr<const EngineLog> log = m_session.log();
    const Sitting* sitting = newestSitting(*log, m_round->inspection().id);
    if (!stop().spring || sitting == nullptr) {
        m_live.forget();
        m_panel->tellTrend({});
        return;
    }
    std::optional<Reading> reading;
    if (typed) {
        reading.emplace();
        reading->id = ReadingId::make();
        reading->sitting = sitting->id;
        reading->spring = *stop().spring;
        reading->place = stop().place;
        reading->hit = stop().nextHit;
        reading->retest = m_retest;
        reading->value = *typed;
    }
    m_live.ask(log, *stop().spring, reading, sitting->tester);
}

void BenchRound::tellTrend(const std::optional<LiveFigures>& figures) {
    m_panel->tellTrend(figures ? wording::liveFigures(*figures, rules(), m_preferences.quantities())
                               : QString());
    if (!m_round || showsSummary()) {
        return;
    }
    m_figures = figures;
    m_check = figures ? figures->check : m_check;
    const ForceUnit unit =
        m_amending ? stop().hits[m_amending->hit].value.unit() : m_preferences.forceUnit();
    judgeText(m_panel->field().text().trimmed(), unit);
    warnOfRound();
    Q_EMIT trendTold();
}

/// The springs read so far may agree with each other and not with their past. Said in the place of
/// what is less urgent, and again at each spring until they do.
void BenchRound::warnOfRound() {
    const Kind said = m_panel->message().kind();
    if (m_check && m_check->alarms() && !m_amending &&
        (said == Kind::Saved || said == Kind::Hint)) {
        m_panel->message().say(Kind::Warns,
                               wording::roundCheck(*m_check, m_preferences.quantities()));
        if (said == Kind::Saved) {
            sound(false);
        }
    }
}

QStringList BenchRound::doubtsAbout(const TypedForce& value, bool stays) const {
    const Quantities quantities = m_preferences.quantities();
    const std::optional<ForceEstimate> band = expected();
    const Tester* tester = testerInUse();
    QStringList sentences;
    // A spring is better compared with its own past than with the rest of the set.
    for (const RoundDoubt doubt :
         doubtsOf(value.force(), tester, band ? std::nullopt : stop().medianOfOthers)) {
        sentences.append(doubt == RoundDoubt::AboveTesterRange
                             ? tr("%1 is more than the tester shows, which ends at %2.")
                                   .arg(quantities.forceWithUnit(value.force()),
                                        quantities.forceWithUnit(tester->range->force()))
                             : tr("%1 is far from the rest of the set, whose middle is %2.")
                                   .arg(quantities.forceWithUnit(value.force()),
                                        quantities.forceWithUnit(*stop().medianOfOthers)));
    }
    if (judgementOf(value.force(), band) == TypedJudgement::TooFar) {
        sentences.append(tr("%1 is too far off to be a reading of this spring: %2 is expected.")
                             .arg(quantities.forceWithUnit(value.force()),
                                  wording::expectedReading(*band, quantities)));
    }
    const HitSpread spread = spreadWith(value);
    if (!stays && spread.isTooWide()) {
        sentences.append(tr("The hits differ by %1, and %2 is what this tester\u2019s "
                            "repeatability allows: + keeps this one and takes another.")
                             .arg(quantities.forceWithUnit(spread.range),
                                  quantities.forceWithUnit(spread.allowed)));
    }
    return sentences;
}

bool BenchRound::isSureOf(const QString& text, const TypedForce& value, bool stays) {
    QStringList sentences = doubtsAbout(value, stays);
    if (sentences.isEmpty()) {
        return true;
    }
    if (m_sureOf == text) {
        return m_asked.elapsed() >= kBounceMilliseconds;
    }
    sentences.append(tr("Enter once more keeps it as typed."));
    m_panel->message().say(Kind::Asks, sentences.join(QLatin1Char(' ')));
    m_panel->field().selectAll(); // the next digits take its place
    m_sureOf = text;
    m_asked.start();
    sound(false);
    return false;
}

QString BenchRound::adviceOn(const Pending& saved) {
    if (saved.entry.retest || saved.stays) {
        return {};
    }
    switch (saved.judgement) {
    case TypedJudgement::Below:
        return QLatin1Char(' ') + tr("It lies below what its history allows: PgUp and * test it "
                                     "again.");
    case TypedJudgement::Above:
        return QLatin1Char(' ') + tr("It lies above what its history allows: PgUp and * test it "
                                     "again.");
    case TypedJudgement::Open:
    case TypedJudgement::NoBand:
    case TypedJudgement::AsExpected:
    case TypedJudgement::TooFar:
        break;
    }
    return saved.disagrees
               ? QLatin1Char(' ') + tr("Its hits do not agree: PgUp and * test it again.")
               : QString();
}

void BenchRound::sound(bool accepted) const {
    if (m_preferences.benchSounds()) {
        accepted ? tones::playAccepted() : tones::playLookAgain();
    }
}

} // namespace coilbook
