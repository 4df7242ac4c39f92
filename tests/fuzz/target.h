#pragma once

#include <QByteArray>
#include <QString>

#include <cstddef>
#include <cstdint>

/// What libFuzzer calls with each input, and replay.cpp with each seed.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

namespace coilbook::fuzz {

/// A folder of this process, in memory where there is /dev/shm; it is removed at the end. The first
/// call also makes the QCoreApplication that Qt Sql needs.
[[nodiscard]] QString folder();

/// Writes the input as a file of that name in folder(), and gives its path.
[[nodiscard]] QString writeInput(const char* name, const std::uint8_t* data, std::size_t size);

[[nodiscard]] QByteArray contentOfFile(const QString& path);

/// Ends the process, which the fuzzer reports with the input, unless `holds`.
void expect(bool holds, const char* what);

/// That a message has no control character: they are escape codes to a terminal.
void expectPlain(const QString& message);

} // namespace coilbook::fuzz
