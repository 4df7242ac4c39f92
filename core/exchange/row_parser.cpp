#include "core/exchange/row_parser.h"

#include "core/exchange/exchange_cells.h"

namespace coilbook {

namespace {

QString textOf(std::string_view cell) {
    return QString::fromUtf8(cell.data(), static_cast<qsizetype>(cell.size()));
}

} // namespace

RowParser::RowParser(const ExchangeFile& about, std::size_t file, const QDate& lastDay,
                     TextPool& texts, FaultLog& faults)
    : m_about(about)
    , m_file(file)
    , m_lastDay(lastDay)
    , m_texts(texts)
    , m_faults(faults)
    , m_latest(about.header.columns.size(), kNoText) {}

std::optional<ReadingRow> RowParser::reading(std::span<const std::string_view> cells, qint64 line) {
    if (!begin(cells, line)) {
        return std::nullopt;
    }
    ReadingRow row;
    for (std::size_t field = 0; field < cells.size(); ++field) {
        readReadingCell(row, {cells[field], field});
    }
    if (m_readings != 1) {
        const ExchangeHeader& header = m_about.header;
        const bool hasBoth = header.has(Column::ReadingLbf) && header.has(Column::ReadingN);
        const Column column = hasBoth && m_readings == 2       ? Column::ReadingN
                              : header.has(Column::ReadingLbf) ? Column::ReadingLbf
                                                               : Column::ReadingN;
        report({{}, header.fieldOf(column)},
               m_readings == 0 ? InputFault::NoReading : InputFault::TwoReadings, false);
    }
    row.file = static_cast<std::uint16_t>(m_file);
    row.line = static_cast<std::uint32_t>(line);
    return m_isSound ? std::optional(row) : std::nullopt;
}

std::optional<RaceRow> RowParser::race(std::span<const std::string_view> cells, qint64 line) {
    if (!begin(cells, line)) {
        return std::nullopt;
    }
    RaceRow row;
    for (std::size_t field = 0; field < cells.size(); ++field) {
        readRaceCell(row, {cells[field], field});
    }
    row.file = static_cast<std::uint16_t>(m_file);
    row.line = static_cast<std::uint32_t>(line);
    return m_isSound ? std::optional(row) : std::nullopt;
}

bool RowParser::begin(std::span<const std::string_view> cells, qint64 line) {
    m_line = line;
    m_isSound = true;
    m_readings = 0;
    const std::size_t columns = m_about.header.columns.size();
    if (cells.size() != columns) {
        const bool tooFew = cells.size() < columns;
        // Named is the first column without a cell; a cell too many has none to be named.
        report({{}, cells.size()}, tooFew ? InputFault::TooFewFields : InputFault::TooManyFields,
               false, {static_cast<qint64>(cells.size()), static_cast<qint64>(columns)});
    }
    return m_isSound;
}

void RowParser::readReadingCell(ReadingRow& row, const Cell& cell) {
    switch (m_about.header.columns[cell.field]) {
    case Column::Engine:
        row.engine = name(cell);
        break;
    case Column::InspectedOn:
        row.day = day(cell);
        break;
    case Column::EngineRaces:
        row.engineRaces = count(cell, 0, kMostCount);
        break;
    case Column::Cylinder:
        row.cylinder = static_cast<std::uint8_t>(count(cell, 1, Cylinder::kMost));
        break;
    case Column::Valve:
        if (const std::optional<Valve> valve = parseValve(cell.text)) {
            row.valve = *valve;
        } else {
            report(cell, InputFault::NotAValve);
        }
        break;
    case Column::Spring:
        row.spring = name(cell);
        break;
    case Column::ReadingLbf:
        readForce(row, cell, ForceUnit::PoundForce);
        break;
    case Column::ReadingN:
        readForce(row, cell, ForceUnit::Newton);
        break;
    case Column::Hit:
        row.hit = cell.text.empty() ? 0 : count(cell, 1, kMostCount);
        break;
    case Column::Retest:
        if (!cell.text.empty()) {
            const std::optional<bool> flag = parseFlag(cell.text);
            row.retest = flag.value_or(false);
            if (!flag) {
                report(cell, InputFault::NotAFlag);
            }
        }
        break;
    case Column::Tester:
        row.tester = text(cell);
        break;
    case Column::Inspector:
        row.inspector = text(cell);
        break;
    case Column::Note:
        row.note = text(cell);
        break;
    case Column::EngineTempC:
        if (!cell.text.empty()) {
            const std::optional<Temperature> temperature = parseTemperature(cell.text);
            row.milliCelsius = temperature.value_or(Temperature()).inMilliCelsius();
            if (!temperature) {
                report(cell, InputFault::NotATemperature);
            }
        }
        break;
    default: // columns of races.csv, which the header of a readings file cannot have
        break;
    }
}

void RowParser::readRaceCell(RaceRow& row, const Cell& cell) {
    switch (m_about.header.columns[cell.field]) {
    case Column::Engine:
        row.engine = name(cell);
        break;
    case Column::Race:
        row.number = count(cell, 1, kMostCount);
        break;
    case Column::RacedOn:
        row.day = day(cell);
        break;
    case Column::Venue:
        row.venue = text(cell);
        break;
    case Column::Laps:
        row.laps = cell.text.empty() ? RaceRow::kNotGiven : count(cell, 0, kMostCount);
        break;
    case Column::PeakRpm:
        row.peakRpm = cell.text.empty() ? RaceRow::kNotGiven : count(cell, 0, kMostCount);
        break;
    case Column::OverRev:
        if (!cell.text.empty()) {
            const std::optional<bool> flag = parseFlag(cell.text);
            row.overRev = flag.value_or(false) ? 1 : 0;
            if (!flag) {
                report(cell, InputFault::NotAFlag);
            }
        }
        break;
    case Column::Note:
        row.note = text(cell);
        break;
    default: // columns of readings.csv, which the header of a races file cannot have
        break;
    }
}

void RowParser::readForce(ReadingRow& row, const Cell& cell, ForceUnit unit) {
    if (cell.text.empty()) {
        return;
    }
    ++m_readings;
    const std::optional<TypedForce> value = parseReading(cell.text, unit);
    if (!value) {
        report(cell, LogbookFault::NotAReading);
    } else if (!value->isWithinBounds()) {
        report(cell, LogbookFault::ReadingOutOfBounds);
    } else {
        row.digits = value->digits();
        row.decimals = static_cast<std::uint8_t>(value->decimals());
        row.unit = unit;
    }
}

/// A text of the row; empty means not given.
TextId RowParser::text(const Cell& cell) {
    TextId& latest = m_latest[cell.field];
    // Most rows repeat the row before. A cell that begins with a quote mark may be a guarded one
    // and is not its own text.
    const bool repeats =
        cell.text == m_texts.utf8(latest) && (cell.text.empty() || cell.text.front() != '\'');
    if (!repeats) {
        latest = m_texts.fromCell(cell.text);
    }
    return latest;
}

/// A text that may not be empty.
TextId RowParser::name(const Cell& cell) {
    const TextId id = text(cell);
    if (id == kNoText) {
        report(cell, InputFault::EmptyCell, false);
    }
    return id;
}

std::int32_t RowParser::day(const Cell& cell) {
    if (!cell.text.empty() && cell.text == m_latestDate) { // most rows repeat the one before
        return m_latestDay;
    }
    const std::optional<QDate> date = parseDate(cell.text);
    if (!date) {
        if (cell.text.empty()) {
            report(cell, InputFault::EmptyCell, false);
        } else {
            report(cell, InputFault::NotADate);
        }
        return 0;
    }
    const auto day = static_cast<std::int32_t>(date->toJulianDay());
    if (*date < m_firstDay) {
        report(cell, LogbookFault::DateTooEarly);
    } else if (*date > m_lastDay) {
        report(cell, LogbookFault::DateInFuture);
    } else {
        m_latestDate = cell.text;
        m_latestDay = day;
    }
    return day;
}

std::int32_t RowParser::count(const Cell& cell, int least, int most) {
    const std::optional<int> value = parseCount(cell.text);
    if (!value || *value < least || *value > most) {
        if (cell.text.empty()) {
            report(cell, InputFault::EmptyCell, false);
        } else {
            report(cell, InputFault::NotACount, true, {least, most});
        }
        return least;
    }
    return *value;
}

template <class Fault>
void RowParser::report(const Cell& cell, Fault fault, bool withText,
                       std::initializer_list<qint64> numbers) {
    m_isSound = false;
    m_faults.add({m_file, m_line, cell.field}, [&] {
        const std::vector<Column>& columns = m_about.header.columns;
        const QString column =
            cell.field < columns.size() ? columnName(columns[cell.field]) : QString();
        QStringList arguments;
        if (withText) {
            arguments.append(textOf(cell.text));
        }
        for (const qint64 number : numbers) {
            arguments.append(QString::number(number));
        }
        return Error{fault, arguments, m_about.path, m_line, column, 0, {}};
    });
}

} // namespace coilbook
