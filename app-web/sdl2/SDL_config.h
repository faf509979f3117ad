/* SDL2's own settings for Emscripten, less everything Camside's window does without. Found before SDL2's file of the same
   name, which it then keeps from being read. */
#ifndef SDL_config_h_
#define SDL_config_h_

#include "SDL_config_emscripten.h"

/* The drawing surface is ours (WebGL2, made in window.cpp), not SDL2's */
#undef SDL_VIDEO_OPENGL_EGL
#undef SDL_VIDEO_OPENGL_ES2
#undef SDL_VIDEO_RENDER_OGL_ES2
#define SDL_RENDER_DISABLED 1

/* No software pictures either, with a fast path for every pixel format */
#define SDL_LEAN_AND_MEAN 1

#undef SDL_AUDIO_DRIVER_DISK
#undef SDL_AUDIO_DRIVER_DUMMY
#undef SDL_AUDIO_DRIVER_EMSCRIPTEN
#define SDL_AUDIO_DISABLED 1
#undef SDL_JOYSTICK_EMSCRIPTEN
#define SDL_JOYSTICK_DISABLED 1
#undef SDL_SENSOR_DUMMY
#define SDL_SENSOR_DISABLED 1
#undef SDL_POWER_EMSCRIPTEN
#define SDL_POWER_DISABLED 1
#undef SDL_LOADSO_DLOPEN
#define SDL_LOADSO_DUMMY 1

#endif
