# camside_library(NAME USES other targets... READS headers... READS_WITH target READS_FOREIGN_BYTES): one static library from
# the .cpp files of the calling folder and those below it. The USES list is the layer rule of DEVELOPERS.md: a folder links
# only to rows above it. Reading headers takes the compiler more time than most of our files themselves; the common ones, and
# those of READS, it reads once for a library, and once for all that name it in READS_WITH.
# (Not GCC: in headers read so it no more knows those of the system, and their false warnings become errors.)
set(CAMSIDE_READ_OFTEN <algorithm> <cmath> <functional> <memory> <optional> <span> <string> <string_view> <vector>
  <fmt/format.h> <tl/expected.hpp>)
set(CAMSIDE_WARNINGS -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wsign-conversion -Wold-style-cast -Werror)
if(CMAKE_CXX_COMPILER_ID STREQUAL "GNU")
  list(APPEND CAMSIDE_WARNINGS -Wno-restrict)  # GCC 12 takes "text" + std::string for an overlap at -O3 (its bug 105651)
endif()

if(CAMSIDE_SANITIZE AND NOT EMSCRIPTEN)
  # A null pointer that is followed stops in AddressSanitizer too; without these two checks on each access to a member
  # everything compiles a sixth quicker.
  add_compile_options(-fsanitize=address,undefined -fno-sanitize=null,alignment -fno-sanitize-recover=undefined
    -fno-omit-frame-pointer)
  # At fixed addresses: a million and a half relocations would take half of each test program's start.
  add_link_options(-fsanitize=address,undefined -no-pie)
endif()
if(EMSCRIPTEN)
  # The last three are instructions that the oldest browsers named in app-web/CMakeLists.txt have; they make it smaller.
  add_compile_options(-Oz -flto -fno-exceptions -fno-rtti -fno-threadsafe-statics -mbulk-memory -msign-ext -mnontrapping-fptoint)
  add_link_options(-Oz -flto -fno-exceptions)
  # Emscripten's optimiser looks for its JavaScript parser in Debian's node path, which other builds of Node.js don't know.
  set(CMAKE_C_LINKER_LAUNCHER "${CMAKE_COMMAND}" -E env NODE_PATH=/usr/share/nodejs)
  set(CMAKE_CXX_LINKER_LAUNCHER "${CMAKE_C_LINKER_LAUNCHER}")
endif()

# Where ccache is there, it is used. Headers read beforehand are as good from one build as from the next: it looks at what
# is in them, not at when they were written.
find_program(CAMSIDE_CCACHE ccache)
if(CAMSIDE_CCACHE AND NOT CMAKE_CXX_COMPILER_LAUNCHER)
  set(CMAKE_C_COMPILER_LAUNCHER "${CAMSIDE_CCACHE}")
  set(CMAKE_CXX_COMPILER_LAUNCHER "${CMAKE_COMMAND}" -E env
    CCACHE_SLOPPINESS=pch_defines,time_macros,include_file_mtime,include_file_ctime "${CAMSIDE_CCACHE}")
endif()
if(CMAKE_CXX_COMPILER_ID MATCHES "Clang")
  add_compile_options("$<$<COMPILE_LANGUAGE:CXX>:SHELL:-Xclang -fno-pch-timestamp>")
endif()

# camside_read_once(TARGET other headers...): reads the headers once for the target, or takes them as read from the other.
function(camside_read_once name other)
  if(NOT CMAKE_CXX_COMPILER_ID MATCHES "Clang")
    return()
  endif()
  if(other)
    target_precompile_headers(${name} REUSE_FROM ${other})
  else()
    target_precompile_headers(${name} PRIVATE ${ARGN})
  endif()
endfunction()

function(camside_library name)
  cmake_parse_arguments(ARG "READS_FOREIGN_BYTES" "READS_WITH" "USES;READS" ${ARGN})
  file(GLOB_RECURSE sources CONFIGURE_DEPENDS "${CMAKE_CURRENT_SOURCE_DIR}/*.cpp")
  if(NOT sources)  # headers only
    add_library(${name} INTERFACE)
    target_include_directories(${name} INTERFACE "${CMAKE_SOURCE_DIR}/core")
    target_link_libraries(${name} INTERFACE ${ARG_USES})
    return()
  endif()
  add_library(${name} STATIC ${sources})
  target_include_directories(${name} PUBLIC "${CMAKE_SOURCE_DIR}/core")
  target_compile_options(${name} PRIVATE ${CAMSIDE_WARNINGS})
  target_link_libraries(${name} PUBLIC ${ARG_USES})
  if(CAMSIDE_FUZZ AND ARG_READS_FOREIGN_BYTES)  # the fuzzer is shown which ways through it an input takes
    target_compile_options(${name} PRIVATE -fsanitize=fuzzer-no-link)
  endif()
  camside_read_once(${name} "${ARG_READS_WITH}" ${CAMSIDE_READ_OFTEN} ${ARG_READS})
endfunction()

# camside_embed(TARGET ROWS files...): the files become part of the program. ROWS in the target's build folder has a row
# {"name", "text"}, for each, to be included in the braces of an array.
function(camside_embed target rows)
  set(text "")
  foreach(file ${ARGN})
    get_filename_component(name ${file} NAME_WE)
    file(READ ${file} content)
    string(APPEND text "    {\"${name}\", R\"camside(${content})camside\"},\n")
    set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS ${file})
  endforeach()
  file(CONFIGURE OUTPUT "${CMAKE_CURRENT_BINARY_DIR}/${rows}" CONTENT "@text@" @ONLY)
  target_include_directories(${target} PRIVATE "${CMAKE_CURRENT_BINARY_DIR}")
  # Compilers need not take more than 65,536 characters in one text; ours do.
  target_compile_options(${target} PRIVATE -Wno-overlength-strings)
endfunction()
