#pragma once

#include <QByteArray>
#include <QJsonArray>
#include <QString>
#include <QStringList>
#include <QTemporaryDir>
#include <gtest/gtest.h>

#include <ostream>

class QProcess;

namespace coilbook::testing {

/// What a run of the program left behind.
struct ProgramRun {
    int exitCode = -1; ///< -1: it did not end by itself
    QByteArray out;
    QByteArray err;

    [[nodiscard]] QJsonArray json() const;
};

void PrintTo(const ProgramRun& run, std::ostream* stream);

/// A test with a folder of its own. The program runs in it, with an environment that has neither a
/// display nor anything of the user who runs the tests.
class ProgramTest : public ::testing::Test {
protected:
    void SetUp() override;

    [[nodiscard]] ProgramRun run(const QStringList& words) const;

    /// Through a shell, for what only a shell can do with the streams; `"$coilbook"` is the
    /// program.
    [[nodiscard]] ProgramRun shell(const QString& script) const;

    /// Runs another program of the system in the folder.
    [[nodiscard]] ProgramRun tool(const QString& program, const QStringList& words) const;

    /// Starts the window on a logbook, on a platform without a screen.
    void startWindow(QProcess& process, const QString& logbook) const;

    /// Writes a file into the folder.
    void write(const QString& name, const QByteArray& bytes) const;

    [[nodiscard]] QByteArray read(const QString& name) const;

    [[nodiscard]] QString path(const QString& name) const { return m_folder.filePath(name); }

    /// Names of all files and folders in the folder, hidden ones too.
    [[nodiscard]] QStringList files() const;

    /// Makes the demo logbook `demo.coilbook` in the folder.
    void makeDemo() const;

    /// Imports the CSV text into the logbook, which is made if absent.
    void import(const QString& logbook, const QByteArray& csv) const;

private:
    QTemporaryDir m_folder;
    QTemporaryDir m_home;
};

/// A failure as the contract has it: the exit code, nothing on standard output, one line on
/// standard error that starts with the program's name and holds `part`.
[[nodiscard]] ::testing::AssertionResult failsWith(const ProgramRun& run, int exitCode,
                                                   const QByteArray& part);

/// Ended with 0 and printed nothing on standard error.
[[nodiscard]] ::testing::AssertionResult succeeds(const ProgramRun& run);

} // namespace coilbook::testing
