# Fails unless the visible top level is exactly this; build folders are nobody's business.
#     cmake -D ROOT=DIR -P check_top_level.cmake
cmake_minimum_required(VERSION 3.25)

set(expected CMakeLists.txt DEVELOPERS.md LICENSE README.md app core resources tests ui)
file(GLOB found RELATIVE "${ROOT}" "${ROOT}/*")
list(FILTER found EXCLUDE REGEX "^(\\..*|build.*)$")
list(SORT found)
if(NOT found STREQUAL expected)
    message(FATAL_ERROR "The top level holds ${found}; it should hold ${expected}.")
endif()
