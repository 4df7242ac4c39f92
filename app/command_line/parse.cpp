#include "app/command_line/parse.h"

#include <algorithm>

namespace coilbook {

namespace {

const QString kDashes = QStringLiteral("--");

/// Reads the words from left to right into a request.
class Parser {
public:
    Parser(const Command& command, const QStringList& words)
        : m_command(command)
        , m_words(words) {}

    [[nodiscard]] Outcome<Request> run();

private:
    [[nodiscard]] Outcome<void> takeOption(const QString& word);
    [[nodiscard]] Outcome<void> checkComplete() const;

    const Command& m_command;
    const QStringList& m_words;
    qsizetype m_next = 0;
    Request m_request;
};

Outcome<Request> Parser::run() {
    bool optionsEnded = false;
    while (m_next < m_words.size()) {
        const QString& word = m_words[m_next++];
        if (optionsEnded || !word.startsWith(QLatin1Char('-')) || word.size() == 1) {
            m_request.arguments << word;
        } else if (word == kDashes) {
            optionsEnded = true;
        } else if (const auto taken = takeOption(word); !taken) {
            return tl::unexpected(taken.error());
        }
    }
    if (const auto complete = checkComplete(); !complete) {
        return tl::unexpected(complete.error());
    }
    return m_request;
}

Outcome<void> Parser::takeOption(const QString& word) {
    const qsizetype equals = word.indexOf(QLatin1Char('='));
    const QString name = word.left(equals);
    const auto option =
        std::find_if(m_command.options.begin(), m_command.options.end(),
                     [&](const Option& candidate) { return kDashes + candidate.name == name; });
    if (option == m_command.options.end()) {
        return misused(UsageFault::UnknownOption, {name, m_command.name});
    }
    if (m_request.has(option->name)) {
        return misused(UsageFault::OptionTwice, {name});
    }
    if (option->value.isEmpty()) {
        if (equals >= 0) {
            return misused(UsageFault::OptionTakesNoValue, {name});
        }
        m_request.options.insert(option->name, {});
        return {};
    }
    if (equals < 0 && (m_next == m_words.size() || m_words[m_next].startsWith(kDashes))) {
        return misused(UsageFault::OptionNeedsValue, {name, option->value});
    }
    m_request.options.insert(option->name, equals >= 0 ? word.mid(equals + 1) : m_words[m_next++]);
    return {};
}

Outcome<void> Parser::checkComplete() const {
    const qsizetype given = m_request.arguments.size();
    const qsizetype needed = m_command.arguments.size();
    if (given < needed) {
        return misused(UsageFault::MissingArgument, {m_command.arguments[given], m_command.name});
    }
    if (given > needed && !m_command.repeatsLast) {
        return misused(UsageFault::TooManyArguments, {m_request.arguments[needed], m_command.name});
    }
    for (const Option& option : m_command.options) {
        if (option.isNeeded && !m_request.has(option.name)) {
            return misused(UsageFault::MissingOption, {kDashes + option.name, m_command.name});
        }
    }
    return {};
}

} // namespace

Outcome<Request> parseRequest(const Command& command, const QStringList& words) {
    return Parser(command, words).run();
}

bool asksForHelp(const QStringList& words) {
    const auto end = std::find(words.begin(), words.end(), kDashes);
    return std::find(words.begin(), end, QStringLiteral("--help")) != end;
}

} // namespace coilbook
