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
    return layout;
}

QString layoutToText(const EngineLayout& layout) {
    QJsonArray banks;
    for (const Bank& bank : layout.banks) {
        QJsonArray places;
        for (const Place& place : bank.places) {
            places.append(compactPlace(place));
        }
        banks.append(
            QJsonObject{{QStringLiteral("name"), bank.name}, {QStringLiteral("places"), places}});
    }
    QJsonArray order;
    for (const Cylinder& cylinder : layout.firingOrder) {
        order.append(cylinder.number());
    }
    const QJsonObject object{{QStringLiteral("banks"), banks},
                             {QStringLiteral("firing_order"), order}};
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
        Bank bank{entry.toObject().value(QLatin1String("name")).toString(), {}};
        const QJsonArray places = entry.toObject().value(QLatin1String("places")).toArray();
        for (const QJsonValue& placeValue : places) {
            const Result<Place> place = placeFromCompact(placeValue.toString());
            if (!place) {
                return tl::unexpected(place.error());
            }
            bank.places.push_back(*place);
        }
        layout.banks.push_back(std::move(bank));
    }
    const QJsonArray order = object.value(QLatin1String("firing_order")).toArray();
    for (const QJsonValue& number : order) {
        layout.firingOrder.emplace_back(number.toInt());
    }
    return checkedLayout(std::move(layout));
}

} // namespace coilbook
