#include "tests/support/printers.h"
#include "ui/widgets/physical_size.h"
#include "ui/widgets/reading_field.h"

#include <QSignalSpy>
#include <QTest>
#include <gtest/gtest.h>

namespace coilbook {
namespace {

void type(ReadingField& field, const char* text) {
    QTest::keyClicks(&field, QString::fromLatin1(text));
}

TEST(ReadingFieldTest, TakesDigitsWithPointOrComma) {
    ReadingField field;
    type(field, "121.50");
    EXPECT_EQ(field.text(), QStringLiteral("121.50"));
    field.clear();
    type(field, "117,25");
    EXPECT_EQ(field.text(), QStringLiteral("117,25"));
}

TEST(ReadingFieldTest, TheKeypadAloneWorksTheRound) {
    struct Case {
        Qt::Key key;
        void (ReadingField::*meaning)();
    };

    for (const Case& each : {Case{Qt::Key_Enter, &ReadingField::committed},
                             Case{Qt::Key_Plus, &ReadingField::furtherCommitted},
                             Case{Qt::Key_Minus, &ReadingField::skipped},
                             Case{Qt::Key_Asterisk, &ReadingField::retestToggled},
                             Case{Qt::Key_Slash, &ReadingField::correctionAsked},
                             Case{Qt::Key_PageUp, &ReadingField::steppedBack},
                             Case{Qt::Key_Down, &ReadingField::steppedOn}}) {
        ReadingField field;
        field.setText(QStringLiteral("12"));
        const QSignalSpy spy(&field, each.meaning);
        QTest::keyClick(&field, each.key, Qt::KeypadModifier);
        EXPECT_EQ(spy.count(), 1) << each.key;
        EXPECT_EQ(field.text(), QStringLiteral("12")) << "the key is not part of the reading";
    }
}

TEST(ReadingFieldTest, KeysOfAFastHandAreKeptWhileSomethingIsSaved) {
    ReadingField field;
    type(field, "1");
    field.hold();
    type(field, "20.5");
    EXPECT_EQ(field.text(), QStringLiteral("1"));
    field.clear();
    field.release();
    EXPECT_EQ(field.text(), QStringLiteral("20.5"));
}

TEST(ReadingFieldTest, AKeptEnterHoldsWhatFollowsIt) {
    ReadingField field;
    QObject::connect(&field, &ReadingField::committed, &field, &ReadingField::hold);
    field.hold();
    type(field, "12");
    QTest::keyClick(&field, Qt::Key_Enter);
    type(field, "34");
    field.release();
    EXPECT_EQ(field.text(), QStringLiteral("12"));
    field.clear();
    field.release();
    EXPECT_EQ(field.text(), QStringLiteral("34"));
}

TEST(ReadingFieldTest, AfterAFailureTheKeptKeysAreForgotten) {
    ReadingField field;
    type(field, "12");
    field.hold();
    type(field, "34");
    field.releaseAndForget();
    EXPECT_EQ(field.text(), QStringLiteral("12"));
}

TEST(ReadingFieldTest, ItsDigitsAreFifteenMillimetresTallAndSevenFitIn) {
    const ReadingField field;
    const QFontMetricsF metrics(field.font());
    const double digit = metrics.tightBoundingRect(QStringLiteral("0")).height();
    EXPECT_GE(digit, pixelsOf(15.0, field));
    EXPECT_GE(field.minimumSizeHint().width(),
              metrics.horizontalAdvance(QStringLiteral("4448.22")));
}

} // namespace
} // namespace coilbook
