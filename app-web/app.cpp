#include "app.hpp"

#include <imgui.h>

#include <algorithm>
#include <utility>

#include "bridge.hpp"
#include "fonts.hpp"

namespace camside::page {
namespace {

constexpr int kFramesAfterInput = 3;  // until a press has shown everything it does
constexpr int kFramesToSettle = 4;

}  // namespace

bool App::open() {
  ImGui::GetIO().IniFilename = nullptr;
  ImFontConfig c;
  c.FontDataOwnedByAtlas = false;
  ImGui::GetIO().Fonts->AddFontFromMemoryTTF(const_cast<unsigned char*>(fonts::regular().data()),
                                             int(fonts::regular().size()), 18, &c);
  return window_.open();
}

double App::frame() {
  if (!window_.drawable()) return -1.0;
  if (window_.hear_events()) frames_left_ = kFramesAfterInput;
  draw();
  frames_left_ = std::max(frames_left_ - 1, window_.events_waiting() ? 1 : 0);
  return frames_left_ > 0 ? 0.0 : -1.0;
}

void App::settle() {
  for (int i = 0; i < kFramesToSettle && window_.drawable() && (i == 0 || window_.events_waiting()); ++i) {
    if (window_.hear_events()) frames_left_ = kFramesAfterInput;
    draw();
  }
  request_frame();
}

void App::draw() {
  window_.begin_frame();
  ImGui::Begin("x");
  ImGui::Text("hello 1° µm");
  static int n = 0;
  if (ImGui::Button("press", ImVec2(100, 50))) ++n;
  ImGui::Text("%d", n);
  if (ImGui::Button("text", ImVec2(100, 50))) open_text_field({10, 200, 200, 50, 20, "Name", "abc"});
  ImGui::End();
  window_.end_frame();
}

void App::changed() {
  frames_left_ = kFramesAfterInput;
  request_frame();
}

void App::resize(const Size& size) {
  window_.resize(size);
  changed();
}

void App::context(bool there) {
  there ? window_.context_restored() : window_.context_lost();
  changed();
}

void App::insets(const screens::Insets& edges) {
  platform_.edges = edges;
  changed();
}

void App::prefer_light(bool on) {
  platform_.light = on;
  changed();
}

void App::prefer_still(bool on) {
  platform_.still = on;
  changed();
}

void App::text(std::string text) {
  platform_.text(std::move(text));
  changed();
}

void App::text_done() {
  platform_.text_done();
  changed();
}

void App::loaded(int ticket, bool worked, BrowserStore::Versions versions) {
  store_.loaded(ticket, worked, std::move(versions));
  changed();
}

void App::saved(int ticket, int answer) {
  using Answer = BrowserStore::Answer;
  store_.saved(ticket, answer > 0 ? Answer::Saved : answer < 0 ? Answer::Full : Answer::Refused);
  changed();
}

const char* App::items() {
  return "[]";
}

}  // namespace camside::page
