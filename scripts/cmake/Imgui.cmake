# camside::imgui is the core of Dear ImGui, set up by imgui_config.h; all that core/screens may see.
# camside::imgui_window adds the stock window and drawing back ends for this target; for the two apps only.
set(imgui "${CAMSIDE_SOURCES}/imgui")

camside_foreign(camside_imgui
  "${imgui}/imgui.cpp" "${imgui}/imgui_draw.cpp" "${imgui}/imgui_widgets.cpp" "${CMAKE_CURRENT_LIST_DIR}/imgui_left_out.cpp")
target_include_directories(camside_imgui SYSTEM PUBLIC "${imgui}")
if(CMAKE_BUILD_TYPE STREQUAL "Debug")
  target_compile_options(camside_imgui PRIVATE -O1)  # as quick to compile, and the tests of the screens live in it
endif()
target_compile_definitions(camside_imgui PUBLIC "IMGUI_USER_CONFIG=\"${CMAKE_CURRENT_LIST_DIR}/imgui_config.h\"")

if(EMSCRIPTEN)
  camside_foreign(camside_imgui_window
    "${imgui}/backends/imgui_impl_sdl2.cpp" "${imgui}/backends/imgui_impl_opengl3.cpp")
  target_compile_definitions(camside_imgui_window PUBLIC IMGUI_IMPL_OPENGL_ES3)
  # The back end uses EM_JS without including what Emscripten 3.1.6 wants for it.
  target_compile_options(camside_imgui_window PRIVATE -include emscripten/emscripten.h)
  target_link_libraries(camside_imgui_window PUBLIC camside_imgui camside::sdl2)
else()
  find_package(glfw3 REQUIRED)
  find_package(OpenGL REQUIRED)
  camside_foreign(camside_imgui_window
    "${imgui}/backends/imgui_impl_glfw.cpp" "${imgui}/backends/imgui_impl_opengl3.cpp")
  target_link_libraries(camside_imgui_window PUBLIC camside_imgui glfw OpenGL::GL ${CMAKE_DL_LIBS})
endif()
target_include_directories(camside_imgui_window SYSTEM PUBLIC "${imgui}/backends")
