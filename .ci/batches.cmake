# Sources are compiled in batches, without precompiled headers: reading Qt's headers once for each file
# is what takes the time. The plain build compiles each by itself.
set(CMAKE_UNITY_BUILD ON CACHE BOOL "")
set(CMAKE_UNITY_BUILD_BATCH_SIZE 16 CACHE STRING "")
set(CMAKE_DISABLE_PRECOMPILE_HEADERS ON CACHE BOOL "")
set(CMAKE_CXX_COMPILER_LAUNCHER ${CMAKE_CURRENT_LIST_DIR}/compile_batch CACHE STRING "")
