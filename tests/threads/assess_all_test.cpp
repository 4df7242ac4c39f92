#include "app/command_line/assess_all.h"
#include "core/demo/demo.h"
#include "core/domain/history.h"
#include "tests/core/storage/logbook_fixture.h"

namespace coilbook {
namespace {

TEST(AssessAllTest, AnswersInTheOrderAskedAndAsOneThreadWould) {
    const testing::FixedClock clock(QDate(2026, 11, 20));
    const QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("demo.coilbook"));
    ASSERT_TRUE(testing::succeeded(writeDemo(path, clock)));
    const Result<LogbookStore> store = LogbookStore::open(path, OpenMode::ReadOnly);
    ASSERT_TRUE(testing::succeeded(store));
    const std::vector<EngineSummary> stored = store->engines().value();
    ASSERT_FALSE(stored.empty());
    std::vector<EngineSummary> asked;
    for (int again = 0; again < 6; ++again) { // more work than the queue has room for
        asked.insert(asked.end(), stored.begin(), stored.end());
    }
    const auto assessed = assessAll(*store, asked, {});
    ASSERT_TRUE(testing::succeeded(assessed));
    ASSERT_EQ(assessed->size(), asked.size());
    for (std::size_t i = 0; i < asked.size(); ++i) {
        const EngineLog log = store->engineLog(asked[i].id).value();
        EXPECT_EQ((*assessed)[i], assess(historyOf(log), log.engine.rules, Curves::None));
    }
}

} // namespace
} // namespace coilbook
