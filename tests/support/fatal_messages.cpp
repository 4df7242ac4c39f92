#include "tests/support/fatal_messages.h"

#include <QString>
#include <gtest/gtest.h>

#include <cstdio>

namespace coilbook::testing {

namespace {

void handleMessage(QtMsgType type, const QMessageLogContext& context, const QString& text) {
    const QByteArray utf8 = text.toUtf8();
    if (type == QtDebugMsg || type == QtInfoMsg) {
        std::fprintf(stderr, "%s\n", utf8.constData());
        return;
    }
    // Qt's offscreen platform says so of every window that it shows; there is nothing to mend.
    if (text.startsWith(QLatin1String("This plugin does not support "))) {
        return;
    }
    ADD_FAILURE() << "Qt says (" << (context.category != nullptr ? context.category : "default")
                  << "): " << utf8.constData();
}

} // namespace

void failOnWarnings() {
    qInstallMessageHandler(handleMessage);
}

} // namespace coilbook::testing
