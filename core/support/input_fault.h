#pragma once

namespace coilbook {

/// What can be wrong with a file that is read in, or with a command line. Position (file, line,
/// column) is in `Error`; further arguments are listed at the enumerator. "Other row" is two
/// arguments: its file (empty: the same file) and its line.
enum class InputFault {
    EmptyFile,
    CannotRead, ///< 1: what the system said

    // The text of a CSV file (RFC 4180)
    QuoteNotClosed,     ///< from this quote on nothing can be told apart
    StrayQuote,         ///< a quote inside a cell that does not begin with one
    TextAfterQuote,     ///< text between a closing quote and the next comma
    BareCarriageReturn, ///< a carriage return that ends no line
    NulByte,
    InvalidUtf8,
    BlankLine,     ///< elsewhere than at the end
    TooFewFields,  ///< 1: fields found, 2: columns of the header
    TooManyFields, ///< 1: fields found, 2: columns of the header
    RecordTooLong, ///< 1: the most, in MB

    // The header
    UnknownHeader,   ///< neither readings nor races
    UnknownColumn,   ///< 1: the name, 2: the names allowed
    MissingColumn,   ///< 1: the name
    DuplicateColumn, ///< 1: the name

    // One cell
    EmptyCell,
    NotADate,        ///< 1: the text
    NotACount,       ///< 1: the text, 2: the least, 3: the most allowed
    NotAValve,       ///< 1: the text
    NotATemperature, ///< 1: the text; −40 to 250 °C
    NotAFlag,        ///< 1: the text; 1 or 0
    NoReading,       ///< neither reading column is filled
    TwoReadings,     ///< both are

    // Rows beside each other and beside the logbook
    HitTwice,           ///< 1: spring, 2: hit, 3, 4: other row
    HitsPartlyNumbered, ///< 1: spring, 2, 3: other row
    SpringAtTwoPlaces,  ///< 1: spring, 2: place here, 3: the other place, 4, 5: other row (0:
                        ///< stored)
    RaceTwice,          ///< 1: race, 2, 3: other row
    ContradictsStored,  ///< 1: what the row says, 2: what is stored

    Cancelled, ///< the user stopped it; nothing was changed
};

} // namespace coilbook
