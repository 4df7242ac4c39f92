# What tests/run --asan builds: assertions on, address and undefined-behaviour sanitizers.
set(CMAKE_BUILD_TYPE Debug CACHE STRING "")
set(CMAKE_CXX_FLAGS_DEBUG "-O1 -g1" CACHE STRING "")
set(COILBOOK_TESTS ON CACHE BOOL "")
set(COILBOOK_SANITIZE "address,undefined" CACHE STRING "")
set(CMAKE_COMPILE_WARNING_AS_ERROR ON CACHE BOOL "")
