#include "core/storage/migrations.h"
#include "tests/support/printers.h"

#include <QFile>
#include <QRegularExpression>
#include <gtest/gtest.h>

namespace coilbook {
namespace {

QStringList statementsIn(const QString& dialect) {
    QFile file(QStringLiteral(COILBOOK_MIGRATIONS "/%1/0001_logbook.sql").arg(dialect));
    EXPECT_TRUE(file.open(QIODevice::ReadOnly)) << file.fileName().toStdString();
    return storage::statementsOf(QString::fromUtf8(file.readAll()));
}

/// `table.column` of all that CREATE TABLE statements declare.
QStringList columnsOf(const QStringList& statements) {
    const QRegularExpression table(QStringLiteral("^CREATE TABLE (\\w+)"));
    const QRegularExpression column(QStringLiteral("^    ([a-z_]+) (?:INTEGER|BIGINT|TEXT)\\b"),
                                    QRegularExpression::MultilineOption);
    QStringList columns;
    for (const QString& statement : statements) {
        const QRegularExpressionMatch name = table.match(statement);
        if (!name.hasMatch()) {
            continue;
        }
        QRegularExpressionMatchIterator found = column.globalMatch(statement);
        while (found.hasNext()) {
            columns << name.captured(1) + QLatin1Char('.') + found.next().captured(1);
        }
    }
    return columns;
}

TEST(MigrationsTest, StatementsAreParagraphsWithoutTheirComments) {
    EXPECT_EQ(storage::statementsOf(QStringLiteral("-- why\n\nA\n  b;\n\n\n-- how\nC;\n")),
              (QStringList{QStringLiteral("A\n  b;\n"), QStringLiteral("C;\n")}));
    EXPECT_TRUE(storage::statementsOf(QString()).isEmpty());
}

TEST(MigrationsTest, TheProgramCarriesTheTextsOfTheTree) {
    EXPECT_EQ(storage::sqliteMigrations().front().statements,
              statementsIn(QStringLiteral("sqlite")));
}

TEST(MigrationsTest, BothDialectsDeclareTheSameColumnsInTheSameOrder) {
    const QStringList sqlite = columnsOf(statementsIn(QStringLiteral("sqlite")));
    EXPECT_GT(sqlite.size(), 80);
    EXPECT_EQ(columnsOf(statementsIn(QStringLiteral("postgresql"))), sqlite);
}

} // namespace
} // namespace coilbook
