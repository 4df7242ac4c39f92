#include "tests/support/log_builder.h"
#include "tests/support/printers.h"
#include "ui/dialogs/swap_dialog.h"

#include <QComboBox>
#include <QLineEdit>
#include <QPushButton>
#include <QSettings>
#include <QTemporaryDir>
#include <QTest>
#include <gtest/gtest.h>

namespace coilbook {
namespace {

using testing::exhaust;
using testing::LogBuilder;

class SwapDialogTest : public ::testing::Test {
protected:
    SwapDialogTest() {
        LogBuilder builder;
        builder.inspection(QDate(2026, 4, 1), 2);
        (void)builder.reading(exhaust(3), QStringLiteral("S-06"), QStringLiteral("121.5"));
        builder.log().springs.push_back({SpringId::make(),
                                         QStringLiteral("S-02"),
                                         QStringLiteral("dual 1.55"),
                                         QStringLiteral("B4"),
                                         {}});
        dialog = std::make_unique<SwapDialog>(std::make_shared<const EngineLog>(builder.log()),
                                              exhaust(3), preferences, clock);
        QObject::connect(dialog.get(), &SwapDialog::swapReady, dialog.get(),
                         [this](const FitSpring& swap) { swaps.push_back(swap); });
    }

    [[nodiscard]] QLineEdit* field(const char* name) const {
        for (QLineEdit* line : dialog->findChildren<QLineEdit*>()) {
            if (line->accessibleName().startsWith(QLatin1String(name))) {
                return line;
            }
        }
        return nullptr;
    }

    [[nodiscard]] QComboBox* label() const { return dialog->findChildren<QComboBox*>().front(); }

    void record() const {
        for (QPushButton* button : dialog->findChildren<QPushButton*>()) {
            if (button->isDefault()) {
                button->click();
            }
        }
    }

    QTemporaryDir folder;
    QSettings settings{folder.filePath(QStringLiteral("s.ini")), QSettings::IniFormat};
    Preferences preferences{settings};
    SystemClock clock;
    std::unique_ptr<SwapDialog> dialog;
    std::vector<FitSpring> swaps;
};

TEST_F(SwapDialogTest, IsReadyToRecordAsItOpens) {
    record();
    ASSERT_EQ(swaps.size(), 1U);
    EXPECT_EQ(swaps[0].fitting.place, exhaust(3));
    EXPECT_EQ(swaps[0].fitting.fittedOn, QDate(2026, 4, 1));
    EXPECT_EQ(swaps[0].fitting.engineRaces, 2);
    ASSERT_TRUE(swaps[0].newSpring.has_value());
    EXPECT_EQ(swaps[0].newSpring->label, QStringLiteral("S-07"));
}

TEST_F(SwapDialogTest, TakesSeveralBaselineHits) {
    ASSERT_NE(field("Baseline"), nullptr);
    field("Baseline")->setText(QStringLiteral("122.5  122"));
    record();
    ASSERT_EQ(swaps.size(), 1U);
    EXPECT_EQ(swaps[0].baseline.size(), 2U);
}

TEST_F(SwapDialogTest, SaysWhatIsWrongInPlaceAndHandsNothingOver) {
    label()->setCurrentText(QStringLiteral("S-06"));
    field("Baseline")->setText(QStringLiteral("many"));
    record();
    EXPECT_TRUE(swaps.empty());
    EXPECT_TRUE(dialog->faults().contains(QStringLiteral("“S-06” is fitted at 3 E")));
    EXPECT_TRUE(dialog->faults().contains(QStringLiteral("“many” is not a reading")));
    label()->setCurrentText(QStringLiteral("S-09"));
    field("Baseline")->clear();
    record();
    EXPECT_EQ(swaps.size(), 1U);
    EXPECT_TRUE(dialog->faults().isEmpty());
}

TEST_F(SwapDialogTest, ShowsPartAndBatchOfASpringFromTheShelf) {
    label()->setCurrentText(QStringLiteral("S-02"));
    EXPECT_EQ(field("Part")->text(), QStringLiteral("dual 1.55"));
    EXPECT_TRUE(field("Part")->isReadOnly());
    EXPECT_EQ(field("Batch")->text(), QStringLiteral("B4"));
}

TEST_F(SwapDialogTest, KeepsWhatWasTypedWhenTheDiskRefuses) {
    label()->setCurrentText(QStringLiteral("S-09"));
    record();
    dialog->showFailure(QStringLiteral("The disk is full."));
    EXPECT_EQ(dialog->faults(), QStringLiteral("The disk is full."));
    EXPECT_EQ(label()->currentText(), QStringLiteral("S-09"));
    record();
    EXPECT_EQ(swaps.size(), 2U);
}

} // namespace
} // namespace coilbook
