#include "core/storage/migrations.h"
#include "tests/support/printers.h"

#include <QFile>
#include <QRegularExpression>
#include <gtest/gtest.h>

namespace coilbook {
namespace {

QStringList statementsIn(const QString& dialect, const QString& name) {
    QFile file(QStringLiteral(COILBOOK_MIGRATIONS "/%1/%2.sql").arg(dialect, name));
    EXPECT_TRUE(file.open(QIODevice::ReadOnly)) << file.fileName().toStdString();
    return storage::statementsOf(QString::fromUtf8(file.readAll()));
}

const QString kFirst = QStringLiteral("0001_logbook");
const QString kUsersSay = QStringLiteral("0002_users_say");
const QString kSeals = QStringLiteral("0003_seals");
const QString kTesters = QStringLiteral("0004_testers");
const QString kSqlite = QStringLiteral("sqlite");
const QString kPostgresql = QStringLiteral("postgresql");

/// `table.column` of all that CREATE TABLE and ADD COLUMN declare.
QStringList columnsOf(const QStringList& statements) {
    const QRegularExpression table(QStringLiteral("^(?:CREATE|ALTER) TABLE (\\w+)"));
    const QRegularExpression column(
        QStringLiteral("(?:^    |ADD COLUMN )([a-z_]+) (?:INTEGER|BIGINT|TEXT)\\b"),
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
    ASSERT_EQ(storage::sqliteMigrations().size(), 5U);
    EXPECT_EQ(storage::sqliteMigrations()[0].statements, statementsIn(kSqlite, kFirst));
    EXPECT_EQ(storage::sqliteMigrations()[1].statements, statementsIn(kSqlite, kUsersSay));
    EXPECT_EQ(storage::sqliteMigrations()[2].statements, statementsIn(kSqlite, kSeals));
    EXPECT_EQ(storage::sqliteMigrations()[3].statements, statementsIn(kSqlite, kTesters));
    EXPECT_EQ(storage::sqliteMigrations()[4].statements,
              statementsIn(kSqlite, QStringLiteral("0005_plan")));
}

TEST(MigrationsTest, BothDialectsDeclareTheSameColumnsInTheSameOrder) {
    const QStringList first = columnsOf(statementsIn(kSqlite, kFirst));
    EXPECT_GT(first.size(), 80);
    EXPECT_EQ(columnsOf(statementsIn(kPostgresql, kFirst)), first);
    QStringList say = columnsOf(statementsIn(kSqlite, kUsersSay));
    // SQLite makes this table anew to change a rule of it; PostgreSQL changes the rule.
    const QString remade = QStringLiteral("amendment_2.");
    QStringList amendment = say.filter(remade);
    amendment.replaceInStrings(remade, QStringLiteral("amendment."));
    EXPECT_EQ(amendment, first.filter(QStringLiteral("amendment.")));
    say.removeIf([&](const QString& column) { return column.startsWith(remade); });
    EXPECT_EQ(say.size(), 29);
    EXPECT_EQ(columnsOf(statementsIn(kPostgresql, kUsersSay)), say);
    const QStringList seals = columnsOf(statementsIn(kSqlite, kSeals));
    EXPECT_EQ(seals.size(), 8 + 12);
    EXPECT_EQ(columnsOf(statementsIn(kPostgresql, kSeals)), seals);
    QStringList testers = columnsOf(statementsIn(kSqlite, kTesters));
    QStringList remadeAgain = testers.filter(remade);
    remadeAgain.replaceInStrings(remade, QStringLiteral("amendment."));
    EXPECT_EQ(remadeAgain, first.filter(QStringLiteral("amendment.")) +
                               seals.filter(QStringLiteral("amendment.")));
    testers.removeIf([&](const QString& column) { return column.startsWith(remade); });
    EXPECT_EQ(testers.size(), 6 + 12 + 12);
    EXPECT_EQ(columnsOf(statementsIn(kPostgresql, kTesters)), testers);
}

} // namespace
} // namespace coilbook
