#pragma once

#include "core/storage/connection.h"
#include "core/storage/logbook_store.h"
#include "tests/support/fixed_clock.h"
#include "tests/support/printers.h"

#include <QTemporaryDir>
#include <gtest/gtest.h>

namespace coilbook::testing {

/// Passes when the result is a success; prints its error otherwise.
template <class Value>
::testing::AssertionResult succeeded(const Result<Value>& result) {
    if (result) {
        return ::testing::AssertionSuccess();
    }
    return ::testing::AssertionFailure() << ::testing::PrintToString(result.error());
}

/// Passes when the result is a failure with this fault.
template <class Fault, class Value>
::testing::AssertionResult failedWith(Fault fault, const Result<Value>& result) {
    if (result) {
        return ::testing::AssertionFailure() << "it succeeded";
    }
    const Fault* found = std::get_if<Fault>(&result.error().fault);
    if (found != nullptr && *found == fault) {
        return ::testing::AssertionSuccess();
    }
    return ::testing::AssertionFailure() << ::testing::PrintToString(result.error());
}

/// An empty folder and a new logbook in it.
class LogbookTest : public ::testing::Test {
protected:
    void SetUp() override {
        ASSERT_TRUE(m_folder.isValid());
        Result<LogbookStore> made = LogbookStore::create(path());
        ASSERT_TRUE(succeeded(made));
        m_store.emplace(std::move(*made));
    }

    [[nodiscard]] QString path(const QString& name = QStringLiteral("shop.coilbook")) const {
        return m_folder.filePath(name);
    }

    [[nodiscard]] LogbookStore& store() { return *m_store; }

    void closeStore() { m_store.reset(); }

    [[nodiscard]] Result<void> apply(const Change& change) {
        return store().apply(change, m_clock);
    }

    /// Stores the engine with one spring at 1 I, so that most changes have something to refer to.
    void addEngine() { ASSERT_TRUE(succeeded(apply(AddEngine{m_engine, {m_spring}, {}}))); }

    void startInspection() {
        ASSERT_TRUE(succeeded(apply(StartInspection{m_inspection, m_sitting})));
    }

    [[nodiscard]] EngineLog log() {
        Result<EngineLog> read = store().engineLog(m_engine.id);
        EXPECT_TRUE(succeeded(read));
        return read ? *read : EngineLog{};
    }

    /// Runs a statement past the store, as another program could.
    [[nodiscard]] Result<void> runBeside(const QString& sql) const {
        const auto connection =
            storage::Connection::open(path(), storage::Connection::Access::ReadWrite);
        return connection ? (*connection)->run(sql) : tl::unexpected(connection.error());
    }

    [[nodiscard]] Reading reading(int hit, qint64 tenths) const {
        Reading row;
        row.id = ReadingId::make();
        row.sitting = m_sitting.id;
        row.spring = m_spring.id;
        row.place = {Cylinder(1), Valve::Intake};
        row.hit = hit;
        row.value = TypedForce(tenths, 1, ForceUnit::PoundForce);
        return row;
    }

    [[nodiscard]] static Reading amendmentOf(const Reading& amended, ReadingKind kind,
                                             qint64 tenths) {
        Reading row = amended;
        row.id = ReadingId::make();
        row.kind = kind;
        row.amends = amended.id;
        row.value = TypedForce(tenths, 1, ForceUnit::PoundForce);
        row.author = author();
        return row;
    }

    [[nodiscard]] static Authorship author() {
        return {QStringLiteral("Robin"),
                {QStringLiteral("2026-05-02T19:00:00.000Z"), 120},
                QStringLiteral("slip of the pen")};
    }

    QTemporaryDir m_folder;
    FixedClock m_clock{QDate(2026, 5, 2)};
    std::optional<LogbookStore> m_store;
    Engine m_engine = madeEngine();
    Spring m_spring{SpringId::make(), QStringLiteral("S-1"), {}, {}, {}};
    Inspection m_inspection{InspectionId::make(), m_engine.id, QDate(2026, 4, 11), 3, false};
    Sitting m_sitting{SittingId::make(), m_inspection.id, {}, QStringLiteral("Kim"), {}};

private:
    static Engine madeEngine() {
        Engine engine;
        engine.id = EngineId::make();
        engine.name = QStringLiteral("Blue");
        return engine;
    }
};

} // namespace coilbook::testing
