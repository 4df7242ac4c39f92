#pragma once

namespace coilbook::testing {

/// Makes the disk SQLite's default file system, for all connections of the process, and back.
void installPowerCutVfs();
void removePowerCutVfs();

/// Changes of names in the real folder that are not told to the disk.
void removeRealName(const char* path);
void makeRealName(const char* path);

} // namespace coilbook::testing
