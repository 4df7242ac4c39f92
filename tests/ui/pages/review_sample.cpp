#include "tests/ui/pages/review_sample.h"

#include "tests/support/log_builder.h"

namespace coilbook::testing {

namespace {

QString label(int number) {
    return QStringLiteral("S-%1").arg(number, 2, 10, QLatin1Char('0'));
}

/// Loss per race in hundredths of a pound-force: two springs wear faster than the rest.
int wearOf(int spring) {
    switch (spring) {
    case 6:
        return 82;
    case 13:
        return 58;
    default:
        return 18 + spring % 5 * 4;
    }
}

QString reading(int spring, int race) {
    const int wobble = (spring * 7 + race * 3 + race * race) % 5 * 16 - 32;
    const int hundredths = 12000 + spring * 25 - wearOf(spring) * race + wobble;
    return QStringLiteral("%1.%2")
        .arg(hundredths / 100)
        .arg(hundredths % 100, 2, 10, QLatin1Char('0'));
}

} // namespace

EngineLog reviewSample(int inspections) {
    LogBuilder builder;
    builder.log().engine.name = QStringLiteral("Blue");
    builder.log().engine.rpmCeiling = 9200;
    const QDate start(2026, 3, 1);
    const std::vector<Place> places = builder.log().engine.layout.places();
    for (int race = 0; race < inspections; ++race) {
        if (race > 0) {
            builder.race(race, start.addDays(14 * race - 1), race == 4 ? 9450 : 9000);
        }
        builder.inspection(start.addDays(14 * race), race);
        for (int i = 0; i < static_cast<int>(places.size()); ++i) {
            const bool swapped = i == 9 && race >= 3;
            const int spring = swapped ? 17 : i + 1;
            const ReadingId id = builder.reading(places[static_cast<std::size_t>(i)], label(spring),
                                                 reading(spring, swapped ? race - 3 : race));
            if (i == 5 && race == 1) {
                (void)builder.amendment(id, QStringLiteral("120.70"));
                builder.log().readings.back().author.who = QStringLiteral("Bench");
            }
        }
        if (race == 3) {
            (void)builder.reading(places[9], label(10), reading(10, race));
        }
    }
    return builder.log();
}

EngineLog reviewSample() {
    return reviewSample(8);
}

} // namespace coilbook::testing
