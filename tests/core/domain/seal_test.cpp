#include "core/domain/seal.h"
#include "tests/support/printers.h"

#include <gtest/gtest.h>

namespace coilbook {
namespace {

QString digits(qsizetype number) {
    return QString(number, QLatin1Char('a'));
}

TEST(SealTest, ANotedSealIsReadInEitherCase) {
    const std::optional<NotedSeal> noted = NotedSeal::parse(u" 118:9F3a2b7c01DE44aa ");
    ASSERT_TRUE(noted.has_value());
    EXPECT_EQ(noted->number, 118);
    EXPECT_EQ(noted->digest, QStringLiteral("9f3a2b7c01de44aa"));
    EXPECT_TRUE(NotedSeal::parse(QStringLiteral("1:") + digits(8)).has_value());
    EXPECT_TRUE(NotedSeal::parse(QStringLiteral("1:") + digits(64)).has_value());
}

TEST(SealTest, AnythingElseIsNoSeal) {
    for (const QString& text :
         {QString(), QStringLiteral(":"), QStringLiteral("118"), QStringLiteral(":9f3a2b7c"),
          QStringLiteral("118:"), QStringLiteral("0:9f3a2b7c"), QStringLiteral("-1:9f3a2b7c"),
          QStringLiteral("+1:9f3a2b7c"), QStringLiteral("1:9f3a2b7g"),
          QStringLiteral("1:") + digits(7), QStringLiteral("1:") + digits(65),
          QStringLiteral("99999999999999999999:9f3a2b7c"), QStringLiteral("1:9f3a:2b7c"),
          QStringLiteral("1 1:9f3a2b7c")}) {
        EXPECT_FALSE(NotedSeal::parse(text).has_value()) << text.toStdString();
    }
}

TEST(SealTest, WhatIsPrintedIsReadAgain) {
    const NotedSeal seal{7, digits(64)};
    EXPECT_EQ(seal.shortText(), QStringLiteral("7:") + digits(16));
    const std::optional<NotedSeal> noted = NotedSeal::parse(seal.shortText());
    ASSERT_TRUE(noted.has_value());
    EXPECT_EQ(noted->number, seal.number);
    EXPECT_TRUE(seal.digest.startsWith(noted->digest));
}

} // namespace
} // namespace coilbook
