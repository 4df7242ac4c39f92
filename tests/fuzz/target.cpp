#include "tests/fuzz/target.h"

#include <QCoreApplication>
#include <QFile>
#include <QFileInfo>
#include <QTemporaryDir>

#include <algorithm>
#include <cstdio>
#include <cstdlib>

namespace coilbook::fuzz {

QString folder() {
    static int count = 1;
    static char name[] = "coilbook_fuzz";
    static char* arguments[] = {name, nullptr};
    static const QCoreApplication application(count, arguments);
    static const QString memory = QStringLiteral("/dev/shm");
    static const QTemporaryDir ours = QFileInfo(memory).isWritable()
                                          ? QTemporaryDir(memory + QStringLiteral("/coilbook-fuzz"))
                                          : QTemporaryDir();
    expect(ours.isValid(), "no temporary folder");
    return ours.path();
}

QString writeInput(const char* name, const std::uint8_t* data, std::size_t size) {
    const QString path = folder() + QLatin1Char('/') + QString::fromLatin1(name);
    QFile file(path);
    const auto length = static_cast<qint64>(size);
    expect(file.open(QIODevice::WriteOnly | QIODevice::Truncate) &&
               file.write(reinterpret_cast<const char*>(data), length) == length,
           "the input cannot be written");
    return path;
}

QByteArray contentOfFile(const QString& path) {
    QFile file(path);
    expect(file.open(QIODevice::ReadOnly), "the file is gone");
    return file.readAll();
}

void expect(bool holds, const char* what) {
    if (!holds) {
        std::fprintf(stderr, "This does not hold: %s\n", what);
        std::abort();
    }
}

void expectPlain(const QString& message) {
    const bool isPlain = std::none_of(message.begin(), message.end(), [](QChar character) {
        return character.category() == QChar::Other_Control;
    });
    if (!isPlain) {
        std::fprintf(stderr, "%s\n", message.toUtf8().toPercentEncoding().constData());
    }
    expect(isPlain, "a message is free of control characters");
}

} // namespace coilbook::fuzz
