# The libraries we lean on. Native builds take Debian's packages as installed; the browser build sees only a folder of
# links to the header-only ones (build/host-headers, made by scripts/link-headers), so that nothing else of /usr/include
# is dragged in. Dear ImGui and the QR code generator and, for the browser, SDL2 and zlib are compiled from the sources
# scripts/fetch-sources brought.
foreach(lib expected fmt eigen json cli)
  add_library(camside_${lib} INTERFACE)
  add_library(camside::${lib} ALIAS camside_${lib})
  if(EMSCRIPTEN)
    target_include_directories(camside_${lib} SYSTEM INTERFACE "${CMAKE_SOURCE_DIR}/build/host-headers")
  endif()
endforeach()

if(EMSCRIPTEN)
  # Without the fixed separator fmt brings all of the C++ locales along (about 60 kB); nothing here prints a long double,
  # a float or an integer of 128 bits.
  target_compile_definitions(camside_fmt INTERFACE FMT_HEADER_ONLY FMT_USE_LONG_DOUBLE=0 FMT_USE_FLOAT=0 FMT_USE_INT128=0 "FMT_STATIC_THOUSANDS_SEPARATOR=','")
else()
  find_package(fmt REQUIRED)
  target_link_libraries(camside_fmt INTERFACE fmt::fmt)
  target_include_directories(camside_eigen SYSTEM INTERFACE /usr/include/eigen3)
endif()
target_compile_definitions(camside_eigen INTERFACE EIGEN_MPL2_ONLY EIGEN_UNROLLING_LIMIT=8)  # loops, not kilobytes
target_compile_definitions(camside_json INTERFACE JSON_USE_IMPLICIT_CONVERSIONS=0)

# camside_foreign(NAME SOURCES...): a library of somebody else's sources, compiled without our warnings.
function(camside_foreign name)
  add_library(${name} STATIC ${ARGN})
  target_compile_options(${name} PRIVATE -w)
  if(CAMSIDE_SANITIZE)  # it is not what is tested here, and the screen tests draw thousands of frames with it
    target_compile_options(${name} PRIVATE -O2 -fno-sanitize=all)
  endif()
  string(REPLACE "camside_" "camside::" alias ${name})
  add_library(${alias} ALIAS ${name})
endfunction()

set(CAMSIDE_SOURCES "${CMAKE_SOURCE_DIR}/build/sources")
foreach(file imgui/imgui.h qrcodegen/c/qrcodegen.c zlib/deflate.c)
  if(NOT EXISTS "${CAMSIDE_SOURCES}/${file}")
    message(FATAL_ERROR "${CAMSIDE_SOURCES}/${file} is not there yet: run scripts/setup first")
  endif()
endforeach()

camside_foreign(camside_qrcodegen "${CAMSIDE_SOURCES}/qrcodegen/c/qrcodegen.c")
target_include_directories(camside_qrcodegen SYSTEM PUBLIC "${CAMSIDE_SOURCES}/qrcodegen/c")

if(EMSCRIPTEN)
  include(Sdl2ForBrowser)
  include(ZlibForBrowser)
else()
  find_package(ZLIB REQUIRED)
  add_library(camside_zlib INTERFACE)
  add_library(camside::zlib ALIAS camside_zlib)
  target_link_libraries(camside_zlib INTERFACE ZLIB::ZLIB)
  target_compile_definitions(camside_zlib INTERFACE ZLIB_CONST)
endif()
include(Imgui)
