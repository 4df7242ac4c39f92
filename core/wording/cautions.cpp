#include "core/wording/wording.h"
#include "core/wording/words.h"

#include <QStringList>

namespace coilbook::wording {

QStringList cautions() {
    return {
        Words::tr("A compressed valve spring holds enough force to injure: use the right "
                  "compressor, keep fingers and face out of its line, and wear eye protection."),
        Words::tr("Keepers and retainers can fly off; make sure that the keepers are seated before "
                  "you let a spring go, and again before the engine is turned."),
        Words::tr("Nobody turns the crank while hands or tools are in the valve train: switch off "
                  "and secure ignition and starter first."),
        Words::tr("Let a hot engine cool, or wear gloves: oil, covers and headers burn."),
        Words::tr("Air that holds the valves up can turn the crank; keep clear of the belts, the "
                  "fan and the valve train."),
        Words::tr("Coilbook keeps records and projects trends; it does not find cracks. The rules "
                  "of your series, the engine builder's data and licensed practice come first."),
    };
}

} // namespace coilbook::wording
