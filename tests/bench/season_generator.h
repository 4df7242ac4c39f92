#pragma once

#include <QFile>
#include <QString>

#include <cstdint>

namespace coilbook::bench {

/// Writes a readings.csv of `rows` rows for `engines` engines of sixteen springs with three hits
/// each, inspection after inspection, as a shop would have it after many seasons. The same figures
/// every time. False if the file cannot be written.
inline bool writeReadings(const QString& path, int rows, int engines) {
    QFile file(path);
    if (!file.open(QIODevice::WriteOnly)) {
        return false;
    }
    constexpr int kHits = 3;
    constexpr int kPlaces = 16;
    const int inspections = (rows + engines * kPlaces * kHits - 1) / (engines * kPlaces * kHits);
    QByteArray text("engine,inspected_on,engine_races,cylinder,valve,spring,reading_lbf,hit,"
                    "tester,inspector\n");
    std::uint32_t noise = 1;
    int written = 0;
    for (int engine = 0; engine < engines; ++engine) {
        for (int inspection = 0; inspection < inspections; ++inspection) {
            const QByteArray head =
                "E" + QByteArray::number(1000 + engine) + ',' +
                QDate(2000, 1, 1).addDays(7 * inspection).toString(Qt::ISODate).toLatin1() + ',' +
                QByteArray::number(2 * inspection) + ',';
            for (int place = 0; place < kPlaces; ++place) {
                for (int hit = 1; hit <= kHits && written < rows; ++hit, ++written) {
                    noise = noise * 1664525U + 1013904223U; // Numerical Recipes' generator
                    text += head + QByteArray::number(place / 2 + 1) +
                            (place % 2 ? ",E,S" : ",I,S") + QByteArray::number(place + 1) + ',' +
                            QByteArray::number(110 + static_cast<int>(noise >> 28U)) +
                            ((noise >> 27U) & 1U ? ".5," : ",") + QByteArray::number(hit) +
                            ",Bench 160,Kim\n";
                }
            }
            if (text.size() > (1 << 20)) {
                if (file.write(text) != text.size()) {
                    return false;
                }
                text.clear();
            }
        }
    }
    return file.write(text) == text.size();
}

} // namespace coilbook::bench
