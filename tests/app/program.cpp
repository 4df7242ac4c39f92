#include "tests/app/program.h"

#include <QDir>
#include <QFile>
#include <QJsonDocument>
#include <QProcess>
#include <QProcessEnvironment>

namespace coilbook::testing {

namespace {

constexpr int kMostMilliseconds = 60'000;

QProcessEnvironment environment(const QString& home) {
    QProcessEnvironment result;
    const QProcessEnvironment ours = QProcessEnvironment::systemEnvironment();
    for (const char* name : {"PATH", "TMPDIR", "ASAN_OPTIONS", "LSAN_OPTIONS", "UBSAN_OPTIONS"}) {
        const QString key = QString::fromLatin1(name);
        if (ours.contains(key)) {
            result.insert(key, ours.value(key));
        }
    }
    result.insert(QStringLiteral("HOME"), home);
    result.insert(QStringLiteral("LC_ALL"), QStringLiteral("C.UTF-8"));
    result.insert(QStringLiteral("TZ"), QStringLiteral("UTC"));
    result.insert(QStringLiteral("coilbook"), QStringLiteral(COILBOOK_PROGRAM));
    return result;
}

ProgramRun start(const QString& program, const QStringList& words, const QString& folder,
                 const QString& home) {
    QProcess process;
    process.setWorkingDirectory(folder);
    process.setProcessEnvironment(environment(home));
    process.setStandardInputFile(QProcess::nullDevice());
    process.start(program, words);
    ProgramRun result;
    if (process.waitForFinished(kMostMilliseconds) &&
        process.exitStatus() == QProcess::NormalExit) {
        result.exitCode = process.exitCode();
    }
    result.out = process.readAllStandardOutput();
    result.err = process.readAllStandardError();
    return result;
}

} // namespace

QJsonArray ProgramRun::json() const {
    QJsonParseError error;
    const QJsonDocument document = QJsonDocument::fromJson(out, &error);
    EXPECT_EQ(error.error, QJsonParseError::NoError) << out.constData();
    EXPECT_TRUE(document.isArray());
    return document.array();
}

void PrintTo(const ProgramRun& run, std::ostream* stream) {
    *stream << "exit code " << run.exitCode << ", standard output:\n"
            << run.out.constData() << "\nstandard error:\n"
            << run.err.constData();
}

void ProgramTest::SetUp() {
    ASSERT_TRUE(m_folder.isValid());
    ASSERT_TRUE(m_home.isValid());
}

ProgramRun ProgramTest::run(const QStringList& words) const {
    return start(QStringLiteral(COILBOOK_PROGRAM), words, m_folder.path(), m_home.path());
}

ProgramRun ProgramTest::shell(const QString& script) const {
    return start(QStringLiteral("/bin/sh"), {QStringLiteral("-c"), script}, m_folder.path(),
                 m_home.path());
}

ProgramRun ProgramTest::tool(const QString& program, const QStringList& words) const {
    return start(program, words, m_folder.path(), m_home.path());
}

void ProgramTest::startWindow(QProcess& process, const QString& logbook) const {
    QProcessEnvironment variables = environment(m_home.path());
    variables.insert(QStringLiteral("QT_QPA_PLATFORM"), QStringLiteral("offscreen"));
    process.setWorkingDirectory(m_folder.path());
    process.setProcessEnvironment(variables);
    process.start(QStringLiteral(COILBOOK_PROGRAM), {logbook});
    ASSERT_TRUE(process.waitForStarted());
}

void ProgramTest::write(const QString& name, const QByteArray& bytes) const {
    QFile file(path(name));
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    ASSERT_EQ(file.write(bytes), bytes.size());
}

QByteArray ProgramTest::read(const QString& name) const {
    QFile file(path(name));
    EXPECT_TRUE(file.open(QIODevice::ReadOnly)) << name.toStdString();
    return file.readAll();
}

QStringList ProgramTest::files() const {
    return QDir(m_folder.path())
        .entryList(QDir::AllEntries | QDir::Hidden | QDir::System | QDir::NoDotAndDotDot,
                   QDir::Name);
}

void ProgramTest::makeDemo() const {
    ASSERT_TRUE(succeeds(run({QStringLiteral("demo"), QStringLiteral("demo.coilbook")})));
}

void ProgramTest::import(const QString& logbook, const QByteArray& csv) const {
    write(QStringLiteral("readings.csv"), csv);
    ASSERT_TRUE(succeeds(run({QStringLiteral("import"), logbook, QStringLiteral("readings.csv")})));
    ASSERT_TRUE(QFile::remove(path(QStringLiteral("readings.csv"))));
}

::testing::AssertionResult failsWith(const ProgramRun& run, int exitCode, const QByteArray& part) {
    if (run.exitCode != exitCode) {
        return ::testing::AssertionFailure()
               << "expected exit code " << exitCode << "; " << ::testing::PrintToString(run);
    }
    const auto failure = [&](const char* what) {
        return ::testing::AssertionFailure() << what << "; " << ::testing::PrintToString(run);
    };
    if (!run.out.isEmpty()) {
        return failure("something on standard output");
    }
    if (!run.err.startsWith("coilbook: ") || run.err.count('\n') != 1 || !run.err.endsWith('\n')) {
        return failure("not one line of ours");
    }
    if (!run.err.contains(part)) {
        return ::testing::AssertionFailure()
               << "'" << part.constData() << "' is not said; " << ::testing::PrintToString(run);
    }
    return ::testing::AssertionSuccess();
}

::testing::AssertionResult succeeds(const ProgramRun& run) {
    if (run.exitCode == 0 && run.err.isEmpty()) {
        return ::testing::AssertionSuccess();
    }
    return ::testing::AssertionFailure() << ::testing::PrintToString(run);
}

} // namespace coilbook::testing
