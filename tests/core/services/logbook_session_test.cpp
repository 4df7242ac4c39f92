#include "core/domain/shelf.h"
#include "core/services/logbook_session.h"
#include "tests/support/session_fixture.h"

#include <QDir>
#include <QFileInfo>

namespace coilbook {
namespace {

using testing::SessionTest;
using testing::waitFor;

class LogbookSessionTest : public SessionTest {
protected:
    /// An engine with one open inspection, selected.
    void startInspection() {
        m_engine.id = EngineId::make();
        m_engine.name = QStringLiteral("Heron");
        ASSERT_TRUE(apply(AddEngine{m_engine, {}, {}}).has_value());
        select(m_engine.id);
        m_inspection = {InspectionId::make(), m_engine.id, QDate(2026, 5, 2), 3, false};
        m_sitting = {SittingId::make(), m_inspection.id, std::nullopt, {}, std::nullopt};
        ASSERT_TRUE(apply(StartInspection{m_inspection, m_sitting}).has_value());
    }

    Reading hit(const QString& lbf) {
        Reading reading;
        reading.id = ReadingId::make();
        reading.sitting = m_sitting.id;
        reading.spring = m_spring.id;
        reading.place = {Cylinder(3), Valve::Exhaust};
        reading.hit = ++m_hits;
        reading.value = *TypedForce::parse(lbf, ForceUnit::PoundForce);
        reading.author.at = m_clock.now();
        return reading;
    }

    QStringList inForce() const {
        QStringList values;
        for (const CurrentHit& current : currentHits(*m_session.log())) {
            values << m_session.log()->readings[current.row].value.text();
        }
        return values;
    }

    void undo() {
        const auto before = m_session.log();
        m_session.undo();
        waitFor([&] { return m_session.log() != before; });
    }

    void redo() {
        const auto before = m_session.log();
        m_session.redo();
        waitFor([&] { return m_session.log() != before; });
    }

