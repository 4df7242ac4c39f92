#include "core/exchange/csv_reader.h"
#include "tests/support/printers.h"

#include <QFile>
#include <QTemporaryDir>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

namespace coilbook {
namespace {

using Record = std::vector<std::string>;
using testing::ElementsAre;

class CsvReaderTest : public testing::Test {
protected:
    CsvReader reading(const std::string& bytes) {
        const QString path = m_folder.filePath(QStringLiteral("table.csv"));
        QFile file(path);
        EXPECT_TRUE(file.open(QIODevice::WriteOnly));
        EXPECT_EQ(file.write(bytes.data(), static_cast<qint64>(bytes.size())),
                  static_cast<qint64>(bytes.size()));
        return CsvReader(path);
    }

    std::vector<Record> recordsOf(const std::string& bytes) {
        CsvReader reader = reading(bytes);
        std::vector<Record> records;
        while (reader.next() == CsvReader::Outcome::Record) {
            records.emplace_back(reader.fields().begin(), reader.fields().end());
        }
        EXPECT_EQ(reader.next(), CsvReader::Outcome::End);
        return records;
    }

    CsvReader::Fault faultOf(const std::string& bytes) {
        CsvReader reader = reading(bytes);
        CsvReader::Outcome outcome = CsvReader::Outcome::Record;
        while (outcome == CsvReader::Outcome::Record) {
            outcome = reader.next();
        }
        EXPECT_EQ(outcome, CsvReader::Outcome::Fault);
        return reader.fault();
    }

