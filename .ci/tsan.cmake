# What tests/run --tsan builds: the thread sanitizer. Debian's Qt is built without it, so only the tests
# of threads.
set(CMAKE_CXX_COMPILER clang++-14 CACHE STRING "")
set(CMAKE_BUILD_TYPE Debug CACHE STRING "")
set(CMAKE_CXX_FLAGS_DEBUG "-O0 -gline-tables-only" CACHE STRING "")
set(CMAKE_EXE_LINKER_FLAGS -fuse-ld=lld CACHE STRING "")
set(COILBOOK_TESTS ON CACHE BOOL "")
set(COILBOOK_SANITIZE "thread" CACHE STRING "")
include(${CMAKE_CURRENT_LIST_DIR}/batches.cmake)
