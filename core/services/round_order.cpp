#include "core/services/round_order.h"

namespace coilbook {

std::vector<Place> placesInOrder(const EngineLayout& layout, RoundOrder order) {
    std::vector<Place> places;
    switch (order) {
    case RoundOrder::Own:
        if (!layout.ownRound.empty()) {
            return layout.ownRound;
        }
        [[fallthrough]];
    case RoundOrder::ByBank:
        for (const Bank& bank : layout.banks) {
            places.insert(places.end(), bank.places.begin(), bank.places.end());
        }
        return places;
    case RoundOrder::ByFiringOrder:
        for (const Cylinder& cylinder : layout.firingOrder) {
            places.push_back({cylinder, Valve::Intake});
            places.push_back({cylinder, Valve::Exhaust});
        }
        return places;
    case RoundOrder::ByCylinder:
        break;
    }
    return layout.places();
}

QString keyOf(RoundOrder order) {
    switch (order) {
    case RoundOrder::ByFiringOrder:
        return QStringLiteral("firing");
    case RoundOrder::ByCylinder:
        return QStringLiteral("cylinder");
    case RoundOrder::Own:
        return QStringLiteral("own");
    case RoundOrder::ByBank:
        break;
    }
    return QStringLiteral("bank");
}

RoundOrder roundOrderFromKey(const QString& key) {
    for (const RoundOrder order :
         {RoundOrder::ByFiringOrder, RoundOrder::ByCylinder, RoundOrder::Own}) {
        if (key == keyOf(order)) {
            return order;
        }
    }
    return RoundOrder::ByBank;
}

} // namespace coilbook
