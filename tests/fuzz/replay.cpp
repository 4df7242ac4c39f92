// Runs a fuzz target over files instead of inputs that a fuzzer makes up: coilbook_replay_X FOLDER
// … So the seeds, and with them every input that once crashed, are part of the ordinary tests.

#include "tests/fuzz/target.h"

#include <QDirIterator>

#include <cstdio>
#include <cstdlib>

int main(int argc, char** argv) {
    int inputs = 0;
    for (int i = 1; i < argc; ++i) {
        QDirIterator files(QString::fromLocal8Bit(argv[i]), QDir::Files);
        while (files.hasNext()) {
            const QByteArray bytes = coilbook::fuzz::contentOfFile(files.next());
            std::printf("%s\n", qPrintable(files.fileName()));
            std::fflush(stdout);
            LLVMFuzzerTestOneInput(reinterpret_cast<const std::uint8_t*>(bytes.constData()),
                                   static_cast<std::size_t>(bytes.size()));
            ++inputs;
        }
    }
    std::printf("%d inputs\n", inputs);
    return inputs > 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
