#pragma once

#include <QByteArray>

namespace coilbook::testing {

/// A hand-made season: engine Blue with one cylinder's two springs at 0, 3 and 6 races, and engine
/// Red with one reading. Invented here; exported by the contract's rules it gives these same bytes.
inline const QByteArray kSeason =
    "engine,inspected_on,engine_races,cylinder,valve,spring,reading_lbf,reading_n,hit,retest,"
    "tester,inspector,note,engine_temp_c\r\n"
    "Blue,2026-03-01,0,1,I,S-01,121.50,,1,,,,,\r\n"
    "Blue,2026-03-01,0,1,E,S-02,120,,1,,,,,\r\n"
    "Blue,2026-03-15,3,1,I,S-01,119.5,,1,,,,,\r\n"
    "Blue,2026-03-15,3,1,E,S-02,117.0,,1,,,,,\r\n"
    "Blue,2026-04-02,6,1,I,S-01,117.5,,1,,,,,\r\n"
    "Blue,2026-04-02,6,1,E,S-02,114.0,,1,,,,,\r\n"
    "Red,2026-03-20,2,1,I,R-01,,540.25,1,,,,,\r\n";

} // namespace coilbook::testing
