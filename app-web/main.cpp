#include <SDL.h>
#include <imgui.h>
#include <imgui_impl_opengl3.h>
#include <imgui_impl_sdl2.h>
int main() {
  SDL_Init(SDL_INIT_VIDEO);
  SDL_Window* w = SDL_CreateWindow("", 0, 0, 300, 300, SDL_WINDOW_OPENGL);
  SDL_GLContext c = SDL_GL_CreateContext(w);
  ImGui::CreateContext();
  ImGui_ImplSDL2_InitForOpenGL(w, c);
  ImGui_ImplOpenGL3_Init("#version 300 es");
  SDL_Event e;
  while (SDL_PollEvent(&e)) ImGui_ImplSDL2_ProcessEvent(&e);
  ImGui_ImplOpenGL3_NewFrame();
  ImGui_ImplSDL2_NewFrame();
  ImGui::NewFrame();
  ImGui::Render();
  ImGui_ImplOpenGL3_RenderDrawData(ImGui::GetDrawData());
}
