# find_package(rimewise) gives
#   rimewise::shared  the shared library
#   rimewise::static  the static library, with the system libraries it needs
# Both carry the include folder of rimewise.h.
get_filename_component(rimewise_prefix "${CMAKE_CURRENT_LIST_DIR}/../../.." ABSOLUTE)
find_path(rimewise_INCLUDE_DIR rimewise.h HINTS "${rimewise_prefix}/include" NO_DEFAULT_PATH)
find_library(rimewise_SHARED_LIBRARY NAMES librimewise.so librimewise.dylib rimewise
    HINTS "${rimewise_prefix}/lib" "${rimewise_prefix}/lib64" PATH_SUFFIXES "${CMAKE_LIBRARY_ARCHITECTURE}" NO_DEFAULT_PATH)
find_library(rimewise_STATIC_LIBRARY NAMES librimewise.a rimewise.lib
    HINTS "${rimewise_prefix}/lib" "${rimewise_prefix}/lib64" PATH_SUFFIXES "${CMAKE_LIBRARY_ARCHITECTURE}" NO_DEFAULT_PATH)
mark_as_advanced(rimewise_INCLUDE_DIR rimewise_SHARED_LIBRARY rimewise_STATIC_LIBRARY)

if(rimewise_INCLUDE_DIR AND rimewise_SHARED_LIBRARY AND NOT TARGET rimewise::shared)
    add_library(rimewise::shared UNKNOWN IMPORTED)
    set_target_properties(rimewise::shared PROPERTIES
        IMPORTED_LOCATION "${rimewise_SHARED_LIBRARY}"
        INTERFACE_INCLUDE_DIRECTORIES "${rimewise_INCLUDE_DIR}")
endif()
if(rimewise_INCLUDE_DIR AND rimewise_STATIC_LIBRARY AND NOT TARGET rimewise::static)
    add_library(rimewise::static UNKNOWN IMPORTED)
    set_target_properties(rimewise::static PROPERTIES
        IMPORTED_LOCATION "${rimewise_STATIC_LIBRARY}"
        INTERFACE_INCLUDE_DIRECTORIES "${rimewise_INCLUDE_DIR}")
    if(UNIX)
        set_target_properties(rimewise::static PROPERTIES
            INTERFACE_LINK_LIBRARIES "m;pthread;${CMAKE_DL_LIBS}")
    endif()
endif()
if(NOT TARGET rimewise::shared AND NOT TARGET rimewise::static)
    set(rimewise_FOUND FALSE)
    set(rimewise_NOT_FOUND_MESSAGE "no library of Rimewise lies under ${rimewise_prefix}")
endif()
