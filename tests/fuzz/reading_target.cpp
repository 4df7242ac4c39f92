// Any text as a reading. What is taken is kept as typed, so it must come back as typed.

#include "core/services/round_verdict.h"
#include "core/wording/wording.h"
#include "tests/fuzz/target.h"

#include <cmath>

namespace coilbook {
namespace {

void read(const QString& text, ForceUnit unit) {
    if (const auto typed = TypedForce::parse(text, unit)) {
        fuzz::expect(TypedForce::parse(typed->text(), unit) == typed, "text() reads as the same");
        fuzz::expect(std::isfinite(typed->force().inNewtons()), "a force is a number");
        fuzz::expect(typed->force() >= Force(), "nothing is below 0");
    }
    const Result<TypedForce> reading = readingFromText(text, unit);
    if (reading) {
        fuzz::expect(reading->isWithinBounds(), "a reading is within bounds");
    } else {
        fuzz::expectPlain(wording::sentence(reading.error()));
    }
}

} // namespace
} // namespace coilbook

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    using namespace coilbook;
    const auto* bytes = reinterpret_cast<const char*>(data);
    const auto length = static_cast<qsizetype>(size);
    for (const ForceUnit unit : {ForceUnit::PoundForce, ForceUnit::Newton}) {
        read(QString::fromUtf8(bytes, length), unit);
        read(QString(reinterpret_cast<const QChar*>(QByteArray(bytes, length).constData()),
                     length / 2),
             unit);
    }
    return 0;
}
