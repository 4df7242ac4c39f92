#include "core/exchange/import_report.h"

namespace coilbook {

ImportReport& ImportReport::operator+=(const ImportReport& other) {
    readingsRead += other.readingsRead;
    readingsAdded += other.readingsAdded;
    readingsKnown += other.readingsKnown;
    amendedOriginals += other.amendedOriginals;
    racesRead += other.racesRead;
    racesAdded += other.racesAdded;
    racesKnown += other.racesKnown;
    enginesMade += other.enginesMade;
    movedBaselines.insert(movedBaselines.end(), other.movedBaselines.begin(),
                          other.movedBaselines.end());
    return *this;
}

} // namespace coilbook
