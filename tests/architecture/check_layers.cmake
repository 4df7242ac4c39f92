# Fails if a file includes what its layer may not know (DEVELOPERS.md: the layers).
#     cmake -D ROOT=DIR -D QT_CORE=DIR -D QT_SQL=DIR -P check_layers.cmake
# QT_CORE and QT_SQL are the folders of the headers of those modules: a Qt header that core includes
# must lie in the first, or for core/storage in the second. Debian puts all modules in one folder above
# them, so a forbidden header would be found by the compiler without being linked.
cmake_minimum_required(VERSION 3.25)

# Folders of ours that each folder may include, beside itself. First match counts.
set(layers
    "core/support="
    "core/units=core/support"
    "core/mechanics=core/units core/support"
    "core/domain=core/mechanics core/units core/support"
    "core/statistics=core/units core/support"
    "core/testers=core/domain core/statistics core/units core/support"
    "core/wear=core/testers core/domain core/statistics core/units core/support"
    "core/assessment=core/wear core/testers core/domain core/statistics core/units core/support"
    "core/wording=core/assessment core/testers core/domain core/exchange core/mechanics core/units core/support"
    "core/storage=core/domain core/mechanics core/units core/support"
    "core/exchange=core/assessment core/storage core/domain core/mechanics core/units core/support core/wording"
    "core/demo=core/assessment core/storage core/exchange core/domain core/units core/support"
    "core/services=core"
    "core="
    "ui=core/assessment core/demo core/domain core/exchange core/mechanics core/services core/statistics core/support core/testers core/units core/wording"
    "app=core ui"
    "tests/support=core"
    "tests/core=core tests/support"
    "tests/ui=core ui tests/support"
    "tests=core ui app")

set(faults "")

macro(complain text)
    list(APPEND faults "${file}: ${text}")
endmacro()

# The part of `layers` that governs `file`: `layer` and `allowed`.
macro(findLayer)
    set(layer "")
    foreach(entry IN LISTS layers)
        string(REGEX MATCH "^([^=]*)=(.*)$" ignored "${entry}")
        set(folder "${CMAKE_MATCH_1}")
        string(REPLACE " " ";" allowed "${CMAKE_MATCH_2}")
        if(file MATCHES "^${folder}/")
            set(layer ${folder})
            break()
        endif()
    endforeach()
endmacro()

macro(checkOwnHeader header)
    set(known FALSE)
    foreach(folder IN LISTS layer allowed)
        if(header MATCHES "^${folder}/")
            set(known TRUE)
        endif()
    endforeach()
    if(NOT known)
        complain("${layer} may not include ${header}")
    endif()
endmacro()

macro(checkQtHeader header)
    get_filename_component(name "${header}" NAME)
    get_filename_component(module "${header}" DIRECTORY)
    set(folders "")
    if(module STREQUAL "" OR module STREQUAL "QtCore")
        list(APPEND folders "${QT_CORE}")
    endif()
    if(file MATCHES "^core/storage/" AND (module STREQUAL "" OR module STREQUAL "QtSql"))
        list(APPEND folders "${QT_SQL}")
    endif()
    set(found FALSE)
    foreach(folder IN LISTS folders)
        if(EXISTS "${folder}/${name}")
            set(found TRUE)
        endif()
    endforeach()
    if(NOT found)
        complain("core may not include <${header}>")
    endif()
endmacro()

file(GLOB_RECURSE sources RELATIVE "${ROOT}"
     "${ROOT}/core/*.h" "${ROOT}/core/*.cpp" "${ROOT}/ui/*.h" "${ROOT}/ui/*.cpp"
     "${ROOT}/app/*.h" "${ROOT}/app/*.cpp" "${ROOT}/tests/*.h" "${ROOT}/tests/*.cpp")
foreach(file IN LISTS sources)
    findLayer()
    file(STRINGS "${ROOT}/${file}" includes REGEX "^[ \t]*#[ \t]*include")
    foreach(include IN LISTS includes)
        if(include MATCHES "\"(.*)\"")
            set(header "${CMAKE_MATCH_1}")
            # What AUTOMOC, AUTOUIC and RCC write goes by its bare name.
            if(header MATCHES "/")
                checkOwnHeader("${header}")
            endif()
            continue()
        endif()
        string(REGEX MATCH "<(.*)>" ignored "${include}")
        set(header "${CMAKE_MATCH_1}")
        if(file MATCHES "^core/" AND header MATCHES "^[Qq]")
            checkQtHeader("${header}")
        endif()
        if(file MATCHES "^core/(statistics|wear|assessment)/" AND header MATCHES "QObject$")
            complain("${layer} is made of pure functions and may not include <${header}>")
        endif()
        # The wear model hands matrices from file to file; nothing outside sees its headers but
        # core/assessment.
        if(file MATCHES "^core/.*\\.h$" AND header MATCHES "^(Eigen|boost)/"
           AND NOT (file MATCHES "^core/wear/" AND header STREQUAL "Eigen/Core"))
            complain("<${header}> belongs in the .cpp files")
        endif()
        if(file MATCHES "^(ui|app)/" AND header MATCHES "QSql|QtSql|qsql|sqlite3")
            complain("SQL lives in core/storage: <${header}>")
        endif()
        if(file MATCHES "^(ui|app)/" AND NOT file MATCHES "^ui/charts/"
           AND header MATCHES "QtCharts|Q[A-Za-z]*(Chart|Series|LegendMarker|ValueAxis|CategoryAxis)$")
            complain("Qt Charts is known to ui/charts only: <${header}>")
        endif()
    endforeach()

    if(file MATCHES "^core/" AND NOT file MATCHES "^core/wording/")
        file(STRINGS "${ROOT}/${file}" texts REGEX "[^A-Za-z_]tr\\(|Q_DECLARE_TR_FUNCTIONS|QCoreApplication::translate")
        if(texts)
            complain("text for people belongs in core/wording")
        endif()
    endif()
endforeach()

if(faults)
    list(JOIN faults "\n" text)
    message(FATAL_ERROR "${text}")
endif()
list(LENGTH sources count)
if(count EQUAL 0)
    message(FATAL_ERROR "No sources under ${ROOT}")
endif()
message(STATUS "${count} files keep to their layers.")
