#include "tests/durability/scripted_session.h"

#include "core/exchange/import.h"
#include "tests/support/fixed_clock.h"

#include <QDir>
#include <QFile>
#include <QFileInfo>

namespace coilbook::testing {

namespace {

const QDate kToday(2026, 5, 2);

Authorship author(const QString& why) {
    return {QStringLiteral("Robin"), {QStringLiteral("2026-05-02T19:00:00.000Z"), 120}, why};
}

ScriptedSession::Step doing(const Change& change) {
    return [change](LogbookStore& store) {
        return store.apply(change, FixedClock(kToday));
    };
}

/// An engine of four places, so that a whole round is short; every record has its id beforehand.
class Shop {
public:
    Shop() {
        m_engine.id = EngineId::make();
        m_engine.name = QStringLiteral("Blue");
        AddEngine made;
        for (int cylinder = 1; cylinder <= 2; ++cylinder) {
            for (const Valve valve : {Valve::Intake, Valve::Exhaust}) {
                const Place place{Cylinder(cylinder), valve};
                const Spring spring{
                    SpringId::make(), QStringLiteral("S-") + placeText(place), {}, {}, {}};
                m_places.push_back(place);
                m_springs.push_back(spring);
                made.springs.push_back(spring);
                made.fittings.push_back({FittingId::make(),
                                         m_engine.id,
                                         spring.id,
                                         place,
                                         QDate(2026, 3, 1),
                                         0,
                                         {},
                                         false});
            }
        }
        made.engine = m_engine;
        m_steps.push_back(doing(made));
    }

    void addRace(int number, const QDate& day) {
        Race race;
        race.id = RaceId::make();
        race.engine = m_engine.id;
        race.number = number;
        race.racedOn = day;
        m_steps.push_back(doing(AddRace{race}));
    }

    /// A round over all places: what is typed is kept as a draft before it is saved as a reading.
    void addRound(const QDate& day, int races, qint64 tenths) {
        m_inspection = {InspectionId::make(), m_engine.id, day, races, false};
        m_sitting = {SittingId::make(), m_inspection.id, {}, QStringLiteral("Kim"), {}};
        m_steps.push_back(doing(StartInspection{m_inspection, m_sitting}));
        for (std::size_t i = 0; i < m_places.size(); ++i) {
            m_latest = readingOf(m_springs[i], m_places[i], tenths + static_cast<qint64>(i));
            const Draft draft{m_engine.id, m_inspection.id, m_places[i], m_latest.value.text()};
            m_steps.push_back([draft](LogbookStore& store) { return store.saveDraft(draft); });
            m_steps.push_back(doing(RecordReadings{{m_latest}, {}}));
        }
        m_steps.push_back([id = m_engine.id](LogbookStore& store) { return store.clearDraft(id); });
    }

    /// A slip of the pen, a reading taken back, a fact of the engine and of the inspection.
    void addAmendments() {
        Reading correction = m_latest;
        correction.id = ReadingId::make();
        correction.kind = ReadingKind::Correction;
        correction.amends = m_latest.id;
        correction.value = TypedForce(1175, 1, ForceUnit::PoundForce);
        correction.author = author(QStringLiteral("slip of the pen"));
        m_steps.push_back(doing(AmendReading{correction}));
        Reading withdrawal = correction;
        withdrawal.id = ReadingId::make();
        withdrawal.kind = ReadingKind::Withdrawal;
        withdrawal.amends = correction.id;
        m_steps.push_back(doing(AmendReading{withdrawal}));
        m_engine.serial = QStringLiteral("17");
        m_engine.rules.limit = Force::poundsForce(6.0);
        m_steps.push_back(doing(AmendEngine{m_engine, author(QStringLiteral("read off again"))}));
        Inspection moved = m_inspection;
        moved.inspectedOn = moved.inspectedOn.addDays(-1);
        m_steps.push_back(doing(AmendInspection{moved, author(QStringLiteral("it was Friday"))}));
    }

    /// A new spring at the last place, its baseline taken at once in an inspection of its own.
    void addSwap(const QDate& day, int races) {
        FitSpring swap;
        swap.newSpring = Spring{SpringId::make(), QStringLiteral("N-%1").arg(races), {}, {}, {}};
        swap.fitting = {FittingId::make(),
                        m_engine.id,
                        swap.newSpring->id,
                        m_places.back(),
                        day,
                        races,
                        QStringLiteral("past the limit"),
                        false};
        m_inspection = {InspectionId::make(), m_engine.id, day, races, true};
        m_sitting = {SittingId::make(), m_inspection.id, {}, QStringLiteral("Kim"), {}};
        swap.newInspection = m_inspection;
        swap.newSitting = m_sitting;
        for (int hit = 1; hit <= 3; ++hit) {
            Reading baseline = readingOf(*swap.newSpring, m_places.back(), 1300 + hit);
            baseline.hit = hit;
            swap.baseline.push_back(baseline);
        }
        m_steps.push_back(doing(swap));
        m_steps.push_back(doing(
            WithdrawFitting{swap.fitting.id, true, author(QStringLiteral("the wrong spring"))}));
        m_steps.push_back(
            doing(WithdrawFitting{swap.fitting.id, false, author(QStringLiteral("no, it fits"))}));
    }

