// How Dear ImGui is built for Camside: no demo, no debug windows, no calls of old versions, no disk.
#pragma once

#define IMGUI_DISABLE_DEMO_WINDOWS
#define IMGUI_DISABLE_DEBUG_TOOLS
#define IMGUI_DISABLE_OBSOLETE_FUNCTIONS
#define IMGUI_DISABLE_FILE_FUNCTIONS
#define IMGUI_DISABLE_DEFAULT_FONT  // the apps bring their own; this one would be 9 kB of every download

// WebGL2 has no vertex offset, so a long plot needs indices beyond 65,535.
#define ImDrawIdx unsigned int

// Numbers are read back only from its settings file and in input fields of its own; Camside has neither.
#include <cstdio>
#define sscanf(...) 0
