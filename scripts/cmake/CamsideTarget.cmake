# camside_library(NAME folder-target USES other targets...): one static library from the .cpp files of the calling folder.
# The USES list is the layer rule of DEVELOPERS.md: a folder links only to rows above it.
set(CAMSIDE_WARNINGS -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wsign-conversion -Wold-style-cast -Werror)

if(CAMSIDE_SANITIZE AND NOT EMSCRIPTEN)
  add_compile_options(-fsanitize=address,undefined -fno-sanitize-recover=undefined -fno-omit-frame-pointer)
  add_link_options(-fsanitize=address,undefined)
endif()

function(camside_library name)
  cmake_parse_arguments(ARG "" "" "USES" ${ARGN})
  file(GLOB sources CONFIGURE_DEPENDS "${CMAKE_CURRENT_SOURCE_DIR}/*.cpp" "${CMAKE_CURRENT_SOURCE_DIR}/parts/*.cpp")
  add_library(${name} STATIC ${sources})
  target_include_directories(${name} PUBLIC "${CMAKE_SOURCE_DIR}/core")
  target_compile_options(${name} PRIVATE ${CAMSIDE_WARNINGS})
  target_link_libraries(${name} PUBLIC ${ARG_USES})
endfunction()
