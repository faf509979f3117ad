#include "page_platform.hpp"

#include <emscripten/emscripten.h>

#include <algorithm>
#include <chrono>
#include <ctime>
#include <utility>

#include "bridge.hpp"
#include "records/iso_time.hpp"

namespace camside::page {

bool PagePlatform::open_text_field(const screens::TextRequest& request) {
  page::close_text_field();  // ends the one before, if any
  request_ = request;
  page::open_text_field({request.limit, request.label, request.text});
  return true;
}

void PagePlatform::close_text_field() {
  page::close_text_field();
}
void PagePlatform::place_text_field(const screens::TextPlace& place) {
  page::place_text_field(place.x, place.y, place.width, place.height);
}
void PagePlatform::copy_text(const std::string& text) {
  page::copy_text(text);
}

void PagePlatform::keep_awake(bool on) {
  if (on != awake_) page::keep_awake(on);
  awake_ = on;
}

// A phone that sleeps stops the browser's ticks but not the time of day; a time of day that is set back stops nothing.
double PagePlatform::seconds() const {
  const double ticks_s = emscripten_get_now() / 1000.0;
  const double wall_s = std::chrono::duration<double>(std::chrono::system_clock::now().time_since_epoch()).count();
  const double slept_too = clocks_.wall_s == 0.0 ? 0.0 : wall_s - clocks_.wall_s;
  clocks_ = {ticks_s, wall_s, clocks_.passed_s + std::max(ticks_s - clocks_.ticks_s, slept_too)};
  return clocks_.passed_s;
}

void PagePlatform::ring() {
  page::ring();
}

std::string PagePlatform::local_time() const {
  const auto now = std::chrono::system_clock::now();
  const std::time_t seconds = std::chrono::system_clock::to_time_t(now);
  std::tm local{};
  localtime_r(&seconds, &local);
  const auto ms = std::chrono::duration_cast<std::chrono::milliseconds>(now.time_since_epoch()).count();
  return records::iso_time(ms, static_cast<int>(local.tm_gmtoff / 60));
}

void PagePlatform::take_update() {
  page::take_update();
}

void PagePlatform::give_file(const std::string& name, const std::string& bytes, bool share) {
  page::give_file(name, bytes, share);
}
void PagePlatform::pick_file() {
  page::pick_file();
}

std::optional<screens::FileCome> PagePlatform::file_come() {
  if (came.empty()) return std::nullopt;
  screens::FileCome first = std::move(came.front());
  came.pop_front();
  return first;
}

void PagePlatform::text(std::string text) {
  if (request_.changed) request_.changed(std::move(text));
}

void PagePlatform::text_done() {
  const auto done = std::exchange(request_, {}).done;
  if (done) done();
}

}  // namespace camside::page
