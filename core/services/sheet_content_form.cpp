#include "core/services/sheet_content_form.h"

#include "core/services/sheet_content.h"
#include "core/wording/wording.h"

#include <algorithm>

namespace coilbook {

RoundFormContent roundFormContentOf(const Engine& engine, const Assessment& assessment,
                                    const Quantities& quantities, const Moment& printedAt) {
    RoundFormContent content;
    content.engine = engine.name;
    content.serial = engine.serial;
    content.racesRun = QString::number(assessment.racesNow);
    content.unit = quantities.unitName();
    content.layout = engine.layout;
    for (const Bank& bank : engine.layout.banks) {
        for (const Place& place : bank.places) {
            const auto spring = std::find_if(
                assessment.springs.begin(), assessment.springs.end(),
                [&](const SpringAssessment& assessed) { return assessed.place == place; });
            RoundFormPlace entry{place, {}, {}};
            if (spring != assessment.springs.end()) {
                entry.label = spring->label;
                entry.latest = spring->latest ? quantities.force(*spring->latest) : QString();
            }
            content.places.push_back(std::move(entry));
        }
    }
    content.cautions = wording::cautions();
    content.printedAt = printedMoment(printedAt);
    return content;
}

} // namespace coilbook
