#pragma once

#include "core/services/logbook_session.h"
#include "core/services/round_start.h"
#include "tests/support/printers.h"
#include "ui/pages/bench_message.h"
#include "ui/pages/bench_page.h"
#include "ui/pages/bench_reading_panel.h"
#include "ui/pages/bench_round.h"
#include "ui/pages/bench_start_form.h"
#include "ui/preferences.h"
#include "ui/widgets/reading_field.h"

#include <QPushButton>
#include <QSettings>
#include <QTemporaryDir>
#include <QTest>
#include <gtest/gtest.h>

#include <functional>
#include <memory>

namespace coilbook::testing {

/// The real page on a real session on a file, with one engine, worked by key presses.
class BenchPageTest : public ::testing::Test {
protected:
    BenchPageTest() {
        preferences.setPersonName(QStringLiteral("Pat Miller"));
        engine.id = EngineId::make();
        engine.name = QStringLiteral("Blue");
    }

    [[nodiscard]] QString path() const { return folder.filePath(QStringLiteral("shop.coilbook")); }

    static void until(const std::function<bool()>& holds) {
        ASSERT_TRUE(QTest::qWaitFor(holds, 5000));
    }

    void makeLogbook() {
        session = std::make_unique<LogbookSession>(clock);
        session->createLogbook(path());
        until([&] { return session->isOpen(); });
        apply(AddEngine{engine, {}, {}});
        select();
    }

    /// Ends the session and starts anew on the same file, as after a restart of the program.
    void reopen() {
        page.reset();
        session = std::make_unique<LogbookSession>(clock);
        session->openLogbook(path());
        until([&] { return session->isOpen(); });
        select();
    }

    void select() {
        session->selectEngine(engine.id);
        until([&] { return session->log() != nullptr; });
    }

    void apply(const Change& change) {
        std::optional<Result<void>> result;
        session->apply(change, session.get(), [&](const Result<void>& done) { result = done; });
        until([&] { return result.has_value(); });
        ASSERT_TRUE(result->has_value()) << ::testing::PrintToString(result->error());
    }

    void showPage() {
        page = std::make_unique<BenchPage>(*session, preferences);
        page->resize(1366, 640);
        page->show();
        ASSERT_TRUE(QTest::qWaitForWindowActive(page.get()));
    }

    /// An inspection of all sixteen springs, each at `pressure` lbf, `daysAgo` from today.
    void inspect(int daysAgo, int races, int pressure) {
        const RoundFacts facts{
            QDate::currentDate().addDays(-daysAgo), races, {}, QStringLiteral("Pat Miller"), {}};
        const StartInspection start = startOf(engine.id, facts, false);
        apply(start);
        RecordReadings record;
        const Round round(*session->log(), start.inspection.id, RoundOrder::ByCylinder);
        for (const RoundStop& stop : round.stops()) {
            Reading reading;
            reading.id = ReadingId::make();
            reading.sitting = start.sitting.id;
            reading.place = stop.place;
            reading.value = TypedForce(pressure, 0, ForceUnit::PoundForce);
            reading.spring = stop.spring ? *stop.spring : SpringId::make();
            if (!stop.spring) {
                record.newSprings.push_back({reading.spring, stop.label, {}, {}, {}});
            }
            record.readings.push_back(reading);
        }
        apply(record);
    }

    void click(const char* text) {
        for (QPushButton* button : page->findChildren<QPushButton*>()) {
            if (button->text().startsWith(QString::fromLatin1(text)) && button->isVisible()) {
                QTest::mouseClick(button, Qt::LeftButton);
                return;
            }
        }
        FAIL() << "no button " << text;
    }

    void startRound() {
        click("Start the round");
        until([&] { return page->showsRound(); });
        if (page->round().showsCautions()) {
            press(Qt::Key_Enter);
        }
    }

    /// An Enter so soon after a question is no answer to it.
    void sayYes() {
        QTest::qWait(350);
        press(Qt::Key_Enter);
    }

    [[nodiscard]] BenchReadingPanel& panel() const { return page->round().panel(); }

    /// Typed into whatever has the focus, as a keyboard does.
    void type(const char* text) {
        QTest::keyClicks(page->focusWidget(), QString::fromLatin1(text));
    }

    void press(Qt::Key key) { QTest::keyClick(page->focusWidget(), key); }

    void waitForSaved() {
        until([&] { return panel().message().kind() == BenchMessage::Kind::Saved; });
    }

    /// The hits in force at a place as written, in the newest log.
    [[nodiscard]] QStringList hitsAt(const Place& place) const {
        const std::shared_ptr<const EngineLog> log = session->log();
        QStringList texts;
        for (const CurrentHit& hit : currentHits(*log)) {
            if (log->readings[hit.row].place == place) {
                texts.append(log->readings[hit.row].value.text());
            }
        }
        return texts;
    }

    SystemClock clock;
    QTemporaryDir folder;
    QSettings settings{folder.filePath(QStringLiteral("settings.ini")), QSettings::IniFormat};
    Preferences preferences{settings};
    Engine engine;
    std::unique_ptr<LogbookSession> session;
    std::unique_ptr<BenchPage> page;
};

inline Place at(int cylinder, Valve valve) {
    return {Cylinder(cylinder), valve};
}

} // namespace coilbook::testing
