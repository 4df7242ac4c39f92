#include "core/domain/engine_layout.h"

#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QSet>

#include <algorithm>

namespace coilbook {

namespace {

std::vector<Place> alternating(std::initializer_list<int> cylinders, bool exhaustFirst) {
    std::vector<Place> places;
    for (const int number : cylinders) {
        const Valve first = exhaustFirst ? Valve::Exhaust : Valve::Intake;
        const Valve second = exhaustFirst ? Valve::Intake : Valve::Exhaust;
        places.push_back({Cylinder(number), first});
        places.push_back({Cylinder(number), second});
        exhaustFirst = !exhaustFirst;
    }
    return places;
}

QString compactPlace(const Place& place) {
    return QString::number(place.cylinder.number()) + valveLetter(place.valve);
}

Result<Place> placeFromCompact(const QString& text) {
    bool ok = false;
    const int number = text.chopped(text.isEmpty() ? 0 : 1).toInt(&ok);
    const bool intake = text.endsWith(QLatin1Char('I'));
    if (!ok || (!intake && !text.endsWith(QLatin1Char('E')))) {
        return fail(LogbookFault::BadLayout, {text});
    }
    return Place{Cylinder(number), intake ? Valve::Intake : Valve::Exhaust};
}

QJsonArray compactPlaces(const std::vector<Place>& places) {
    QJsonArray array;
    for (const Place& place : places) {
        array.append(compactPlace(place));
    }
    return array;
}

Result<std::vector<Place>> placesFromCompact(const QJsonArray& array) {
    std::vector<Place> places;
    for (const QJsonValue& value : array) {
        const Result<Place> place = placeFromCompact(value.toString());
        if (!place) {
            return tl::unexpected(place.error());
        }
        places.push_back(*place);
    }
    return places;
}

Result<void> checkIntervals(const EngineLayout& layout) {
    if (layout.firingIntervals.empty()) {
        return {};
    }
    int sum = 0;
    for (const int interval : layout.firingIntervals) {
        if (interval < 0 || interval > kCycleTenths) {
            return fail(LogbookFault::BadLayout, {QString::number(interval / 10.0)});
        }
        sum += interval;
    }
    if (layout.firingIntervals.size() != layout.firingOrder.size() || sum != kCycleTenths) {
        return fail(LogbookFault::BadLayout, {QString::number(sum / 10.0)});
    }
    return {};
}

/// `places` are those of the layout, sorted.
Result<void> checkOwnRound(std::vector<Place> round, const std::vector<Place>& places) {
    if (round.empty()) {
        return {};
    }
    std::sort(round.begin(), round.end());
    const auto [own, there] =
        std::mismatch(round.begin(), round.end(), places.begin(), places.end());
    if (own == round.end() && there == places.end()) {
        return {};
    }
    const bool missing = own == round.end() || (there != places.end() && *there < *own);
    return fail(LogbookFault::BadLayout, {placeText(missing ? *there : *own)});
}

} // namespace

std::vector<Place> EngineLayout::places() const {
    std::vector<Place> all;
    for (const Bank& bank : banks) {
        all.insert(all.end(), bank.places.begin(), bank.places.end());
    }
    std::sort(all.begin(), all.end());
    return all;
}

bool EngineLayout::has(const Place& place) const {
    return std::any_of(banks.begin(), banks.end(), [&](const Bank& bank) {
        return std::find(bank.places.begin(), bank.places.end(), place) != bank.places.end();
    });
}

EngineLayout defaultLayout() {
    EngineLayout layout;
    layout.banks = {{QStringLiteral("Left"), alternating({1, 3, 5, 7}, true)},
                    {QStringLiteral("Right"), alternating({2, 4, 6, 8}, true)}};
    for (const int number : {1, 8, 4, 3, 6, 5, 7, 2}) {
        layout.firingOrder.emplace_back(number);
    }
    return layout;
}

Result<EngineLayout> checkedLayout(EngineLayout layout) {
    const int cylinders = layout.cylinders();
    if (cylinders < 1 || cylinders > Cylinder::kMost) {
        return fail(LogbookFault::BadLayout, {QString::number(cylinders)});
    }
    std::vector<Cylinder> fired = layout.firingOrder;
    std::sort(fired.begin(), fired.end());
    for (int i = 0; i < cylinders; ++i) {
        if (fired[static_cast<std::size_t>(i)].number() != i + 1) {
            return fail(LogbookFault::BadLayout, {QString::number(i + 1)});
        }
    }
    const std::vector<Place> places = layout.places();
    for (int i = 0; i < 2 * cylinders; ++i) {
        const Place expected{Cylinder(i / 2 + 1), i % 2 == 0 ? Valve::Intake : Valve::Exhaust};
        const auto index = static_cast<std::size_t>(i);
        if (index >= places.size() || places[index] != expected) {
            return fail(LogbookFault::BadLayout, {placeText(expected)});
        }
    }
    if (places.size() != 2 * static_cast<std::size_t>(cylinders)) {
        return fail(LogbookFault::BadLayout, {placeText(places.back())});
    }
    return checkIntervals(layout)
        .and_then([&] { return checkOwnRound(layout.ownRound, places); })
        .map([&] { return std::move(layout); });
}

QString layoutToText(const EngineLayout& layout) {
    QJsonArray banks;
    for (const Bank& bank : layout.banks) {
        banks.append(QJsonObject{{QStringLiteral("name"), bank.name},
                                 {QStringLiteral("places"), compactPlaces(bank.places)}});
    }
    QJsonArray order;
    for (const Cylinder& cylinder : layout.firingOrder) {
        order.append(cylinder.number());
    }
    QJsonObject object{{QStringLiteral("banks"), banks}, {QStringLiteral("firing_order"), order}};
    if (!layout.firingIntervals.empty()) {
        QJsonArray intervals;
        for (const int interval : layout.firingIntervals) {
            intervals.append(interval);
        }
        object.insert(QStringLiteral("firing_intervals"), intervals);
    }
    if (!layout.ownRound.empty()) {
        object.insert(QStringLiteral("own_round"), compactPlaces(layout.ownRound));
    }
    return QString::fromUtf8(QJsonDocument(object).toJson(QJsonDocument::Compact));
}

Result<EngineLayout> layoutFromText(const QString& text) {
    const QJsonDocument document = QJsonDocument::fromJson(text.toUtf8());
    if (!document.isObject()) {
        return fail(LogbookFault::BadLayout, {text.left(60)});
    }
    const QJsonObject object = document.object();
    EngineLayout layout;
    const QJsonArray banks = object.value(QLatin1String("banks")).toArray();
    for (const QJsonValue& entry : banks) {
        Result<std::vector<Place>> places =
            placesFromCompact(entry.toObject().value(QLatin1String("places")).toArray());
        if (!places) {
            return tl::unexpected(places.error());
        }
        layout.banks.push_back(
            {entry.toObject().value(QLatin1String("name")).toString(), std::move(*places)});
    }
    const QJsonArray order = object.value(QLatin1String("firing_order")).toArray();
    for (const QJsonValue& number : order) {
        layout.firingOrder.emplace_back(number.toInt());
    }
    const QJsonArray intervals = object.value(QLatin1String("firing_intervals")).toArray();
    for (const QJsonValue& interval : intervals) {
        layout.firingIntervals.push_back(interval.toInt(-1));
    }
    Result<std::vector<Place>> ownRound =
        placesFromCompact(object.value(QLatin1String("own_round")).toArray());
    if (!ownRound) {
        return tl::unexpected(ownRound.error());
    }
    layout.ownRound = std::move(*ownRound);
    return checkedLayout(std::move(layout));
}

} // namespace coilbook
