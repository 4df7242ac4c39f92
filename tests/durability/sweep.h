#pragma once

#include "tests/durability/power_cut_disk.h"
#include "tests/durability/scripted_session.h"

#include <QTemporaryDir>
#include <gtest/gtest.h>

#include <map>
#include <string>
#include <vector>

namespace coilbook::testing {

/// How often a thing is done: what the environment variable says, or `usually`.
[[nodiscard]] int repetitions(const char* variable, int usually);

/// Scripted sessions on a disk that fails, held against what they leave on one that does not.
class SweepTest : public ::testing::Test {
protected:
    /// A session and what it does undisturbed.
    struct Rehearsed {
        ScriptedSession session;
        std::map<QString, std::string> before; ///< the disk at the beginning
        std::vector<QByteArray> contents;      ///< of the logbook, opened and after each step
        qint64 operations = 0;                 ///< of the disk
    };

    /// How far a run came.
    struct Progress {
        bool opened = false;
        std::size_t done = 0; ///< steps acknowledged
        std::optional<Error> error;
    };

    void SetUp() override;

    [[nodiscard]] const std::vector<Rehearsed>& rehearsed() const { return m_rehearsed; }

    [[nodiscard]] PowerCutDisk& disk() { return *m_disk; }

    /// Opens the logbook and goes on with step `from`, to the end or the first failure.
    [[nodiscard]] Progress run(const ScriptedSession& session, std::size_t from = 0) const;

    /// What lies on the disk after a fault: the acknowledged steps of the session, or one more,
    /// nothing half-done and every file whole.
    void expectWhole(const Rehearsed& rehearsed, const Progress& progress);

    /// Goes on from where it stopped, and holds the end against the undisturbed one.
    void expectToEndAsRehearsed(const Rehearsed& rehearsed, const Progress& progress);

    [[nodiscard]] QString logbook() const;

private:
    [[nodiscard]] Rehearsed rehearse(const ScriptedSession& session);

    QTemporaryDir m_folder;
    std::unique_ptr<PowerCutDisk> m_disk;
    std::vector<Rehearsed> m_rehearsed;
};

} // namespace coilbook::testing
