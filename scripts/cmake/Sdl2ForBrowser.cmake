# camside::sdl2: only what SDL2 needs to open a window and hear events in a browser. app-web/sdl2/SDL_config.h makes its
# own configure step (minutes under Emscripten) unnecessary.
set(sdl "${CAMSIDE_SOURCES}/sdl2")
file(GLOB sdl_sources
  "${sdl}/src/*.c" "${sdl}/src/atomic/*.c" "${sdl}/src/cpuinfo/*.c" "${sdl}/src/events/*.c" "${sdl}/src/file/*.c"
  "${sdl}/src/libm/*.c" "${sdl}/src/loadso/dummy/*.c" "${sdl}/src/locale/*.c" "${sdl}/src/locale/emscripten/*.c"
  "${sdl}/src/misc/*.c" "${sdl}/src/misc/emscripten/*.c" "${sdl}/src/stdlib/*.c" "${sdl}/src/thread/*.c"
  "${sdl}/src/thread/generic/*.c" "${sdl}/src/timer/*.c" "${sdl}/src/timer/unix/*.c" "${sdl}/src/video/*.c"
  "${sdl}/src/video/emscripten/*events.c" "${sdl}/src/video/emscripten/*video.c")
list(FILTER sdl_sources EXCLUDE REGEX "/SDL_gesture\\.c$")
camside_foreign(camside_sdl2 ${sdl_sources} "${CMAKE_SOURCE_DIR}/app-web/sdl2/left_out.c")
target_include_directories(camside_sdl2 SYSTEM BEFORE PUBLIC "${CMAKE_SOURCE_DIR}/app-web/sdl2" "${sdl}/include")
