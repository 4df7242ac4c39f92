# What .ci/lint reads: how each file is compiled. Nothing of it is compiled but the output of moc.
set(CMAKE_BUILD_TYPE Debug CACHE STRING "")
set(COILBOOK_TESTS ON CACHE BOOL "")
set(CMAKE_DISABLE_PRECOMPILE_HEADERS ON CACHE BOOL "")
# Else moc would wait until the libraries that its target is linked to are built.
set(CMAKE_AUTOGEN_ORIGIN_DEPENDS OFF CACHE BOOL "")
