#include "tests/support/printers.h"
#include "ui/widgets/engine_selector.h"

#include <QAbstractItemView>
#include <QCompleter>
#include <QLineEdit>
#include <QSignalSpy>
#include <QTest>
#include <gtest/gtest.h>

using namespace coilbook;

namespace {

/// Two hundred engines, the last of them retired.
std::vector<EngineSummary> twoHundred() {
    std::vector<EngineSummary> engines;
    for (int i = 1; i <= 200; ++i) {
        EngineSummary engine;
        engine.id = EngineId::make();
        engine.name = QStringLiteral("Block %1").arg(i, 3, 10, QLatin1Char('0'));
        engine.retired = i == 1;
        engines.push_back(engine);
    }
    return engines;
}

class EngineSelectorTest : public ::testing::Test {
protected:
    EngineSelectorTest() {
        selector.setEngines(engines);
        selector.setCurrentEngine(engines[4].id);
        QObject::connect(&selector, &EngineSelector::engineChosen, &selector,
                         [this](const EngineId& engine) { chosen.push_back(engine); });
        selector.show();
        EXPECT_TRUE(QTest::qWaitForWindowActive(&selector));
    }

    std::vector<EngineSummary> engines = twoHundred();
    EngineSelector selector;
    std::vector<EngineId> chosen;
};

TEST_F(EngineSelectorTest, PutsRetiredEnginesAtTheEndAndSaysSo) {
    EXPECT_EQ(selector.count(), 200);
    EXPECT_EQ(selector.itemText(0), QStringLiteral("Block 002"));
    EXPECT_EQ(selector.itemText(199), QStringLiteral("Block 001 (retired)"));
}

TEST_F(EngineSelectorTest, ChoosesByAnyPartOfTheNameAndEnter) {
    selector.startTyping();
    QTest::keyClicks(selector.lineEdit(), QStringLiteral("173"));
    QWidget* target = selector.completer()->popup()->isVisible()
                          ? static_cast<QWidget*>(selector.completer()->popup())
                          : selector.lineEdit();
    QTest::keyClick(target, Qt::Key_Return);
    ASSERT_EQ(chosen.size(), 1U);
    EXPECT_EQ(chosen.front(), engines[172].id);
    EXPECT_EQ(selector.currentText(), QStringLiteral("Block 173"));
}

TEST_F(EngineSelectorTest, LeavesEverythingAsItWasOnEscape) {
    const QSignalSpy left(&selector, &EngineSelector::left);
    selector.startTyping();
    QTest::keyClicks(selector.lineEdit(), QStringLiteral("zzz"));
    QTest::keyClick(selector.lineEdit(), Qt::Key_Escape);
    EXPECT_EQ(selector.currentText(), QStringLiteral("Block 005"));
    EXPECT_EQ(selector.lineEdit()->text(), QStringLiteral("Block 005"));
    EXPECT_TRUE(chosen.empty());
    EXPECT_EQ(left.count(), 1);
}

TEST_F(EngineSelectorTest, KeepsTheEngineWhenNothingFits) {
    selector.startTyping();
    QTest::keyClicks(selector.lineEdit(), QStringLiteral("no such"));
    QTest::keyClick(selector.lineEdit(), Qt::Key_Return);
    EXPECT_EQ(selector.lineEdit()->text(), QStringLiteral("Block 005"));
    EXPECT_TRUE(chosen.empty());
}

TEST_F(EngineSelectorTest, KeepsTheChoiceWhenTheListComesAnew) {
    engines.insert(engines.begin(),
                   EngineSummary{EngineId::make(), QStringLiteral("Alpha"), {}, false, 0, {}});
    selector.setEngines(engines);
    EXPECT_EQ(selector.currentText(), QStringLiteral("Block 005"));
    EXPECT_TRUE(chosen.empty());
}

} // namespace
