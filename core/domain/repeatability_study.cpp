#include "core/domain/repeatability_study.h"

#include <algorithm>
#include <tuple>

namespace coilbook {

namespace {

constexpr int kMostOfAKind = 50; ///< springs, persons or hits of one study

Result<void> checkNames(const QStringList& names, const QString& what) {
    QStringList before;
    for (const QString& name : names) {
        if (name.isEmpty()) {
            return fail(LogbookFault::EmptyName, {what});
        }
        if (before.contains(name, Qt::CaseInsensitive)) {
            return fail(LogbookFault::NameTaken, {what, name});
        }
        before << name;
    }
    return {};
}

bool isComplete(const RepeatabilityStudy& study) {
    return study.readings.size() == study.size() &&
           std::all_of(study.readings.begin(), study.readings.end(),
                       [](const auto& reading) { return reading.has_value(); });
}

} // namespace

std::size_t RepeatabilityStudy::at(int spring, int person, int hit) const {
    return static_cast<std::size_t>((spring * persons.size() + person) * hits + hit);
}

std::size_t RepeatabilityStudy::size() const {
    return static_cast<std::size_t>(springs.size() * persons.size() * hits);
}

QString studyReadingsToText(const std::vector<std::optional<TypedForce>>& readings) {
    QStringList texts;
    for (const std::optional<TypedForce>& reading : readings) {
        texts << (reading ? reading->text() : QStringLiteral("-"));
    }
    return texts.join(QLatin1Char(' '));
}

std::optional<std::vector<std::optional<TypedForce>>> studyReadingsFromText(QStringView text,
                                                                            ForceUnit unit) {
    std::vector<std::optional<TypedForce>> readings;
    for (const QStringView each : text.split(QLatin1Char(' '), Qt::SkipEmptyParts)) {
        if (each == QLatin1String("-")) {
            readings.emplace_back();
            continue;
        }
        readings.push_back(TypedForce::parse(each, unit));
        if (!readings.back()) {
            return std::nullopt;
        }
    }
    return readings;
}

Result<void> checkStudy(const RepeatabilityStudy& study) {
    if (study.springs.size() < 2 || study.persons.isEmpty() || study.hits < 2 ||
        study.springs.size() > kMostOfAKind || study.persons.size() > kMostOfAKind ||
        study.hits > kMostOfAKind || study.readings.size() != study.size()) {
        return fail(LogbookFault::StudyTooSmall);
    }
    for (const std::optional<TypedForce>& reading : study.readings) {
        if (reading && (reading->unit() != study.unit || !reading->isWithinBounds())) {
            return fail(LogbookFault::ReadingOutOfBounds, {reading->text()});
        }
    }
    return checkNames(study.springs, QStringLiteral("spring")).and_then([&] {
        return checkNames(study.persons, QStringLiteral("person"));
    });
}

const RepeatabilityStudy* newestStudy(const std::vector<RepeatabilityStudy>& studies,
                                      const TesterId& tester) {
    const RepeatabilityStudy* newest = nullptr;
    for (const RepeatabilityStudy& each : studies) {
        const bool counts = each.tester == tester && !each.withdrawn && isComplete(each);
        if (counts &&
            (newest == nullptr || std::tuple(newest->studiedOn.toJulianDay(), newest->id) <
                                      std::tuple(each.studiedOn.toJulianDay(), each.id))) {
            newest = &each;
        }
    }
    return newest;
}

} // namespace coilbook
