# What tests/run builds: the program as it is shipped, with its tests, warnings as errors.
set(CMAKE_BUILD_TYPE Release CACHE STRING "")
set(COILBOOK_TESTS ON CACHE BOOL "")
set(CMAKE_COMPILE_WARNING_AS_ERROR ON CACHE BOOL "")