    Engine m_engine;
    Inspection m_inspection;
    Sitting m_sitting;
    Spring m_spring{SpringId::make(), QStringLiteral("S-27"), {}, {}, {}};
    int m_hits = 0;
};

TEST_F(LogbookSessionTest, AReadingIsThereWhenItIsToldToBeSaved) {
    startInspection();
    ASSERT_TRUE(apply(RecordReadings{{hit(QStringLiteral("121.50"))}, {m_spring}}).has_value());
    EXPECT_EQ(inForce(), QStringList{QStringLiteral("121.50")});

    LogbookSession second(m_clock); // another window on the same file
    second.openLogbook(path());
    waitFor([&] { return second.isOpen(); });
    EXPECT_TRUE(second.isReadOnly()) << "the first one holds it";
    second.selectEngine(m_engine.id);
    waitFor([&] { return second.log() != nullptr; });
    EXPECT_EQ(second.log()->readings.size(), 1U);
}

TEST_F(LogbookSessionTest, AnAssessmentFollowsTheLog) {
    startInspection();
    ASSERT_TRUE(apply(RecordReadings{{hit(QStringLiteral("121.50"))}, {m_spring}}).has_value());
    waitFor([&] { return m_session.assessment() && !m_session.assessment()->springs.empty(); });
    EXPECT_EQ(m_session.assessment()->springs.front().baseline, Force::poundsForce(121.5));
}

TEST_F(LogbookSessionTest, UndoWithdrawsAReadingAndRedoBringsItBack) {
    startInspection();
    ASSERT_TRUE(apply(RecordReadings{{hit(QStringLiteral("121.50"))}, {m_spring}}).has_value());
    EXPECT_EQ(m_session.undoText(), QStringLiteral("Reading 3 E"));
    undo();
    EXPECT_TRUE(inForce().isEmpty());
    EXPECT_EQ(m_session.log()->readings.size(), 2U) << "the reading as taken stays";
    EXPECT_EQ(m_session.redoText(), QStringLiteral("Reading 3 E"));
    redo();
    EXPECT_EQ(inForce(), QStringList{QStringLiteral("121.50")});
    undo();
    EXPECT_TRUE(inForce().isEmpty());
}

TEST_F(LogbookSessionTest, UndoOfACorrectionBringsBackTheValueBeforeIt) {
    startInspection();
    const Reading first = hit(QStringLiteral("171.5"));
    ASSERT_TRUE(apply(RecordReadings{{first}, {m_spring}}).has_value());
    Reading correction = first;
    correction.id = ReadingId::make();
    correction.amends = first.id;
    correction.kind = ReadingKind::Correction;
    correction.value = *TypedForce::parse(u"117.5", ForceUnit::PoundForce);
    correction.author.why = QStringLiteral("Digits swapped");
    ASSERT_TRUE(apply(AmendReading{correction}).has_value());
    EXPECT_EQ(inForce(), QStringList{QStringLiteral("117.5")});
    undo();
    EXPECT_EQ(inForce(), QStringList{QStringLiteral("171.5")});
    redo();
    EXPECT_EQ(inForce(), QStringList{QStringLiteral("117.5")});
}

TEST_F(LogbookSessionTest, UndoOfASwapPutsTheOldSpringBackWithItsHistory) {
    startInspection();
    ASSERT_TRUE(apply(RecordReadings{{hit(QStringLiteral("121.50"))}, {m_spring}}).has_value());
    const Spring fresh{SpringId::make(), QStringLiteral("S-28"), {}, {}, {}};
    FitSpring swap;
    swap.fitting = {FittingId::make(),
                    m_engine.id,
                    fresh.id,
                    {Cylinder(3), Valve::Exhaust},
                    m_inspection.inspectedOn,
                    3,
                    QStringLiteral("Past the limit"),
                    false};
    swap.newSpring = fresh;
    Reading baseline = hit(QStringLiteral("128.0"));
    baseline.spring = fresh.id;
    baseline.hit = 1;
    swap.baseline = {baseline};
    swap.outgoing = Shelving{ShelvingId::make(),
                             m_engine.id,
                             m_spring.id,
                             Storage::Scrap,
                             m_inspection.inspectedOn,
                             {},
                             {},
                             {},
                             QStringLiteral("Past the limit"),
                             false};
    ASSERT_TRUE(apply(swap).has_value());
    const auto scrap = [&] {
        QStringList labels;
        for (const ShelvedSpring& spring : shelfOf(*m_session.log(), *m_session.history())) {
            labels << (spring.where == Storage::Scrap ? spring.spring.label : QString());
        }
        return labels.join(QLatin1Char(' '));
    };
    const auto fittedAt3E = [&] {
        for (const std::size_t life : fittedLives(*m_session.history())) {
            return m_session.history()->lives[life].label;
        }
        return QString();
    };
    EXPECT_EQ(fittedAt3E(), QStringLiteral("S-28"));
    EXPECT_EQ(scrap(), QStringLiteral("S-27"));
    undo();
    EXPECT_EQ(fittedAt3E(), QStringLiteral("S-27"));
    EXPECT_EQ(scrap(), QString()) << "one step back and forth";
    redo();
    EXPECT_EQ(fittedAt3E(), QStringLiteral("S-28"));
    EXPECT_EQ(scrap(), QStringLiteral("S-27"));
}

TEST_F(LogbookSessionTest, UndoOfAWithdrawnFittingPutsItInForceAgain) {
    startInspection();
    const Spring fresh{SpringId::make(), QStringLiteral("S-28"), {}, {}, {}};
    FitSpring swap;
    swap.fitting = {FittingId::make(),
                    m_engine.id,
                    fresh.id,
                    {Cylinder(3), Valve::Exhaust},
                    m_inspection.inspectedOn,
                    3,
                    QStringLiteral("Past the limit"),
                    false};
    swap.newSpring = fresh;
    ASSERT_TRUE(apply(swap).has_value());
    ASSERT_TRUE(apply(WithdrawFitting{swap.fitting.id,
                                      true,
                                      {QStringLiteral("Dana"), m_clock.now(),
                                       QStringLiteral("The wrong place")}})
                    .has_value());
    const auto isWithdrawn = [&] {
        return m_session.log()->fittings.front().withdrawn;
    };
    EXPECT_TRUE(isWithdrawn());
    undo();
    EXPECT_FALSE(isWithdrawn());
    redo();
    EXPECT_TRUE(isWithdrawn());
}

TEST_F(LogbookSessionTest, UndoOfAnAmendedFactKeepsAllThreeValues) {
    startInspection();
    Engine renamed = m_engine;
    renamed.name = QStringLiteral("Herron");
    ASSERT_TRUE(apply(AmendEngine{renamed,
                                  {QStringLiteral("Dana"), m_clock.now(),
                                   QStringLiteral("Painted so on the block")}})
                    .has_value());
    m_session.setPerson(QStringLiteral("Ruben"));
    undo();
    EXPECT_EQ(m_session.log()->engine.name, QStringLiteral("Heron"));
    ASSERT_EQ(m_session.log()->amendments.size(), 2U);
    EXPECT_EQ(m_session.log()->amendments[0].oldValue, QStringLiteral("Heron"));
    EXPECT_EQ(m_session.log()->amendments[1].oldValue, QStringLiteral("Herron"));
    EXPECT_EQ(m_session.log()->amendments[1].author.who, QStringLiteral("Ruben"));
}

TEST_F(LogbookSessionTest, ADecisionIsUndoneByAFurtherOneWithTheJudgementBeforeIt) {
    startInspection();
    ASSERT_TRUE(apply(RecordReadings{{hit(QStringLiteral("121.50"))}, {m_spring}}).has_value());
    const auto decide = [&](ReadingJudgement judgement) {
        ASSERT_TRUE(
            apply(DecideReading{{DecisionId::make(), m_inspection.id, m_spring.id, judgement, {}}})
                .has_value());
    };
    const auto judgement = [&] {
        return judgementInForce(m_session.log()->decisions, m_inspection.id, m_spring.id);
    };
    decide(ReadingJudgement::SetAside);
    decide(ReadingJudgement::Kept);
    EXPECT_EQ(m_session.undoText(), QStringLiteral("Say about spring S-27"));
    undo();
    EXPECT_EQ(judgement(), ReadingJudgement::SetAside);
    undo();
    EXPECT_EQ(judgement(), ReadingJudgement::LeftToModel);
    redo();
    EXPECT_EQ(judgement(), ReadingJudgement::SetAside);
    EXPECT_EQ(m_session.log()->decisions.size(), 5U) << "nothing is erased";
}

TEST_F(LogbookSessionTest, RunningAndLevelChangesAreWithdrawnByUndoAndBroughtBackByRedo) {
    startInspection();
    ASSERT_TRUE(apply(RecordReadings{{hit(QStringLiteral("121.50"))}, {m_spring}}).has_value());
    const QDate day(2026, 5, 9);
    ASSERT_TRUE(
        apply(AddRunning{{RunningId::make(), m_engine.id, day, 3, 40, {}, {}, false}}).has_value());
    ASSERT_TRUE(apply(AddLevelChange{{LevelChangeId::make(),
                                      m_engine.id,
                                      m_spring.id,
                                      LevelChangeKind::Retainer,
                                      day,
                                      3,
                                      {},
                                      false}})
                    .has_value());
    EXPECT_EQ(m_session.undoText(), QStringLiteral("Level change of spring S-27"));
    undo();
    EXPECT_TRUE(m_session.log()->levelChanges.front().withdrawn);
    EXPECT_EQ(m_session.undoText(), QStringLiteral("Running of 2026-05-09"));
    undo();
    EXPECT_TRUE(m_session.log()->running.front().withdrawn);
    redo();
    redo();
    EXPECT_FALSE(m_session.log()->running.front().withdrawn);
    EXPECT_FALSE(m_session.log()->levelChanges.front().withdrawn);
}

TEST_F(LogbookSessionTest, ARefusedChangeSaysWhyAndChangesNothing) {
    startInspection();
    const auto before = m_session.log();
    const Result<void> answer = apply(RecordReadings{{hit(QStringLiteral("1000.5"))}, {m_spring}});
    ASSERT_FALSE(answer.has_value());
    EXPECT_EQ(std::get<LogbookFault>(answer.error().fault), LogbookFault::ReadingOutOfBounds);
    EXPECT_EQ(m_session.log(), before);
    EXPECT_TRUE(m_session.undoText().isEmpty());
}

TEST_F(LogbookSessionTest, WhatWasBeingTypedComesBack) {
    startInspection();
    const Draft draft{
        m_engine.id, m_inspection.id, {Cylinder(3), Valve::Exhaust}, QStringLiteral("12")};
    m_session.saveDraft(draft);
    m_session.closeLogbook();
    waitFor([&] { return !m_session.isOpen(); });
    m_session.openLogbook(path());
    waitFor([&] { return m_session.isOpen(); });
    select(m_engine.id);
    EXPECT_EQ(m_session.draft(), draft);
}

TEST_F(LogbookSessionTest, AFileThatIsNotThereIsToldAndTheOpenOneStays) {
    std::optional<Error> told;
    QObject::connect(&m_session, &LogbookSession::openFailed, &m_session,
                     [&](const Error& error) { told = error; });
    m_session.openLogbook(m_folder.filePath(QStringLiteral("other.coilbook")));
    waitFor([&] { return told.has_value(); });
    EXPECT_EQ(std::get<StorageFault>(told->fault), StorageFault::Missing);
    EXPECT_EQ(m_session.path(), path());
    EXPECT_FALSE(QFileInfo::exists(m_folder.filePath(QStringLiteral("other.coilbook"))));
}

TEST_F(LogbookSessionTest, TheEndOfTheProgramFinishesWhatIsQueued) {
    startInspection();
    {
        LogbookSession* session = &m_session;
        QObject context;
        for (int i = 0; i < 20; ++i) {
            session->apply(RecordReadings{{hit(QStringLiteral("121.5"))}, {m_spring}}, &context,
                           {});
        }
        session->closeLogbook(); // queued behind all of them
        waitFor([&] { return !session->isOpen(); });
    }
    m_session.openLogbook(path());
    waitFor([&] { return m_session.isOpen(); });
    select(m_engine.id);
    EXPECT_EQ(m_session.log()->readings.size(), 20U);
}

TEST_F(LogbookSessionTest, ClosingBacksUpWhatWasWrittenAndNothingElse) {
    const QDir beside(m_folder.filePath(QStringLiteral("shop.backups")));
    const auto backups = [&] {
        return beside.entryList(QDir::Files).size();
    };
    const auto closeAndReopen = [&] {
        m_session.closeLogbook();
        waitFor([&] { return !m_session.isOpen(); });
        const qsizetype count = backups();
        m_session.openLogbook(path());
        waitFor([&] { return m_session.isOpen(); });
        return count;
    };
    m_session.keepBackups({}, m_folder.filePath(QStringLiteral("no such stick")));
    EXPECT_EQ(closeAndReopen(), 0);
    startInspection();
    EXPECT_EQ(closeAndReopen(), 1);
    EXPECT_EQ(closeAndReopen(), 1);
    EXPECT_FALSE(QFileInfo::exists(m_folder.filePath(QStringLiteral("no such stick"))));
}

TEST_F(LogbookSessionTest, FiftyReadingsAreBackedUpWithoutWaitingForTheEnd) {
    const QString stick = m_folder.filePath(QStringLiteral("stick"));
    ASSERT_TRUE(QDir().mkpath(stick));
    m_session.keepBackups({}, stick);
    startInspection();
    const auto backups = [](const QString& parent) {
        const QStringList folders = QDir(parent).entryList({QStringLiteral("shop*.backups")});
        return folders.isEmpty() ? 0
                                 : QDir(parent + QLatin1Char('/') + folders.constFirst())
                                       .entryList({QStringLiteral("*Z.coilbook")})
                                       .size();
    };
    RecordReadings first{{hit(QStringLiteral("121.5"))}, {m_spring}};
    while (first.readings.size() < 49) {
        first.readings.push_back(hit(QStringLiteral("121.5")));
    }
    ASSERT_TRUE(apply(first).has_value());
    ASSERT_TRUE(apply(StartSitting{{SittingId::make(), m_inspection.id, std::nullopt, {}, {}}})
                    .has_value()); // its answer comes behind a backup that would have been made
    EXPECT_EQ(backups(m_folder.path()), 0);
    ASSERT_TRUE(apply(RecordReadings{{hit(QStringLiteral("121.0"))}, {}}).has_value());
    waitFor([&] { return backups(stick) == 1; });
    EXPECT_EQ(backups(m_folder.path()), 1);
}

} // namespace
} // namespace coilbook
