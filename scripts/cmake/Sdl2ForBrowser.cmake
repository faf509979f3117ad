# camside::sdl2: only what SDL2 needs to open a window and hear events in a browser. SDL_config_emscripten.h makes its
# own configure step (minutes under Emscripten) unnecessary.
set(sdl "${CAMSIDE_SOURCES}/sdl2")
file(GLOB sdl_sources
  "${sdl}/src/*.c" "${sdl}/src/atomic/*.c" "${sdl}/src/cpuinfo/*.c" "${sdl}/src/events/*.c" "${sdl}/src/file/*.c"
  "${sdl}/src/libm/*.c" "${sdl}/src/locale/*.c" "${sdl}/src/locale/emscripten/*.c" "${sdl}/src/misc/*.c"
  "${sdl}/src/misc/emscripten/*.c" "${sdl}/src/stdlib/*.c" "${sdl}/src/thread/*.c" "${sdl}/src/thread/generic/*.c"
  "${sdl}/src/timer/*.c" "${sdl}/src/timer/unix/*.c" "${sdl}/src/video/*.c" "${sdl}/src/video/emscripten/*.c")
list(APPEND sdl_sources "${sdl}/src/loadso/dummy/SDL_sysloadso.c" "${CMAKE_SOURCE_DIR}/app-web/sdl2_left_out.c")
camside_foreign(camside_sdl2 ${sdl_sources})
target_compile_definitions(camside_sdl2 PRIVATE
  SDL_AUDIO_DISABLED=1 SDL_JOYSTICK_DISABLED=1 SDL_SENSOR_DISABLED=1 SDL_RENDER_DISABLED=1 SDL_POWER_DISABLED=1
  SDL_LOADSO_DUMMY=1)
target_include_directories(camside_sdl2 SYSTEM PUBLIC "${sdl}/include")
