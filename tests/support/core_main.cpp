#include "tests/support/fatal_messages.h"

#include <QCoreApplication>
#include <QStandardPaths>
#include <gtest/gtest.h>

int main(int argc, char** argv) {
    ::testing::InitGoogleTest(&argc, argv);
    const QCoreApplication application(argc, argv);
    QStandardPaths::setTestModeEnabled(true);
    coilbook::testing::failOnWarnings();
    return RUN_ALL_TESTS();
}
