# Fails where our sources could show text of a file as anything but text, or could reach the network:
# rich text loads what it names, and nothing of ours opens a connection by itself.
#     cmake -D ROOT=DIR -D PROGRAM=FILE -P check_plain_text.cmake
cmake_minimum_required(VERSION 3.25)

# One makes labels plain, the other escapes what it is given; tests/ui/window/plain_text_test.cpp holds
# them to that.
set(escapes ui/look/plain_labels.cpp ui/pages/bench_message.cpp)
set(rich "Qt::RichText|Qt::MarkdownText|Qt::AutoText|setHtml|insertHtml|appendHtml|setMarkdown|QTextBrowser|QStaticText|QGraphicsTextItem|setOpenExternalLinks")
set(network "QNetwork|QtNetwork|QTcpSocket|QUdpSocket|QSslSocket|QWebSocket|QHostInfo|<sys/socket\\.h>|<netdb\\.h>|QDesktopServices")

file(GLOB_RECURSE sources RELATIVE "${ROOT}" "${ROOT}/core/*.h" "${ROOT}/core/*.cpp" "${ROOT}/ui/*.h"
     "${ROOT}/ui/*.cpp" "${ROOT}/app/*.h" "${ROOT}/app/*.cpp")
foreach(source IN LISTS sources)
    file(STRINGS "${ROOT}/${source}" found REGEX "${rich}|${network}")
    if(found AND NOT source IN_LIST escapes)
        message(SEND_ERROR "${source} has ${found}")
    endif()
endforeach()
list(LENGTH sources count)
if(count LESS 2)
    message(FATAL_ERROR "No sources under ${ROOT}")
endif()

execute_process(COMMAND ldd "${PROGRAM}" OUTPUT_VARIABLE libraries RESULT_VARIABLE result)
if(NOT result EQUAL 0 OR NOT libraries MATCHES "libQt6Widgets")
    message(FATAL_ERROR "ldd tells nothing of ${PROGRAM}: ${libraries}")
endif()
if(libraries MATCHES "libQt6Network|libcurl|libssl")
    message(SEND_ERROR "The program is linked to a library of the network: ${CMAKE_MATCH_0}")
endif()
