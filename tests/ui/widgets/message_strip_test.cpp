#include "tests/support/printers.h"
#include "ui/widgets/message_strip.h"

#include <QLabel>
#include <QPushButton>
#include <QTest>
#include <gtest/gtest.h>

using namespace coilbook;

namespace {

QPushButton* buttonSaying(const QWidget& strip, const QString& text) {
    const QList<QPushButton*> buttons = strip.findChildren<QPushButton*>();
    for (QPushButton* button : buttons) {
        if (button->text() == text && !button->isHidden()) {
            return button;
        }
    }
    return nullptr;
}

TEST(MessageStripTest, ShowsMarkupFromFilesAsPlainText) {
    MessageStrip strip;
    const QString sentence = QStringLiteral("File <b>x</b> <img src=a> is not a logbook.");
    strip.tell(MessageStrip::Kind::Fault, sentence);
    EXPECT_EQ(strip.sentence(), sentence);
    const QList<QLabel*> labels = strip.findChildren<QLabel*>();
    for (const QLabel* label : labels) {
        if (!label->text().isEmpty()) {
            EXPECT_EQ(label->textFormat(), Qt::PlainText);
        }
    }
}

TEST(MessageStripTest, TakesTheWayOutAndCloses) {
    MessageStrip strip;
    int taken = 0;
    strip.tell(MessageStrip::Kind::Fault, QStringLiteral("The disk is full."),
               {{QStringLiteral("Try again"), [&taken] {
                     ++taken;
                 }}});
    EXPECT_FALSE(strip.isHidden());
    QTest::mouseClick(buttonSaying(strip, QStringLiteral("Try again")), Qt::LeftButton);
    EXPECT_EQ(taken, 1);
    EXPECT_TRUE(strip.isHidden());
    EXPECT_TRUE(strip.sentence().isEmpty());
}

TEST(MessageStripTest, ShowsOnlyTheNewestMessageWithItsWaysOut) {
    MessageStrip strip;
    strip.tell(MessageStrip::Kind::Fault, QStringLiteral("First."),
               {{QStringLiteral("Old way"), [] {
                 }}});
    strip.tell(MessageStrip::Kind::Notice, QStringLiteral("Second."),
               {{QStringLiteral("New way"), [] {
                 }}});
    EXPECT_EQ(strip.sentence(), QStringLiteral("Second."));
    EXPECT_EQ(buttonSaying(strip, QStringLiteral("Old way")), nullptr);
    EXPECT_NE(buttonSaying(strip, QStringLiteral("New way")), nullptr);
}

} // namespace
