#include "window.hpp"

#define GLFW_INCLUDE_NONE
#include <GL/gl.h>
#include <GLFW/glfw3.h>
#include <imgui.h>
#include <imgui_impl_glfw.h>
#include <imgui_impl_opengl3.h>
#include <imgui_internal.h>

#include <algorithm>
#include <atomic>
#include <cstdio>

namespace camside {
namespace {

constexpr float kLongestStep_s = 1.0F / 20.0F;  // after a pause an animation goes on, it does not jump
constexpr double kForever_s = 24.0 * 3600.0;

// Set by every callback and by wake(); GLFW's waiting doesn't say whether anything happened.
std::atomic<bool> heard = false;

float scale_of(GLFWwindow* window) {
  float scale = 1.0F;
  glfwGetWindowContentScale(window, &scale, nullptr);
  return scale > 0.0F ? scale : 1.0F;
}

void hints() {
  glfwWindowHint(GLFW_CONTEXT_VERSION_MAJOR, 3);
  glfwWindowHint(GLFW_CONTEXT_VERSION_MINOR, 2);
  glfwWindowHint(GLFW_OPENGL_PROFILE, GLFW_OPENGL_CORE_PROFILE);
  glfwWindowHint(GLFW_OPENGL_FORWARD_COMPAT, GLFW_TRUE);
  glfwWindowHint(GLFW_SCALE_TO_MONITOR, GLFW_TRUE);
  glfwWindowHint(GLFW_DEPTH_BITS, 0);
  glfwWindowHint(GLFW_STENCIL_BITS, 0);
}

std::string last_error() {
  const char* text = nullptr;
  glfwGetError(&text);
  return text == nullptr ? "no reason given" : text;
}

}  // namespace

Window::~Window() {
  if (window_ != nullptr) {
    ImGui_ImplOpenGL3_Shutdown();
    ImGui_ImplGlfw_Shutdown();
    glfwDestroyWindow(window_);
  }
  glfwTerminate();
}

std::string Window::open(const char* title, int width, int height) {
  if (glfwInit() == GLFW_FALSE) return last_error();
  hints();
  window_ = glfwCreateWindow(width, height, title, nullptr, nullptr);
  if (window_ == nullptr) return last_error();
  glfwSetWindowSizeLimits(window_, 320, 480, GLFW_DONT_CARE, GLFW_DONT_CARE);
  glfwMakeContextCurrent(window_);
  glfwSwapInterval(1);
  ImGui_ImplGlfw_InitForOpenGL(window_, false);
  ImGui_ImplOpenGL3_Init("#version 150");
  listen();
  return {};
}

// Dear ImGui's own callbacks, with places turned into units of the screens.
void Window::listen() {
  glfwSetWindowUserPointer(window_, this);
  glfwSetCursorPosCallback(window_, [](GLFWwindow* window, double x, double y) {
    heard = true;
    const double units = static_cast<Window*>(glfwGetWindowUserPointer(window))->units_per_position();
    ImGui_ImplGlfw_CursorPosCallback(window, x * units, y * units);
  });
  glfwSetCursorEnterCallback(window_, [](GLFWwindow* window, int entered) {
    heard = true;
    ImGui_ImplGlfw_CursorEnterCallback(window, entered);
  });
  glfwSetMouseButtonCallback(window_, [](GLFWwindow* window, int button, int action, int mods) {
    heard = true;
    ImGui_ImplGlfw_MouseButtonCallback(window, button, action, mods);
  });
  glfwSetScrollCallback(window_, [](GLFWwindow* window, double x, double y) {
    heard = true;
    ImGui_ImplGlfw_ScrollCallback(window, x, y);
  });
  glfwSetKeyCallback(window_, [](GLFWwindow* window, int key, int code, int action, int mods) {
    heard = true;
    ImGui_ImplGlfw_KeyCallback(window, key, code, action, mods);
  });
  glfwSetCharCallback(window_, [](GLFWwindow* window, unsigned int character) {
    heard = true;
    ImGui_ImplGlfw_CharCallback(window, character);
  });
  glfwSetWindowFocusCallback(window_, [](GLFWwindow* window, int focused) {
    heard = true;
    ImGui_ImplGlfw_WindowFocusCallback(window, focused);
  });
  glfwSetDropCallback(window_, [](GLFWwindow* window, int count, const char** paths) {
    heard = true;
    auto& dropped = static_cast<Window*>(glfwGetWindowUserPointer(window))->dropped_;
    dropped.insert(dropped.end(), paths, paths + count);
  });
  glfwSetWindowRefreshCallback(window_, [](GLFWwindow*) { heard = true; });
  glfwSetFramebufferSizeCallback(window_, [](GLFWwindow*, int, int) { heard = true; });
  glfwSetWindowContentScaleCallback(window_, [](GLFWwindow*, float, float) { heard = true; });
}

bool Window::closing() const {
  return glfwWindowShouldClose(window_) != 0;
}
bool Window::visible() const {
  return glfwGetWindowAttrib(window_, GLFW_ICONIFIED) == 0;
}
void Window::ask_for_attention() {
  glfwRequestWindowAttention(window_);
  std::fputc('\a', stderr);
}
void Window::wake() {
  glfwPostEmptyEvent();
}

bool Window::sleep(double seconds) {
  if (seconds == 0.0) {
    glfwPollEvents();
  } else {
    glfwWaitEventsTimeout(seconds < 0.0 ? kForever_s : seconds);
  }
  return heard.exchange(false);
}

// Some systems count places in pixels, some in units already.
double Window::units_per_position() const {
  int width = 0, pixels = 0;
  glfwGetWindowSize(window_, &width, nullptr);
  glfwGetFramebufferSize(window_, &pixels, nullptr);
  return width > 0 ? pixels / (static_cast<double>(scale_of(window_)) * width) : 1.0;
}

void Window::fit() {
  int width = 0, height = 0;
  glfwGetFramebufferSize(window_, &width, &height);
  const float scale = scale_of(window_);
  ImGuiIO& io = ImGui::GetIO();
  io.DisplaySize = ImVec2(static_cast<float>(width) / scale, static_cast<float>(height) / scale);
  io.DisplayFramebufferScale = ImVec2(scale, scale);
}

void Window::begin_frame() {
  ImGui_ImplOpenGL3_NewFrame();
  ImGui_ImplGlfw_NewFrame();
  fit();
  ImGui::GetIO().DeltaTime = std::min(ImGui::GetIO().DeltaTime, kLongestStep_s);
  ImGui::NewFrame();
}

void Window::end_frame() {
  ImGui::Render();
  int width = 0, height = 0;
  glfwGetFramebufferSize(window_, &width, &height);
  const ImVec4& ground = ImGui::GetStyle().Colors[ImGuiCol_WindowBg];
  glViewport(0, 0, width, height);
  glClearColor(ground.x, ground.y, ground.z, 1.0F);
  glClear(GL_COLOR_BUFFER_BIT);
  ImGui_ImplOpenGL3_RenderDrawData(ImGui::GetDrawData());
  glfwSwapBuffers(window_);
}

bool Window::events_waiting() {
  return ImGui::GetCurrentContext()->InputEventsQueue.Size > 0;
}

}  // namespace camside
