#include "app/command_line/run.h"

#include "app/command_line/command.h"
#include "app/command_line/help.h"
#include "app/command_line/parse.h"
#include "app/command_line/text.h"

#include <QFile>
#include <QFileInfo>
#include <QGuiApplication>
#include <QTemporaryDir>

#include <algorithm>
#include <csignal>
#include <cstdio>
#include <fcntl.h>
#include <unistd.h>

namespace coilbook {

namespace {

void printError(const QString& line) {
    const QByteArray bytes = line.toUtf8() + '\n';
    std::fwrite(bytes.constData(), 1, static_cast<std::size_t>(bytes.size()), stderr);
}

int report(const Failure& failure) {
    printError(lineOf(failure));
    return exitCodeOf(failure);
}

/// A descriptor that the caller has closed would be handed to the next file that is opened, and
/// what is printed would end up in a logbook. Opened for reading, so that printing fails.
void occupyStandardDescriptors() {
    for (int descriptor = STDIN_FILENO; descriptor <= STDERR_FILENO; ++descriptor) {
        if (::fcntl(descriptor, F_GETFD) == -1) {
            (void)::open("/dev/null", O_RDONLY);
        }
    }
}

/// Standard error carries our own one line. What Qt thinks of the machine is for developers, who
/// set COILBOOK_LOG.
void keepQtQuiet() {
    if (qEnvironmentVariableIsSet("COILBOOK_LOG")) {
        return;
    }
    qInstallMessageHandler([](QtMsgType type, const QMessageLogContext&, const QString& text) {
        if (type == QtFatalMsg || type == QtCriticalMsg) {
            printError(text);
        }
    });
}

/// An application that can draw without a screen. Where the session has no folder for run-time
/// files, Qt would make one in the temporary folder and leave it there; it gets one that goes
/// again.
class DrawingApplication {
public:
    DrawingApplication(int& argc, char** argv)
        : m_application(argc, prepared(argv)) {}

private:
    char** prepared(char** argv) {
        qputenv("QT_QPA_PLATFORM", "offscreen");
        if (!qEnvironmentVariableIsSet("XDG_RUNTIME_DIR")) {
            qputenv("XDG_RUNTIME_DIR", QFile::encodeName(m_runtime.path()));
        }
        return argv;
    }

    QTemporaryDir m_runtime;
    QGuiApplication m_application;
};

int finish(const Outcome<void>& outcome, Output& output) {
    const Result<void> printed = output.flush();
    if (!outcome) {
        return report(outcome.error());
    }
    return printed ? 0 : report(printed.error());
}

int printAndFinish(const QString& text) {
    Output output;
    output.line(text);
    return finish({}, output);
}

int run(const Command& command, const QStringList& words, int& argc, char** argv) {
    if (asksForHelp(words)) {
        return printAndFinish(helpOn(command));
    }
    const Outcome<Request> request = parseRequest(command, words);
    if (!request) {
        return report(request.error());
    }
    Output output;
    if (command.needsFonts) {
        const DrawingApplication application(argc, argv);
        return finish(command.run(*request, output), output);
    }
    const QCoreApplication application(argc, argv);
    return finish(command.run(*request, output), output);
}

/// A word that is no command may still be a file that is not there yet or no more.
bool mayBeFile(const QString& word) {
    return word.contains(QLatin1Char('/')) || word.contains(QLatin1Char('.')) ||
           QFileInfo::exists(word);
}

} // namespace

std::variant<int, OpenWindow> runCommandLine(int& argc, char** argv) {
    occupyStandardDescriptors();
    QStringList words;
    for (int index = 1; index < argc; ++index) {
        words << QString::fromLocal8Bit(argv[index]);
    }
    if (words.isEmpty()) {
        return OpenWindow{};
    }
    const std::vector<Command> known = commands();
    const QString first = words.first();
    const auto command = std::find_if(known.begin(), known.end(), [&](const Command& candidate) {
        return candidate.name == first;
    });
    if (command == known.end() && words.size() == 1 && !first.startsWith(QLatin1Char('-')) &&
        mayBeFile(first)) {
        return OpenWindow{first};
    }

    std::signal(SIGPIPE, SIG_IGN); // a reader that has gone is a failed write
    keepQtQuiet();
    if (command != known.end()) {
        return run(*command, words.mid(1), argc, argv);
    }
    if (first == QLatin1String("--help")) {
        return printAndFinish(helpOnProgram(known));
    }
    if (first == QLatin1String("--version")) {
        return printAndFinish(QStringLiteral("coilbook " COILBOOK_VERSION));
    }
    return report(first.startsWith(QLatin1Char('-'))
                      ? UsageError{UsageFault::UnknownOption, {first}}
                      : UsageError{UsageFault::UnknownCommand, {first}});
}

int reportNoDisplay() {
    printError(
        CommandText::tr("coilbook: There is no display to open the window on. Start it where "
                        "there is one, or use a command: 'coilbook --help' lists them."));
    return 1;
}

} // namespace coilbook