    QTemporaryDir m_folder;
};

// The examples of RFC 4180 (Shafranovich, 2005), section 2, items 1 to 7.
TEST_F(CsvReaderTest, ReadsEveryExampleOfRfc4180) {
    EXPECT_THAT(recordsOf("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n"),
                ElementsAre(Record{"aaa", "bbb", "ccc"}, Record{"zzz", "yyy", "xxx"}));
    EXPECT_THAT(recordsOf("aaa,bbb,ccc\r\nzzz,yyy,xxx"),
                ElementsAre(Record{"aaa", "bbb", "ccc"}, Record{"zzz", "yyy", "xxx"}));
    EXPECT_THAT(recordsOf("field_name,field_name,field_name\r\naaa,bbb,ccc\r\nzzz,yyy,xxx\r\n"),
                ElementsAre(Record{"field_name", "field_name", "field_name"},
                            Record{"aaa", "bbb", "ccc"}, Record{"zzz", "yyy", "xxx"}));
    EXPECT_THAT(recordsOf("aaa,bbb,ccc"), ElementsAre(Record{"aaa", "bbb", "ccc"}));
    EXPECT_THAT(recordsOf("\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx"),
                ElementsAre(Record{"aaa", "bbb", "ccc"}, Record{"zzz", "yyy", "xxx"}));
    EXPECT_THAT(recordsOf("\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx"),
                ElementsAre(Record{"aaa", "b\r\nbb", "ccc"}, Record{"zzz", "yyy", "xxx"}));
    EXPECT_THAT(recordsOf("\"aaa\",\"b\"\"bb\",\"ccc\""),
                ElementsAre(Record{"aaa", "b\"bb", "ccc"}));
}

// RFC 4180, section 2, item 4: "Spaces are considered part of a field and should not be ignored."
TEST_F(CsvReaderTest, KeepsSpacesAsPartOfACell) {
    EXPECT_THAT(recordsOf(" a , b\n"), ElementsAre(Record{" a ", " b"}));
}

TEST_F(CsvReaderTest, TakesLineFeedsAloneAndAByteOrderMark) {
    EXPECT_THAT(recordsOf("\xEF\xBB\xBF"
                          "a,b\n1,2\n"),
                ElementsAre(Record{"a", "b"}, Record{"1", "2"}));
}

TEST_F(CsvReaderTest, KeepsEmptyCellsAndRunsOfQuotes) {
    EXPECT_THAT(recordsOf(",\"\",\"\"\"\"\"\",\n"), ElementsAre(Record{"", "", "\"\"", ""}));
}

TEST_F(CsvReaderTest, FindsNothingInAnEmptyFileOrOneOfBlankLines) {
    EXPECT_TRUE(recordsOf("").empty());
    EXPECT_TRUE(recordsOf("\xEF\xBB\xBF").empty());
    EXPECT_TRUE(recordsOf("\r\n\n").empty());
}

TEST_F(CsvReaderTest, IgnoresBlankLinesAtTheEndOnly) {
    EXPECT_THAT(recordsOf("a\n1\n\r\n\n"), ElementsAre(Record{"a"}, Record{"1"}));

    CsvReader reader = reading("a\n\n\n1\n");
    EXPECT_EQ(reader.next(), CsvReader::Outcome::Record);
    ASSERT_EQ(reader.next(), CsvReader::Outcome::Fault);
    EXPECT_EQ(reader.fault().what, InputFault::BlankLine);
    EXPECT_EQ(reader.fault().line, 2);
    EXPECT_EQ(reader.next(), CsvReader::Outcome::Record);
    EXPECT_EQ(reader.line(), 4);
}

TEST_F(CsvReaderTest, CountsPhysicalLinesAndNamesTheOneARecordStartsOn) {
    CsvReader reader = reading("a,b\n\"1\n2\r\n3\",x\ny,z\n");
    EXPECT_EQ(reader.next(), CsvReader::Outcome::Record);
    EXPECT_EQ(reader.line(), 1);
    EXPECT_EQ(reader.next(), CsvReader::Outcome::Record);
    EXPECT_EQ(reader.line(), 2);
    EXPECT_EQ(reader.next(), CsvReader::Outcome::Record);
    EXPECT_EQ(reader.line(), 5);
}

struct BrokenText {
    const char* name;
    std::string bytes;
    InputFault what;
    qint64 line;
    std::size_t field;
    bool isFatal;
};

class CsvFaultTest : public CsvReaderTest, public testing::WithParamInterface<BrokenText> {};

TEST_P(CsvFaultTest, IsNamedWithItsPlace) {
    const BrokenText& broken = GetParam();
    const CsvReader::Fault fault = faultOf(broken.bytes);
    EXPECT_EQ(fault.what, broken.what);
    EXPECT_EQ(fault.line, broken.line);
    EXPECT_EQ(fault.field, broken.field);
    EXPECT_EQ(fault.isFatal, broken.isFatal);
}

using namespace std::string_literals;

INSTANTIATE_TEST_SUITE_P(
    All, CsvFaultTest,
    testing::Values(
        BrokenText{"QuoteNeverClosed", "a,b\n1,\"2\n3,4\n", InputFault::QuoteNotClosed, 2, 1, true},
        BrokenText{"QuoteInsideACell", "a,b\n1\"2,3\n", InputFault::StrayQuote, 2, 0, true},
        BrokenText{"SpaceBeforeAQuote", "a,b\n1, \"2\"\n", InputFault::StrayQuote, 2, 1, true},
        BrokenText{"TextAfterAQuote", "a,b\n\"1\"2,3\n", InputFault::TextAfterQuote, 2, 0, true},
        BrokenText{"LinesEndedByReturnOnly", "a,b\r1,2\r", InputFault::BareCarriageReturn, 1, 1,
                   true},
        BrokenText{"ReturnAtTheVeryEnd", "a,b\n1,2\r", InputFault::BareCarriageReturn, 2, 1, true},
        BrokenText{"NulByte", "a,b\n1,x\0y\n"s, InputFault::NulByte, 2, 1, false},
        BrokenText{"NulByteInsideQuotes", "a\n\"\0\"\n"s, InputFault::NulByte, 2, 0, false},
        BrokenText{"Latin1", "a,b\nB\xF6se,1\n", InputFault::InvalidUtf8, 2, 0, false},
        BrokenText{"OverlongUtf8", "a,b\n1,\xC0\xAF\n", InputFault::InvalidUtf8, 2, 1, false},
        BrokenText{"SurrogateInUtf8", "a\n\xED\xA0\x80\n", InputFault::InvalidUtf8, 2, 0, false},
        BrokenText{"Utf16",
                   "\xFF\xFE"
                   "a\0,\0b\0\n\0"s,
                   InputFault::InvalidUtf8, 1, 0, false}),
    [](const auto& instance) { return std::string(instance.param.name); });

TEST_F(CsvReaderTest, ReadsRecordsAcrossTheEdgesOfItsBlocks) {
    std::string bytes;
    std::size_t count = 0;
    // Cells of growing length put quotes, doubled quotes and line ends on every kind of edge.
    while (bytes.size() < 5'000'000) {
        bytes += '"' + std::string(count % 977, 'x') + "\"\"\",y\r\n";
        ++count;
    }
    const std::vector<Record> records = recordsOf(bytes);
    ASSERT_EQ(records.size(), count);
    for (std::size_t i = 0; i < count; ++i) {
        ASSERT_EQ(records[i], (Record{std::string(i % 977, 'x') + '"', "y"})) << i;
    }
}

TEST_F(CsvReaderTest, RefusesARecordThatIsTooLongInsteadOfFillingTheMemory) {
    const std::string endless(17U << 20U, 'x');
    EXPECT_EQ(faultOf("a\n" + endless).what, InputFault::RecordTooLong);
    EXPECT_EQ(faultOf("a\n\"" + endless).what, InputFault::QuoteNotClosed);
}

TEST_F(CsvReaderTest, SaysWhyAFileCannotBeRead) {
    CsvReader missing(m_folder.filePath(QStringLiteral("missing.csv")));
    ASSERT_EQ(missing.next(), CsvReader::Outcome::Fault);
    EXPECT_EQ(missing.fault().what, InputFault::CannotRead);
    EXPECT_FALSE(missing.fault().detail.isEmpty());
    EXPECT_EQ(missing.next(), CsvReader::Outcome::End);

    CsvReader folder(m_folder.path());
    ASSERT_EQ(folder.next(), CsvReader::Outcome::Fault);
    EXPECT_EQ(folder.fault().what, InputFault::CannotRead);
}

} // namespace
} // namespace coilbook
