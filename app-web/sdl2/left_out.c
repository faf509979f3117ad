/* The stock SDL2 back end of Dear ImGui also knows game controllers and SDL's own renderer; our SDL2 is built without
   them. These answer "there are none", and are never reached while gamepad navigation stays off. */
#include <SDL.h>

int SDL_NumJoysticks(void) { return 0; }
SDL_bool SDL_IsGameController(int index) { return SDL_FALSE; }
SDL_GameController* SDL_GameControllerOpen(int index) { return NULL; }
void SDL_GameControllerClose(SDL_GameController* controller) {}
Uint8 SDL_GameControllerGetButton(SDL_GameController* controller, SDL_GameControllerButton button) { return 0; }
Sint16 SDL_GameControllerGetAxis(SDL_GameController* controller, SDL_GameControllerAxis axis) { return 0; }
int SDL_GetRendererOutputSize(SDL_Renderer* renderer, int* width, int* height) { return -1; }
