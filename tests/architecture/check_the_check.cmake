# Fails unless check_layers.cmake notices each of these, and lets the allowed ones pass.
#     cmake -D QT_CORE=DIR -D QT_SQL=DIR -P check_the_check.cmake
cmake_minimum_required(VERSION 3.25)

# ruling | file | its one line
set(cases
    "no|core/domain/a.cpp|#include <QPainter>"
    "no|core/domain/a.cpp|#include <QtGui/QColor>"
    "no|core/domain/a.h|#include <QtWidgets/QWidget>"
    "no|core/services/a.cpp|#include <QApplication>"
    "no|core/services/a.cpp|#include <qapplication.h>"
    "no|core/services/a.cpp|#  include <QtCharts/QChart>"
    "no|core/services/a.cpp|#include <QSqlQuery>"
    "no|core/exchange/a.cpp|#include <QtSql/QSqlDatabase>"
    "no|core/statistics/a.h|#include <QObject>"
    "no|core/assessment/a.cpp|#include \"core/storage/logbook_store.h\""
    "no|core/statistics/a.cpp|#include \"core/domain/engine.h\""
    "no|core/support/a.cpp|#include \"core/domain/engine.h\""
    "no|core/storage/a.cpp|#include \"core/services/logbook_session.h\""
    "no|core/services/a.cpp|#include \"ui/preferences.h\""
    "no|core/statistics/a.h|#include <Eigen/Dense>"
    "no|core/domain/a.cpp|QString text() { return tr(\"Swap it\")@ }"
    "no|ui/pages/a.cpp|#include <QSqlQuery>"
    "no|ui/pages/a.cpp|#include \"core/storage/logbook_store.h\""
    "no|ui/pages/a.cpp|#include <QtCharts/QChart>"
    "no|ui/pages/a.cpp|#include <QLineSeries>"
    "no|ui/pages/a.cpp|#include \"app/window_program.h\""
    "no|tests/core/units/a.cpp|#include \"ui/preferences.h\""
    "yes|core/storage/a.cpp|#include <QSqlQuery>"
    "yes|core/services/a.cpp|#include <QObject>"
    "yes|core/statistics/a.cpp|#include <Eigen/Dense>"
    "yes|core/services/a.cpp|#include \"core/storage/logbook_store.h\""
    "yes|core/wording/a.cpp|QString text() { return tr(\"Swap it\")@ }"
    "yes|ui/charts/a.cpp|#include <QtCharts/QChart>"
    "yes|ui/pages/a.cpp|#include <QPainter>"
    "yes|app/a.cpp|#include \"core/storage/logbook_store.h\"")

set(temporary /tmp)
if(DEFINED ENV{TMPDIR})
    set(temporary "$ENV{TMPDIR}")
endif()
string(RANDOM LENGTH 12 scratch)
set(scratch "${temporary}/coilbook-layers-${scratch}")

foreach(case IN LISTS cases)
    string(REGEX MATCH "^([a-z]*)\\|([^|]*)\\|(.*)$" ignored "${case}")
    set(ruling ${CMAKE_MATCH_1})
    set(file ${CMAKE_MATCH_2})
    string(REPLACE "@" ";" line "${CMAKE_MATCH_3}")
    file(REMOVE_RECURSE "${scratch}")
    file(WRITE "${scratch}/${file}" "${line}\n")
    execute_process(
        COMMAND ${CMAKE_COMMAND} -D ROOT=${scratch} -D QT_CORE=${QT_CORE} -D QT_SQL=${QT_SQL}
                -P ${CMAKE_CURRENT_LIST_DIR}/check_layers.cmake
        RESULT_VARIABLE result OUTPUT_VARIABLE output ERROR_VARIABLE output)
    if(ruling STREQUAL "no" AND (result EQUAL 0 OR NOT output MATCHES "${file}"))
        message(SEND_ERROR "Not noticed in ${file}: ${line}\n${output}")
    elseif(ruling STREQUAL "yes" AND NOT result EQUAL 0)
        message(SEND_ERROR "Wrongly refused in ${file}: ${line}\n${output}")
    endif()
endforeach()
file(REMOVE_RECURSE "${scratch}")
