#pragma once

#include "tests/support/history_builder.h"

namespace coilbook::testing {

/// A set of sixteen, each from 120 lbf on, that loses `perRace` in every race and is read to a
/// tenth after each; a fixed pattern of errors up to 0.4 lbf takes the place of chance.
inline HistoryBuilder wearingSet(int races, double perRace) {
    HistoryBuilder builder;
    for (int cylinder = 1; cylinder <= 8; ++cylinder) {
        for (const Place& place : {intake(cylinder), exhaust(cylinder)}) {
            std::vector<At> readings;
            for (int race = 0; race <= races; ++race) {
                const int wobble =
                    (7 * race + 5 * cylinder + (place.valve == Valve::Intake)) % 9 - 4;
                const double lbf = 120.0 + cylinder - perRace * race + 0.1 * wobble;
                readings.push_back({race, QString::number(lbf, 'f', 1).toStdString()});
            }
            const QByteArray label = placeText(place).toUtf8();
            builder.spring(place, label.constData(), readings);
        }
    }
    return builder;
}

} // namespace coilbook::testing
