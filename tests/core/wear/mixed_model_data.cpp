#include "tests/core/wear/mixed_model_data.h"

#include "tests/support/csv_table.h"

#include <QProcess>
#include <QStandardPaths>
#include <QTemporaryFile>

#include <algorithm>
#include <sstream>
#include <stdexcept>

namespace coilbook::testing {

namespace {

std::size_t indexOf(std::vector<std::string>& names, const std::string& name) {
    const auto found = std::find(names.begin(), names.end(), name);
    if (found != names.end()) {
        return static_cast<std::size_t>(found - names.begin());
    }
    names.push_back(name);
    return names.size() - 1;
}

/// Whether Rscript is there and finds lme4; its path if so.
std::optional<QString> rscriptWithLme4() {
    const QString program = QStandardPaths::findExecutable(QStringLiteral("Rscript"));
    if (program.isEmpty()) {
        return std::nullopt;
    }
    QProcess process;
    process.start(program, {QStringLiteral("-e"), QStringLiteral("library(lme4)")});
    const bool found = process.waitForFinished(60'000) && process.exitCode() == 0;
    return found ? std::optional(program) : std::nullopt;
}

} // namespace

MixedModelData::MixedModelData(const std::string& file, const std::string& life,
                               const std::string& session, const std::string& x,
                               const std::string& y) {
    const CsvTable table(file);
    for (std::size_t row = 0; row < table.rows(); ++row) {
        m_rows.push_back({indexOf(m_lives, table.text(row, life)),
                          indexOf(m_sessions, table.text(row, session)), table.number(row, x), 0,
                          table.number(row, y)});
    }
}

MixedModelData::MixedModelData(const wear::Season& season) {
    for (std::size_t t = 0; t < season.sessions.size(); ++t) {
        m_sessions.push_back('T' + std::to_string(t));
    }
    for (std::size_t s = 0; s < season.lives.size(); ++s) {
        m_lives.push_back('S' + std::to_string(s));
        for (const wear::Cell& cell : season.lives[s].cells) {
            m_rows.push_back({s, cell.session, cell.x, season.lives[s].kind, cell.mean});
        }
    }
}

bool MixedModelData::hasKinds() const {
    return std::any_of(m_rows.begin(), m_rows.end(),
                       [&](const Row& row) { return row.kind != m_rows.front().kind; });
}

wear::Season MixedModelData::season() const {
    wear::Season season;
    season.runIn = true;
    for (std::size_t t = 0; t < m_sessions.size(); ++t) {
        season.sessions.push_back(static_cast<double>(t));
    }
    season.now = season.sessions.back();
    season.lives.resize(m_lives.size());
    for (const Row& row : m_rows) {
        wear::Life& life = season.lives[row.life];
        life.kind = row.kind;
        wear::Cell cell;
        cell.session = row.session;
        cell.x = row.x;
        cell.xExhaust = row.x * row.kind;
        cell.mean = row.y;
        life.cells.push_back(std::move(cell));
    }
    for (wear::Life& life : season.lives) {
        std::sort(life.cells.begin(), life.cells.end(),
                  [](const wear::Cell& a, const wear::Cell& b) { return a.session < b.session; });
        life.xNow = life.cells.back().x;
        life.xExhaustNow = life.cells.back().xExhaust;
    }
    return season;
}

std::string MixedModelData::csv() const {
    std::ostringstream text;
    text.precision(17);
    text << "life,session,x,kind,y\n";
    for (const Row& row : m_rows) {
        text << m_lives[row.life] << ',' << m_sessions[row.session] << ',' << row.x << ','
             << row.kind << ',' << row.y << '\n';
    }
    return text.str();
}

std::optional<std::map<std::string, double>> runLme4(const MixedModelData& data, int repeats) {
    static const std::optional<QString> kProgram = rscriptWithLme4();
    if (!kProgram) {
        return std::nullopt;
    }
    QTemporaryFile file;
    if (!file.open() || file.write(QByteArray::fromStdString(data.csv())) < 0) {
        throw std::runtime_error("cannot write the data for lme4");
    }
    file.close();
    QStringList arguments{QStringLiteral(COILBOOK_TEST_DATA "/mixed/reml.R"), file.fileName()};
    if (repeats > 0) {
        arguments.append(QString::number(repeats));
    }
    QProcess process;
    process.start(*kProgram, arguments);
    constexpr int kLongestMs = 300'000;
    if (!process.waitForFinished(kLongestMs) || process.exitCode() != 0) {
        throw std::runtime_error(process.readAllStandardError().toStdString());
    }
    std::map<std::string, double> values;
    std::istringstream lines(process.readAllStandardOutput().toStdString());
    std::string name;
    for (double value = 0.0; lines >> name >> value;) {
        values[name] = value;
    }
    return values;
}

} // namespace coilbook::testing