    [[nodiscard]] std::vector<ScriptedSession::Step>& steps() { return m_steps; }

private:
    [[nodiscard]] Reading readingOf(const Spring& spring, const Place& place, qint64 tenths) const {
        Reading reading;
        reading.id = ReadingId::make();
        reading.sitting = m_sitting.id;
        reading.spring = spring.id;
        reading.place = place;
        reading.hit = 1;
        reading.value = TypedForce(tenths, 1, ForceUnit::PoundForce);
        return reading;
    }

    Engine m_engine;
    std::vector<Place> m_places;
    std::vector<Spring> m_springs;
    Inspection m_inspection;
    Sitting m_sitting;
    Reading m_latest;
    std::vector<ScriptedSession::Step> m_steps;
};

ScriptedSession::Step backingUpTo(const QString& path) {
    return [path](LogbookStore& store) {
        return QFileInfo::exists(path) ? Result<void>() : store.backup(path);
    };
}

ScriptedSession round() {
    Shop shop;
    shop.addRound(QDate(2026, 3, 1), 0, 1300);
    return {"a new logbook and a round", {}, shop.steps()};
}

ScriptedSession corrections() {
    Shop shop;
    shop.addRound(QDate(2026, 3, 1), 0, 1300);
    shop.addAmendments();
    return {"corrections", {}, shop.steps()};
}

ScriptedSession swaps() {
    Shop shop;
    shop.addRound(QDate(2026, 3, 1), 0, 1300);
    shop.addRace(1, QDate(2026, 3, 7));
    shop.addSwap(QDate(2026, 3, 8), 1);
    return {"swaps", {}, shop.steps()};
}

ScriptedSession imports(const QString& folder) {
    const QDir place(folder);
    return {"imports",
            {},
            {importing(writeSeason(place.filePath(QStringLiteral("season.csv")), 4)),
             importing(writeSeason(place.filePath(QStringLiteral("longer.csv")), 40))}};
}

ScriptedSession backups(const QString& folder) {
    Shop shop;
    shop.addRace(1, QDate(2026, 3, 7));
    shop.steps().push_back(backingUpTo(QDir(folder).filePath(QStringLiteral("copy.coilbook"))));
    shop.addRace(2, QDate(2026, 3, 14));
    return {"a backup", {}, shop.steps()};
}

/// The oldest released logbook, which opening brings up to date, and a change of it.
ScriptedSession migration() {
    QFile kept(QStringLiteral(COILBOOK_TEST_DATA "/logbooks/bench_1.coilbook"));
    if (!kept.open(QIODevice::ReadOnly)) {
        qFatal("cannot read %s", qPrintable(kept.fileName()));
    }
    return {"a logbook of the first version",
            kept.readAll().toStdString(),
            {doing(AddTester{{TesterId::make(), QStringLiteral("Bench"), {}, {}, {}, {}}})}};
}

} // namespace

QString writeSeason(const QString& path, int inspections) {
    QByteArray csv("engine,inspected_on,engine_races,cylinder,valve,spring,reading_lbf,hit\r\n");
    for (int races = 0; races < inspections; ++races) {
        const QByteArray day = QDate(2025, 9, 1).addDays(races).toString(Qt::ISODate).toLatin1();
        for (int cylinder = 1; cylinder <= 8; ++cylinder) {
            for (const char* valve : {"I", "E"}) {
                csv += "Red," + day + ',' + QByteArray::number(races) + ',' +
                       QByteArray::number(cylinder) + ',' + valve + ",R-" +
                       QByteArray::number(cylinder) + valve + ',' +
                       QByteArray::number(130 - races % 60) + "." + QByteArray::number(cylinder) +
                       ",1\r\n";
            }
        }
    }
    QFile file(path);
    if (!file.open(QIODevice::WriteOnly) || file.write(csv) != csv.size()) {
        qFatal("cannot write %s", qPrintable(path));
    }
    return path;
}

ScriptedSession::Step importing(const QString& path) {
    return [path](LogbookStore& store) {
        return importFiles(store, {path}, FixedClock(kToday)).map([](const ImportReport&) {});
    };
}

std::vector<ScriptedSession> scriptedSessions(const QString& inputs, const QString& disk) {
    return {round(), corrections(), swaps(), imports(inputs), backups(disk), migration()};
}

Result<LogbookStore> openScripted(const QString& path) {
    return QFileInfo::exists(path) ? LogbookStore::open(path, OpenMode::ReadWrite)
                                   : LogbookStore::create(path);
}

} // namespace coilbook::testing
