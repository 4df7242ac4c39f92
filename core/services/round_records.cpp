#include "core/services/round_records.h"

#include "core/services/round_verdict.h"
#include "core/support/text.h"

#include <algorithm>

namespace coilbook {

namespace {

Result<Reading> amendmentOf(const EngineLog& log, const RoundHit& hit, const Authorship& author) {
    const auto row = std::find_if(log.readings.begin(), log.readings.end(),
                                  [&](const Reading& reading) { return reading.id == hit.row; });
    if (row == log.readings.end()) {
        return fail(LogbookFault::NothingToAmend);
    }
    if (normalised(author.why).isEmpty()) {
        return fail(LogbookFault::WhyMissing);
    }
    Reading amendment = *row;
    amendment.id = ReadingId::make();
    amendment.amends = row->id;
    amendment.author = author;
    amendment.author.why = normalised(author.why);
    return amendment;
}

} // namespace

Result<RecordReadings> recordOf(const Round& round, std::size_t stop, const RoundEntry& entry,
                                const SittingId& sitting, const Moment& at) {
    const Result<TypedForce> value = readingFromText(entry.text, entry.unit);
    if (!value) {
        return tl::unexpected(value.error());
    }
    const RoundStop& here = round.stops().at(stop);
    RecordReadings record;
    Reading reading;
    reading.id = ReadingId::make();
    reading.sitting = sitting;
    reading.place = here.place;
    reading.hit = here.nextHit;
    reading.retest = entry.retest;
    reading.value = *value;
    reading.author.at = at;
    if (here.spring) {
        reading.spring = *here.spring;
    } else {
        const QString label = normalised(entry.springLabel);
        if (label.isEmpty()) {
            return fail(LogbookFault::EmptyName, {QStringLiteral("spring")});
        }
        const std::optional<SpringId> known = round.springLabelled(label);
        reading.spring = known ? *known : SpringId::make();
        if (!known) {
            record.newSprings.push_back({reading.spring, label, {}, {}, {}});
        }
    }
    record.readings.push_back(std::move(reading));
    return record;
}

Result<AmendReading> correctionOf(const EngineLog& log, const RoundHit& hit, const QString& text,
                                  const Authorship& author) {
    const Result<TypedForce> value = readingFromText(text, hit.value.unit());
    if (!value) {
        return tl::unexpected(value.error());
    }
    if (*value == hit.value) {
        return fail(LogbookFault::NothingToAmend);
    }
    Result<Reading> amendment = amendmentOf(log, hit, author);
    if (!amendment) {
        return tl::unexpected(amendment.error());
    }
    amendment->kind = ReadingKind::Correction;
    amendment->value = *value;
    return AmendReading{*std::move(amendment)};
}

Result<AmendReading> withdrawalOf(const EngineLog& log, const RoundHit& hit,
                                  const Authorship& author) {
    Result<Reading> amendment = amendmentOf(log, hit, author);
    if (!amendment) {
        return tl::unexpected(amendment.error());
    }
    amendment->kind = ReadingKind::Withdrawal;
    return AmendReading{*std::move(amendment)};
}

} // namespace coilbook
