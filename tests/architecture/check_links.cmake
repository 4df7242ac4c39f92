# Fails if core, or a program that is linked from core alone, knows a graphical library.
#     cmake -D PROGRAM=FILE -D LINKS="A B" -P check_links.cmake
# LINKS are the libraries that coilbook_core's build file names; PROGRAM is the program of core's tests.
cmake_minimum_required(VERSION 3.25)

set(allowed Qt6::Core Qt6::Sql Eigen3::Eigen Boost::headers tl::expected Threads::Threads coilbook_build)
string(REPLACE " " ";" links "${LINKS}")
foreach(link IN LISTS links)
    string(REGEX REPLACE "^\\$<LINK_ONLY:(.*)>$" "\\1" link "${link}")
    if(NOT link IN_LIST allowed)
        message(SEND_ERROR "core may not be linked to ${link}")
    endif()
endforeach()

execute_process(COMMAND ldd "${PROGRAM}" OUTPUT_VARIABLE libraries RESULT_VARIABLE result)
if(NOT result EQUAL 0 OR NOT libraries MATCHES "libQt6Core")
    message(FATAL_ERROR "ldd tells nothing of ${PROGRAM}: ${libraries}")
endif()
string(REGEX MATCHALL "libQt6[A-Za-z]+" libraries "${libraries}")
list(REMOVE_DUPLICATES libraries)
list(REMOVE_ITEM libraries libQt6Core libQt6Sql)
if(libraries)
    message(SEND_ERROR "A program of core needs ${libraries}")
endif()
