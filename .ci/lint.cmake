# What .ci/lint reads: how each file is compiled. Nothing of it is built: no source of ours
# includes what moc writes.
set(CMAKE_BUILD_TYPE Debug CACHE STRING "")
set(COILBOOK_TESTS ON CACHE BOOL "")
include(${CMAKE_CURRENT_LIST_DIR}/batches.cmake)
