/* Stand-ins for the parts of SDL2 that are left out of the browser build. The stock back end of Dear ImGui also knows game
   controllers and SDL2's renderer; SDL2's window also knows software pictures, picture cursors and gestures drawn by
   fingers. Camside uses none. */
#include "SDL.h"

int SDL_NumJoysticks(void) { return 0; }
SDL_bool SDL_IsGameController(int index) { return SDL_FALSE; }
SDL_GameController* SDL_GameControllerOpen(int index) { return NULL; }
void SDL_GameControllerClose(SDL_GameController* controller) {}
Uint8 SDL_GameControllerGetButton(SDL_GameController* controller, SDL_GameControllerButton button) { return 0; }
Sint16 SDL_GameControllerGetAxis(SDL_GameController* controller, SDL_GameControllerAxis axis) { return 0; }

int SDL_GetRendererOutputSize(SDL_Renderer* renderer, int* width, int* height) { return -1; }
int Emscripten_CreateWindowFramebuffer(void* device, SDL_Window* window, Uint32* format, void** pixels, int* pitch) { return -1; }
int Emscripten_UpdateWindowFramebuffer(void* device, SDL_Window* window, const SDL_Rect* rects, int count) { return -1; }
void Emscripten_DestroyWindowFramebuffer(void* device, SDL_Window* window) {}

/* window.cpp sets the canvas's cursor style itself */
void Emscripten_InitMouse(void) {}
void Emscripten_FiniMouse(void) {}

int SDL_GestureAddTouch(SDL_TouchID touch) { return 0; }
int SDL_GestureDelTouch(SDL_TouchID touch) { return 0; }
void SDL_GestureProcessEvent(SDL_Event* event) {}
void SDL_GestureQuit(void) {}
