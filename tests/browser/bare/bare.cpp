// The least page Dear ImGui can make with SDL2 and WebGL2: one window, one button. Camside's start is compared with it.
#include <GLES3/gl3.h>
#include <SDL.h>
#include <emscripten/emscripten.h>
#include <emscripten/html5.h>
#include <imgui.h>
#include <imgui_impl_opengl3.h>
#include <imgui_impl_sdl2.h>

#include "load.hpp"

namespace {

SDL_Window* window = nullptr;
int pressed = 0;

bool open_window() {
  if (SDL_Init(SDL_INIT_VIDEO) != 0) return false;
  window = SDL_CreateWindow("bare", 0, 0, 1, 1, 0);
  EmscriptenWebGLContextAttributes wanted;
  emscripten_webgl_init_context_attributes(&wanted);
  wanted.majorVersion = 2;
  const EMSCRIPTEN_WEBGL_CONTEXT_HANDLE context = emscripten_webgl_create_context("#canvas", &wanted);
  return context > 0 && emscripten_webgl_make_context_current(context) == EMSCRIPTEN_RESULT_SUCCESS;
}

}  // namespace

int main() {
  ImGui::CreateContext();
  ImGui::GetIO().IniFilename = nullptr;
  if (!open_window()) return 1;
  ImGui_ImplSDL2_InitForOther(window);
  ImGui_ImplOpenGL3_Init("#version 300 es");
  camside::fonts::load();
  return 0;
}

extern "C" EMSCRIPTEN_KEEPALIVE void bare_frame(int width, int height) {
  SDL_Event event;
  while (SDL_PollEvent(&event) != 0) ImGui_ImplSDL2_ProcessEvent(&event);
  SDL_SetWindowSize(window, width, height);
  emscripten_set_canvas_element_size("#canvas", width, height);
  ImGui_ImplOpenGL3_NewFrame();
  ImGui_ImplSDL2_NewFrame();
  ImGui::NewFrame();
  ImGui::Begin("bare");
  if (ImGui::Button("press")) ++pressed;
  ImGui::Text("%d", pressed);
  ImGui::End();
  ImGui::Render();
  glViewport(0, 0, width, height);
  glClear(GL_COLOR_BUFFER_BIT);
  ImGui_ImplOpenGL3_RenderDrawData(ImGui::GetDrawData());
}
