#include "core/wording/fact_words.h"
#include "tests/support/printers.h"

#include <gtest/gtest.h>

namespace coilbook {
namespace {

QString text(const char* utf8) {
    return QString::fromUtf8(utf8);
}

struct Case {
    const char* fact;
    const char* stored;
    const char* name;
    const char* value;
};

TEST(FactWordsTest, SaysNameAndValueAsPeopleWriteThem) {
    for (const Case& one :
         {Case{"limit_ulbf", "5500000", "limit", "5.5 lbf"},
          Case{"caution_percent", "30", "caution", "30 %"},
          Case{"engine_temp_mc", "21500", "engine temperature", "21.5 °C"},
          Case{"over_rev", "1", "over-revved", "yes"}, Case{"retired", "0", "retired", "no"},
          Case{"raced_on", "2026-05-02", "raced on", "2026-05-02"}, Case{"venue", "", "venue", ""},
          Case{"full_scale", "160 lbf", "full scale", "160 lbf"}}) {
        EXPECT_EQ(wording::factName(text(one.fact)), text(one.name));
        EXPECT_EQ(wording::factValue(text(one.fact), text(one.stored), {}), text(one.value));
    }
}

TEST(FactWordsTest, NamesATesterAndKeepsAnIdThatIsNotThere) {
    EngineLog log;
    log.testers.push_back({TesterId::make(), text("Bench 160"), {}, {}, {}, {}});
    const QString id = log.testers.front().id.text();
    EXPECT_EQ(wording::factValue(text("tester_id"), id, log), text("Bench 160"));
    EXPECT_EQ(wording::factValue(text("tester_id"), id, {}), id);
}

TEST(FactWordsTest, TellsALayoutInPlacesAndFiringOrder) {
    const QString words =
        wording::factValue(text("layout"), layoutToText(defaultLayout()), EngineLog());
    EXPECT_TRUE(words.startsWith(text("Left 1E 1I 3I 3E"))) << words.toStdString();
    EXPECT_TRUE(words.endsWith(text("fires 1-8-4-3-6-5-7-2"))) << words.toStdString();
    EXPECT_EQ(wording::factValue(text("layout"), text("odd"), {}), text("odd"));
}

} // namespace
} // namespace coilbook
