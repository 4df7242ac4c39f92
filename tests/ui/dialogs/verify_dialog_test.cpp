#include "core/storage/logbook_store.h"
#include "tests/support/printers.h"
#include "tests/ui/window/logbook_fixture.h"
#include "ui/dialogs/verify_dialog.h"

#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>

using namespace coilbook;

namespace {

class VerifyDialogTest : public coilbook::testing::LogbookFixture {
protected:
    void SetUp() override {
        makeLogbook();
        addEngine(QStringLiteral("Blue"));
        dialog = std::make_unique<VerifyDialog>(session);
        dialog->setAttribute(Qt::WA_DeleteOnClose, false);
        dialog->show();
        ASSERT_TRUE(QTest::qWaitForWindowActive(dialog.get()));
        ASSERT_TRUE(waitFor([this] { return button("ask")->isEnabled(); }));
    }

    [[nodiscard]] QPushButton* button(const char* name) const {
        return dialog->findChild<QPushButton*>(QString::fromLatin1(name));
    }

    [[nodiscard]] QString label(const char* name) const {
        return dialog->findChild<QLabel*>(QString::fromLatin1(name))->text();
    }

    void ask(const QString& seal) const {
        auto* field = dialog->findChild<QLineEdit*>(QStringLiteral("seal"));
        field->selectAll();
        QTest::keyClicks(field, seal);
        QTest::keyClick(field, Qt::Key_Return);
        ASSERT_TRUE(waitFor([this] { return !label("answer").isEmpty(); }));
    }

    std::unique_ptr<VerifyDialog> dialog;
};

TEST_F(VerifyDialogTest, SaysThatNothingIsWrongAndFromWhereOnItIsSealed) {
    EXPECT_EQ(label("outcome"), QStringLiteral("1 row checked, nothing wrong."));
    const QString list =
        dialog->findChild<QPlainTextEdit*>(QStringLiteral("findings"))->toPlainText();
    EXPECT_TRUE(list.contains(QStringLiteral("Sealed from its first entry on.")))
        << list.toStdString();
    EXPECT_TRUE(list.contains(QStringLiteral("Newest seal: 2:"))) << list.toStdString();
}

TEST_F(VerifyDialogTest, TellsWhetherTheLogbookPassedThroughANotedSeal) {
    ASSERT_TRUE(session.seal().has_value());
    ask(session.seal()->shortText());
    EXPECT_TRUE(label("answer").startsWith(QStringLiteral("Yes: ")))
        << label("answer").toStdString();
    ask(QStringLiteral("2:00000000"));
    EXPECT_TRUE(label("answer").startsWith(QStringLiteral("No: ")))
        << label("answer").toStdString();
    ask(QStringLiteral("77:00000000"));
    EXPECT_TRUE(label("answer").startsWith(QStringLiteral("No: ")))
        << label("answer").toStdString();
    ask(QStringLiteral("nonsense"));
    EXPECT_TRUE(label("answer").startsWith(QStringLiteral("This is not a seal.")));
}

} // namespace
