# The libraries we lean on. Native builds take Debian's packages as installed; the browser build sees only a folder of
# links to the header-only ones (build/host-headers), so that nothing else of /usr/include is dragged in.
foreach(lib expected fmt eigen json)
  add_library(camside_${lib} INTERFACE)
  add_library(camside::${lib} ALIAS camside_${lib})
endforeach()

if(EMSCRIPTEN)
  foreach(lib expected fmt eigen json)
    target_include_directories(camside_${lib} SYSTEM INTERFACE "${CMAKE_SOURCE_DIR}/build/host-headers")
  endforeach()
  target_compile_definitions(camside_fmt INTERFACE FMT_HEADER_ONLY)
else()
  find_package(fmt REQUIRED)
  target_link_libraries(camside_fmt INTERFACE fmt::fmt)
  target_include_directories(camside_eigen SYSTEM INTERFACE /usr/include/eigen3)
endif()
target_compile_definitions(camside_eigen INTERFACE EIGEN_MPL2_ONLY)
target_compile_definitions(camside_json INTERFACE JSON_USE_IMPLICIT_CONVERSIONS=0)
