#include "window.hpp"

#include <GLES3/gl3.h>
#include <emscripten/html5.h>
#include <imgui.h>
#include <imgui_impl_opengl3.h>
#include <imgui_impl_sdl2.h>
#include <imgui_internal.h>

#include <algorithm>

#include "bridge.hpp"

namespace camside::page {
namespace {

constexpr const char* kCanvas = "#canvas";
constexpr float kLongestStep_s = 1.0F / 20.0F;  // after a pause an animation goes on, it does not jump

bool make_context() {
  EmscriptenWebGLContextAttributes wanted;
  emscripten_webgl_init_context_attributes(&wanted);
  wanted.majorVersion = 2;
  wanted.alpha = wanted.depth = wanted.stencil = wanted.antialias = EM_FALSE;  // Dear ImGui smooths edges itself
  wanted.powerPreference = EM_WEBGL_POWER_PREFERENCE_LOW_POWER;
  const EMSCRIPTEN_WEBGL_CONTEXT_HANDLE context = emscripten_webgl_create_context(kCanvas, &wanted);
  return context > 0 && emscripten_webgl_make_context_current(context) == EMSCRIPTEN_RESULT_SUCCESS;
}

// Polling puts a marker of its own into the queue; asking for a frame because of it would never end.
int ask_for_frame(void* /*unused*/, SDL_Event* event) {
  if (event->type != SDL_POLLSENTINEL) request_frame();
  return 0;
}

// A finger that comes down where it was lifted is no movement to SDL2, but Dear ImGui has let go of the place
// meanwhile.
void say_where(const SDL_MouseButtonEvent& press) {
  ImGui::GetIO().AddMousePosEvent(static_cast<float>(press.x), static_cast<float>(press.y));
}

const char* css_cursor(int cursor) {
  switch (cursor) {
    case ImGuiMouseCursor_TextInput:
      return "text";
    case ImGuiMouseCursor_Hand:
      return "pointer";
    case ImGuiMouseCursor_ResizeNS:
      return "ns-resize";
    case ImGuiMouseCursor_ResizeEW:
      return "ew-resize";
    default:
      return "default";
  }
}

}  // namespace

bool Window::open() {
  SDL_SetHint(SDL_HINT_EMSCRIPTEN_KEYBOARD_ELEMENT, kCanvas);  // fields of the page keep their keys
  if (SDL_Init(SDL_INIT_VIDEO) != 0) return false;
  window_ = SDL_CreateWindow("Camside", 0, 0, 1, 1, 0);  // not resizable: the size is ours to set
  if (window_ == nullptr || !make_context()) return false;
  ImGui_ImplSDL2_InitForOther(window_);
  ImGui_ImplOpenGL3_Init("#version 300 es");
  ImGui::GetIO().ConfigFlags |= ImGuiConfigFlags_NoMouseCursorChange;
  SDL_AddEventWatch(ask_for_frame, nullptr);
  has_context_ = true;
  return true;
}

void Window::resize(const Size& size) {
  size_ = size;
  SDL_SetWindowSize(window_, static_cast<int>(size.css_width), static_cast<int>(size.css_height));
  emscripten_set_canvas_element_size(kCanvas, size.pixel_width, size.pixel_height);
}

// What was lost is let go of at once, and made anew by the first frame after: once the context is back WebKit takes it
// for somebody else's, and says so.
void Window::context_lost() {
  ImGui_ImplOpenGL3_DestroyDeviceObjects();
  has_context_ = false;
}

void Window::context_restored() {
  has_context_ = true;
}

void Window::begin_frame() {
  ImGui_ImplOpenGL3_NewFrame();
  ImGui_ImplSDL2_NewFrame();
  ImGuiIO& io = ImGui::GetIO();
  io.DisplaySize = ImVec2(size_.css_width, size_.css_height);
  io.DisplayFramebufferScale = ImVec2(static_cast<float>(size_.pixel_width) / size_.css_width,
                                      static_cast<float>(size_.pixel_height) / size_.css_height);
  io.DeltaTime = std::min(io.DeltaTime, kLongestStep_s);
  ImGui::NewFrame();
}

void Window::end_frame() {
  ImGui::Render();
  show_cursor();
  glViewport(0, 0, size_.pixel_width, size_.pixel_height);
  const ImVec4& ground = ImGui::GetStyle().Colors[ImGuiCol_WindowBg];
  glClearColor(ground.x, ground.y, ground.z, 1.0F);
  glClear(GL_COLOR_BUFFER_BIT);
  ImGui_ImplOpenGL3_RenderDrawData(ImGui::GetDrawData());
}

bool Window::events_waiting() const {
  return ImGui::GetCurrentContext()->InputEventsQueue.Size > 0;
}

bool Window::hear_events(const std::function<void(const Finger&)>& finger) {
  SDL_Event event;
  bool any = false;
  while (SDL_PollEvent(&event) != 0) {
    any = true;
    if (event.type == SDL_MOUSEBUTTONDOWN) say_where(event.button);
    ImGui_ImplSDL2_ProcessEvent(&event);
    if (event.type == SDL_FINGERDOWN || event.type == SDL_FINGERMOTION || event.type == SDL_FINGERUP)
      finger({event.tfinger.fingerId, event.tfinger.x * size_.css_width, event.tfinger.y * size_.css_height,
              event.type != SDL_FINGERUP});
  }
  return any;
}

void Window::show_cursor() {
  const int cursor = ImGui::GetMouseCursor();
  if (cursor == cursor_) return;
  cursor_ = cursor;
  set_cursor(css_cursor(cursor));
}

}  // namespace camside::page
