// How Dear ImGui is built for Camside: no demo, no debug windows, no calls of old versions, no disk.
#pragma once

#define IMGUI_DISABLE_DEMO_WINDOWS
#define IMGUI_DISABLE_DEBUG_TOOLS
#define IMGUI_DISABLE_OBSOLETE_FUNCTIONS
#define IMGUI_DISABLE_FILE_FUNCTIONS
#define IMGUI_DISABLE_DEFAULT_FONT  // the apps bring their own; this one would be 9 kB of every download

// WebGL2 has no vertex offset, so a long plot needs indices beyond 65,535.
#define ImDrawIdx unsigned int

// Of all that Dear ImGui reads with sscanf (settings files, its own input fields) Camside meets one thing: the version in
// the first line of a shader. All of sscanf would be 4.5 kB more of code.
#include <cstdarg>
#include <cstdio>
#include <cstdlib>
#include <cstring>

inline int camside_scan(const char* text, const char* format, ...) {
  constexpr const char* version = "#version ";
  if (std::strcmp(format, "#version %d") != 0 || std::strncmp(text, version, std::strlen(version)) != 0) return 0;
  va_list to;
  va_start(to, format);
  *va_arg(to, int*) = std::atoi(text + std::strlen(version));
  va_end(to);
  return 1;
}
#define sscanf camside_scan
