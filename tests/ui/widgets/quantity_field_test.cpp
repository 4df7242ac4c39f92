#include "tests/support/printers.h"
#include "ui/widgets/quantity_field.h"
#include "ui/widgets/whole_number_field.h"

#include <QTest>
#include <gtest/gtest.h>

using namespace coilbook;

namespace {

/// Sets the default locale for one test.
class Locale {
public:
    explicit Locale(const QLocale& locale) { QLocale::setDefault(locale); }

    ~Locale() { QLocale::setDefault(m_before); }

    Locale(const Locale&) = delete;
    Locale& operator=(const Locale&) = delete;

private:
    QLocale m_before;
};

TEST(QuantityFieldTest, GivesBackWhatWasSetToTheLastHiddenDigit) {
    QuantityField field(ForceUnit::PoundForce);
    const TypedForce inNewtons(2224111, 4, ForceUnit::Newton); // 222.4111 N
    field.setTyped(inNewtons);
    EXPECT_EQ(field.text(), QStringLiteral("50"));
    ASSERT_TRUE(field.typed());
    EXPECT_EQ(*field.typed(), inNewtons);

    const Force third = Force::poundsForce(10.0 / 3.0);
    field.setForce(third);
    EXPECT_EQ(field.text(), QStringLiteral("3.33"));
    EXPECT_EQ(field.force(), third);
}

TEST(QuantityFieldTest, TakesAFreshValueOnceSomebodyTypes) {
    QuantityField field(ForceUnit::PoundForce);
    field.setForce(Force::poundsForce(10.0 / 3.0));
    field.selectAll();
    QTest::keyClicks(&field, QStringLiteral("4.50"));
    ASSERT_TRUE(field.typed());
    EXPECT_EQ(*field.typed(), TypedForce(450, 2, ForceUnit::PoundForce));
}

TEST(QuantityFieldTest, TakesACommaAndAPointInAnyLocale) {
    for (const QLocale& locale : {QLocale::c(), QLocale(QLocale::German, QLocale::Germany)}) {
        const Locale inForce(locale);
        for (const QString& text : {QStringLiteral("117.5"), QStringLiteral("117,5")}) {
            QuantityField field(ForceUnit::Newton);
            QTest::keyClicks(&field, text);
            ASSERT_TRUE(field.typed()) << text.toStdString();
            EXPECT_EQ(*field.typed(), TypedForce(1175, 1, ForceUnit::Newton));
        }
    }
}

TEST(QuantityFieldTest, ShowsTheDecimalMarkOfTheLocale) {
    const Locale german(QLocale(QLocale::German, QLocale::Germany));
    QuantityField field(ForceUnit::PoundForce);
    field.setTyped(TypedForce(12150, 2, ForceUnit::PoundForce));
    EXPECT_EQ(field.text(), QStringLiteral("121,50"));
    field.setForce(Force::poundsForce(1234.5));
    EXPECT_EQ(field.text(), QStringLiteral("1234,5"));
}

TEST(QuantityFieldTest, TellsBlankFromWrong) {
    QuantityField field(ForceUnit::PoundForce);
    EXPECT_TRUE(field.isBlank());
    EXPECT_FALSE(field.isFault());
    for (const char* wrong : {"abc", "-5", "1e2", "0", "1000.1", "1 2", "nan"}) {
        field.setText(QString::fromLatin1(wrong));
        EXPECT_TRUE(field.isFault()) << wrong;
        EXPECT_FALSE(field.force()) << wrong;
    }
}

TEST(WholeNumberFieldTest, TakesOnlyWholeNumbersWithinItsBounds) {
    WholeNumberField field(0, 60);
    EXPECT_FALSE(field.value());
    EXPECT_FALSE(field.isFault());
    field.setText(QStringLiteral(" 60 "));
    EXPECT_EQ(field.value(), 60);
    for (const char* wrong : {"61", "-1", "2.5", "2,5", "x", "99999999999"}) {
        field.setText(QString::fromLatin1(wrong));
        EXPECT_TRUE(field.isFault()) << wrong;
    }
}

} // namespace
