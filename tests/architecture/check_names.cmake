# Fails if two headers define a class of the same name: all of them share one namespace, so a program
# that is linked from both would silently use the functions of one for the objects of the other.
#     cmake -D ROOT=DIR -P check_names.cmake
cmake_minimum_required(VERSION 3.25)

set(names "")
file(GLOB_RECURSE headers RELATIVE "${ROOT}" "${ROOT}/core/*.h" "${ROOT}/ui/*.h" "${ROOT}/app/*.h")
foreach(header IN LISTS headers)
    file(STRINGS "${ROOT}/${header}" definitions REGEX "^(class|struct|enum class) [A-Za-z0-9]+( [^;]*)?$")
    foreach(definition IN LISTS definitions)
        string(REGEX REPLACE "^(class|struct|enum class) ([A-Za-z0-9]+).*$" "\\2" name "${definition}")
        if(DEFINED headerOf_${name} AND NOT headerOf_${name} STREQUAL header)
            message(SEND_ERROR "${name} is defined in ${headerOf_${name}} and in ${header}")
        endif()
        set(headerOf_${name} ${header})
        list(APPEND names ${name})
    endforeach()
endforeach()
list(LENGTH names count)
if(count LESS 2)
    message(FATAL_ERROR "No headers under ${ROOT}")
endif()
