#include "tests/core/exchange/import_fixture.h"

#include <random>
#include <sstream>

namespace coilbook {
namespace {

const std::string kReadingsHeader =
    "engine,inspected_on,engine_races,cylinder,valve,spring,reading_lbf,reading_n,hit,retest,"
    "tester,inspector,note,engine_temp_c\r\n";

/// Sorted as the contract wants it, so that it is its own export.
const std::string kReadings =
    kReadingsHeader +
    // guarded names; a spring tested again; newtons with trailing zeros; a note of two lines
    "'-Old,2026-03-01,0,1,I,'=S1,120,,1,,,,,\r\n"
    "'-Old,2026-03-01,0,1,I,'=S1,96.5,,2,,,,,\r\n"
    "'-Old,2026-03-01,0,1,I,'=S1,119.50,,3,1,,,,\r\n"
    "'-Old,2026-03-01,0,1,E,''quoted',,520.10,1,,'@bench,'+Kim,\"two\r\nlines, "
    "\"\"quoted\"\"\",-4.125\r\n"
    // a swap: the old spring is tested, the new one gets its baseline, although Z sorts after A
    "Blue,2026-03-01,0,3,E,Z,120,,1,,Bench,Kim,,85\r\n"
    "Blue,2026-04-04,2,3,E,Z,113.25,,1,,Bench,Kim,worn,85.5\r\n"
    "Blue,2026-04-04,2,3,E,A,121,,1,,Bench,Kim,,85.5\r\n"
    // Z comes back in another place, on the day of another count of races
    "Blue,2026-04-04,3,5,I,Z,113,,7,,Bench,,,\r\n"
    "Blue,2026-05-02,4,3,E,A,119.000001,,2,,Truck,Kim,,0\r\n"
    // code points: U+E000 before U+1F600, which UTF-16 would put first
    "\xC3\x96hm,2026-03-01,0,1,I,\xC3\xA4,120,,1,,,,,\r\n"
    "\xEE\x80\x80,2026-03-01,0,1,I,1,120,,1,,,,,\r\n"
    "\xF0\x9F\x98\x80,2026-03-01,0,1,I,1,120,,1,,,,,\r\n";

const std::string kRaces = "engine,race,raced_on,venue,laps,peak_rpm,over_rev,note\r\n"
                           "Blue,1,2026-03-14,\"Hill, Oval\",100,9150,0,\r\n"
                           "Blue,2,2026-03-28,,,9400,,'=wet\r\n"
                           "Green,1,2026-03-28,,0,,1,\r\n";

class RoundTripTest : public testing::ImportFixture {};

TEST_F(RoundTripTest, GivesTheSameBytesAgain) {
    LogbookStore first = newLogbook();
    imported(first, {kReadings, kRaces});
    const auto files = exported(first);
    EXPECT_EQ(files.first, kRaces);
    EXPECT_EQ(files.second, kReadings);

    LogbookStore second = newLogbook(QStringLiteral("second.coilbook"));
    imported(second, {files.first, files.second});
    EXPECT_EQ(exported(second), files);
    EXPECT_TRUE(imported(first, {files.second, files.first}).changedNothing());
    EXPECT_TRUE(first.verify().value().findings.empty());
}

TEST_F(RoundTripTest, AnEmptyLogbookExportsHeadersThatImportAsNothing) {
    LogbookStore store = newLogbook();
    const auto files = exported(store);
    EXPECT_EQ(files.second, kReadingsHeader);
    EXPECT_TRUE(imported(store, {files.first, files.second}).changedNothing());
}

/// The lines of a text behind the first one, without their ends.
std::vector<std::string> rowsOf(const std::string& bytes) {
    std::istringstream stream(bytes);
    std::vector<std::string> rows;
    std::string row;
    std::getline(stream, row);
    while (std::getline(stream, row)) {
        rows.push_back(row.substr(0, row.find('\r')));
    }
    return rows;
}

std::string headerOf(const std::string& bytes) {
    return bytes.substr(0, bytes.find_first_of("\r\n"));
}

class SeasonTest : public testing::ImportFixture,
                   public ::testing::WithParamInterface<const char*> {
protected:
    SeasonTest() { m_clock = testing::StoppedClock(QDate(2026, 11, 24)); } // after both seasons

    /// A file of the season, see tests/data/wear/SOURCE.
    static std::string fileOf(const char* kind) {
        return testing::bytesOf(QStringLiteral(COILBOOK_TEST_DATA "/wear/%1_%2.csv")
                                    .arg(QLatin1String(GetParam()), QLatin1String(kind)));
    }
};

TEST_P(SeasonTest, KeepsEveryRowThroughImportAndExport) {
    LogbookStore store = newLogbook();
    const std::string given = fileOf("readings");
    const std::vector<std::string> rows = rowsOf(given);
    const ImportReport report = imported(store, {given, fileOf("races")});
    EXPECT_EQ(report.readingsAdded, static_cast<qint64>(rows.size()));
    ASSERT_EQ(headerOf(given),
              "engine,inspected_on,engine_races,cylinder,valve,spring,hit,reading_lbf");

    std::vector<std::string> kept;
    for (const std::string& row : rowsOf(exported(store).second)) {
        // engine … spring, reading_lbf, (reading_n), hit, (rest)
        std::vector<std::string> cells;
        std::istringstream stream(row);
        for (std::string cell; std::getline(stream, cell, ',');) {
            cells.push_back(cell);
        }
        std::string plain;
        for (std::size_t i = 0; i < 6; ++i) {
            plain += cells.at(i) + ",";
        }
        kept.push_back(plain + cells.at(8) + "," + cells.at(6));
    }
    std::vector<std::string> expected = rows;
    std::sort(expected.begin(), expected.end());
    std::sort(kept.begin(), kept.end());
    EXPECT_EQ(kept, expected);
    EXPECT_TRUE(imported(store, {given}).changedNothing());
}

TEST_P(SeasonTest, DoesNotDependOnTheOrderOfRowsOrFiles) {
    LogbookStore ordered = newLogbook();
    const std::string readings = fileOf("readings");
    const std::string races = fileOf("races");
    const ImportReport report = imported(ordered, {readings, races});
    std::vector<std::string> rows = rowsOf(readings);
    std::mt19937 generator(20260615); // any seed; fixed, so that a failure can be repeated
    for (int turn = 0; turn < 3; ++turn) {
        std::shuffle(rows.begin(), rows.end(), generator);
        std::vector<std::string> parts(3, headerOf(readings) + "\n");
        for (std::size_t i = 0; i < rows.size(); ++i) {
            parts[i % parts.size()] += rows[i] + "\n";
        }
        parts.insert(parts.begin() + turn, races);
        LogbookStore store = newLogbook(QStringLiteral("turn%1.coilbook").arg(turn));
        EXPECT_EQ(imported(store, parts), report);
        EXPECT_EQ(exported(store), exported(ordered));
    }
}

TEST_P(SeasonTest, DoesNotDependOnTheOrderOfImports) {
    LogbookStore atOnce = newLogbook();
    const std::string readings = fileOf("readings");
    imported(atOnce, {readings, fileOf("races")});
    std::vector<std::string> rows = rowsOf(readings);
    std::reverse(rows.begin(), rows.end());
    LogbookStore inParts = newLogbook(QStringLiteral("parts.coilbook"));
    const std::size_t half = rows.size() / 2;
    for (const std::size_t part : {1U, 0U}) {
        std::string file = headerOf(readings) + "\n";
        for (std::size_t i = part * half; i < (part == 0 ? half : rows.size()); ++i) {
            file += rows[i] + "\n";
        }
        imported(inParts, {file});
    }
    imported(inParts, {fileOf("races")});
    EXPECT_EQ(exported(inParts), exported(atOnce));
}

INSTANTIATE_TEST_SUITE_P(Wear, SeasonTest, ::testing::Values("engine09", "engine10"));

} // namespace
} // namespace coilbook
