# What .ci/lint reads: how each file is compiled. Nothing of it is built: no source of ours
# includes what moc writes.
set(CMAKE_BUILD_TYPE Debug CACHE STRING "")
set(COILBOOK_TESTS ON CACHE BOOL "")
set(CMAKE_DISABLE_PRECOMPILE_HEADERS ON CACHE BOOL "")
