#include "app.hpp"

#include <imgui.h>

#include <utility>

#include "bridge.hpp"
#include "load.hpp"

namespace camside::page {
namespace {

constexpr int kFramesToSettle = 4;
constexpr double kNow_s = 0.0;
constexpr double kNever_s = -1.0;

}  // namespace

bool App::open() {
  ImGui::GetIO().IniFilename = nullptr;
  if (!window_.open()) return false;
  const fonts::Loaded fonts = fonts::load();
  shell_.emplace(store_, platform_, screens::Fonts{fonts.words, fonts.bold}, &log_);
  return true;
}

double App::frame() {
  if (!window_.drawable()) return kNever_s;
  draw();
  if (shell_->wants_more_frames()) return kNow_s;
  return shell_->next_wake().value_or(kNever_s);
}

// A release counts one frame after its press at the earliest, so a quick tap needs some frames to take effect.
void App::settle() {
  for (int i = 0; i < kFramesToSettle && window_.drawable(); ++i) {
    draw();
    if (!window_.events_waiting()) break;
  }
  request_frame();
}

void App::draw() {
  const auto finger = [this](const Finger& f) { shell_->finger(f.id, {f.x, f.y}, f.down); };
  if (window_.hear_events(finger)) shell_->wake();
  window_.begin_frame();
  shell_->draw();
  window_.end_frame();
}

void App::changed() {
  shell_->wake();
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

// Pasted text is typed, as by a gauge that plays keyboard.
void App::paste(const std::string& text) {
  ImGui::GetIO().AddInputCharactersUTF8(text.c_str());
  changed();
}

void App::stretch(float notches) {
  ImGuiIO& io = ImGui::GetIO();
  io.AddKeyEvent(ImGuiMod_Ctrl, true);
  io.AddMouseWheelEvent(0, notches);
  io.AddKeyEvent(ImGuiMod_Ctrl, false);
  changed();
}

void App::text_done() {
  platform_.text_done();
  changed();
}

void App::loaded(int ticket, Answer answer, BrowserStore::Versions versions) {
  store_.loaded(ticket, answer, std::move(versions));
  changed();
}

void App::saved(int ticket, Answer answer) {
  store_.saved(ticket, answer);
  changed();
}

void App::log_told(const BrowserLog::News& news) {
  browser_log_.told(news);
  changed();
}

void App::log_saved(Answer answer) {
  browser_log_.appended(answer);
  changed();
}

void App::lasting(bool promised) {
  platform_.promised = promised;
  changed();
}

void App::kept(screens::Kept kept) {
  platform_.kept_here = std::move(kept);
  changed();
}

void App::all_here() {
  platform_.all_came = true;
  changed();
}

void App::file_came(screens::FileCome file) {
  platform_.came.push_back(std::move(file));
  changed();
}

void App::file_given(bool given) {
  platform_.given = screens::FileGiven{given, "", ""};
  changed();
}

const char* App::items() {
  items_ = shell_->items_json();
  return items_.c_str();
}

}  // namespace camside::page
