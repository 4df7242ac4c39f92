#include "core/wording/fault_sentences.h"
#include "core/wording/words.h"

namespace coilbook::wording {

namespace {

/// Where the other row stands: its file (empty: the same) and line are two arguments.
QString otherRow(const Error& error, qsizetype index) {
    const QString file = argument(error, index);
    const QString line = argument(error, index + 1);
    return file.isEmpty() ? Words::tr("line %1").arg(line)
                          : Words::tr("line %2 of %1").arg(file, line);
}

QString notACount(const Error& error) {
    return Words::tr("“%1” does not fit here: it must be a whole number from %2 to %3.")
        .arg(argument(error, 0), argument(error, 1), argument(error, 2));
}

QString springAtTwoPlaces(const Error& error) {
    const QString spring = argument(error, 0);
    const QString here = argument(error, 1);
    const QString there = argument(error, 2);
    if (error.arguments.value(4) == QLatin1String("0")) {
        return Words::tr("Spring “%1” cannot stand at %2: the logbook has it at %3 in this "
                         "inspection. Check the spring and the place.")
            .arg(spring, here, there);
    }
    return Words::tr("Spring “%1” cannot stand at %2: it stands at %3 in this inspection (%4). "
                     "Check the spring and the place.")
        .arg(spring, here, there, otherRow(error, 3));
}

/// Faults in the text of the file, before there are cells.
QString sentenceOfText(InputFault fault, const Error& error) {
    switch (fault) {
    case InputFault::QuoteNotClosed:
        return Words::tr("A quote (\") is opened here and never closed. Close it, or double it if "
                         "it belongs to the text.");
    case InputFault::StrayQuote:
        return Words::tr("A quote (\") stands inside a cell that does not begin with one. Put the "
                         "whole cell in quotes and double the ones inside.");
    case InputFault::TextAfterQuote:
        return Words::tr("Text follows the closing quote (\") of a cell. Put a comma between, or "
                         "double the quotes that belong to the text.");
    case InputFault::BareCarriageReturn:
        return Words::tr("A carriage return stands here without a line feed. Save the file with "
                         "lines ended by LF or CRLF.");
    case InputFault::NulByte:
        return Words::tr("There is a NUL byte here, which no text holds. Save the file as plain "
                         "UTF-8 text.");
    case InputFault::InvalidUtf8:
        return Words::tr("The text here is not UTF-8. Save the file as CSV in UTF-8.");
    case InputFault::BlankLine:
        return Words::tr("There is a blank line before the end of the file. Delete it.");
    case InputFault::TooFewFields:
        return Words::tr("The row has %1 cells, the header names %2 columns. Add what is missing; "
                         "cells left out still need their commas.")
            .arg(argument(error, 0), argument(error, 1));
    case InputFault::TooManyFields:
        return Words::tr("The row has %1 cells, the header names %2 columns. Put a text that holds "
                         "commas in quotes, and write decimals with a point.")
            .arg(argument(error, 0), argument(error, 1));
    case InputFault::RecordTooLong:
        return Words::tr("The row is longer than %1 MB, so this is hardly a table of readings. "
                         "Check that it is the right file.")
            .arg(argument(error, 0));
    default:
        return {};
    }
}

} // namespace

QString sentenceOf(InputFault fault, const Error& error) {
    const QString first = argument(error, 0);
    const QString second = argument(error, 1);
    switch (fault) {
    case InputFault::EmptyFile:
        return Words::tr("The file is empty, so nothing was read from it. It must begin with a "
                         "line that names the columns.");
    case InputFault::CannotRead:
        return Words::tr("The file cannot be read (%1). Check its name and your permission to "
                         "read it.")
            .arg(first);
    case InputFault::QuoteNotClosed:
    case InputFault::StrayQuote:
    case InputFault::TextAfterQuote:
    case InputFault::BareCarriageReturn:
    case InputFault::NulByte:
    case InputFault::InvalidUtf8:
    case InputFault::BlankLine:
    case InputFault::TooFewFields:
    case InputFault::TooManyFields:
    case InputFault::RecordTooLong:
        return sentenceOfText(fault, error);
    case InputFault::UnknownHeader:
        return Words::tr("The first line names neither the columns of readings nor those of races. "
                         "Readings begin with engine,inspected_on,engine_races,cylinder,valve,"
                         "spring,reading_lbf and races with engine,race,raced_on.");
    case InputFault::UnknownColumn:
        return Words::tr("There is no column “%1”. Names are in small letters; there may be: %2.")
            .arg(first, shown(error.arguments.value(1), 200));
    case InputFault::MissingColumn:
        return Words::tr("The column “%1” is missing. Add it to the first line and to each row.")
            .arg(first);
    case InputFault::DuplicateColumn:
        return Words::tr("The column “%1” stands twice. Take one of the two out.").arg(first);
    case InputFault::EmptyCell:
        return Words::tr("The cell is empty and may not be. Fill it in.");
    case InputFault::NotADate:
        return Words::tr("“%1” is no date. Write year-month-day, such as 2026-05-02.").arg(first);
    case InputFault::NotACount:
        return notACount(error);
    case InputFault::NotAValve:
        return Words::tr("“%1” is no valve. Write I for intake or E for exhaust.").arg(first);
    case InputFault::NotATemperature:
        return Words::tr("“%1” is no temperature of an engine. Write degrees Celsius from -40 to "
                         "250, such as 85.")
            .arg(first);
    case InputFault::NotAFlag:
        return Words::tr("“%1” does not fit here. Write 1 for yes or 0 for no, or leave the cell "
                         "empty.")
            .arg(first);
    case InputFault::NoReading:
        return Words::tr("The row holds no reading. Fill in reading_lbf or reading_n.");
    case InputFault::TwoReadings:
        return Words::tr("The row holds a reading in lbf and one in N. Keep the one that the "
                         "tester showed.");
    case InputFault::HitTwice:
        return Words::tr("Hit %2 of spring “%1” stands twice in this inspection, here and in %3. "
                         "Give each hit its own number.")
            .arg(first, second, otherRow(error, 2));
    case InputFault::HitsPartlyNumbered:
        return Words::tr("Some hits of spring “%1” in this inspection are numbered and some are "
                         "not (compare %2). Number all of them or none.")
            .arg(first, otherRow(error, 1));
    case InputFault::SpringAtTwoPlaces:
        return springAtTwoPlaces(error);
    case InputFault::RaceTwice:
        return Words::tr("Race %1 of this engine stands twice, here and in %2. Keep one of them.")
            .arg(first, otherRow(error, 1));
    case InputFault::ContradictsStored:
        return Words::tr("The row says %1, the logbook has %2. Correct the row, or amend the "
                         "logbook.")
            .arg(shown(error.arguments.value(0), 200), shown(error.arguments.value(1), 200));
    case InputFault::Cancelled:
        return Words::tr("The import was stopped. The logbook is as it was before.");
    }
    Q_UNREACHABLE();
}

} // namespace coilbook::wording
