# What tests/run --asan and tests/fuzz/run build: assertions on, address and undefined-behaviour
# sanitizers, with the marks that libFuzzer finds its way by. With clang, which has libFuzzer and
# compiles under sanitizers several times as fast; GCC and its warnings are the plain build's. Of all
# targets core alone is optimised: the tests of the wear model would take many minutes.
set(CMAKE_CXX_COMPILER clang++-14 CACHE STRING "")
set(CMAKE_BUILD_TYPE Debug CACHE STRING "")
set(CMAKE_CXX_FLAGS_DEBUG "-O0 -gline-tables-only" CACHE STRING "")
set(CMAKE_EXE_LINKER_FLAGS -fuse-ld=lld CACHE STRING "")
set(COILBOOK_TESTS ON CACHE BOOL "")
set(COILBOOK_SANITIZE "address,undefined,fuzzer-no-link" CACHE STRING "")
include(${CMAKE_CURRENT_LIST_DIR}/batches.cmake)
