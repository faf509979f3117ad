#include "bridge.hpp"

#include <emscripten/emscripten.h>

// Emscripten passes plain C types only; everything goes to the object `host` that page/host.js hands over at the start.
// clang-format off
EM_JS(void, host_request_frame, (), { Module["host"]["requestFrame"](); });
EM_JS(void, host_cursor, (const char* style), { Module["host"]["cursor"](UTF8ToString(style)); });
EM_JS(void, host_copy, (const char* text), { Module["host"]["copy"](UTF8ToString(text)); });
EM_JS(void, host_keep_awake, (int on), { Module["host"]["keepAwake"](!!on); });
EM_JS(void, host_ring, (), { Module["host"]["ring"](); });
EM_JS(void, host_take_update, (), { Module["host"]["takeUpdate"](); });
EM_JS(void, host_close_text, (), { Module["host"]["closeText"](); });
EM_JS(void, host_place_text, (double x, double y, double width, double height), {
  Module["host"]["placeText"](x, y, width, height);
});
EM_JS(void, host_open_text, (int limit, const char* label, const char* text), {
  Module["host"]["openText"]({ "limit": limit, "label": UTF8ToString(label), "text": UTF8ToString(text) });
});
EM_JS(void, host_load, (int ticket, const char* name), { Module["host"]["load"](ticket, UTF8ToString(name)); });
EM_JS(void, host_save, (int ticket, const char* name, const char* bytes, int length), {
  Module["host"]["save"](ticket, UTF8ToString(name), bytes, length);
});
EM_JS(void, host_set_aside, (const char* name, int previous_is_good), {
  Module["host"]["setAside"](UTF8ToString(name), !!previous_is_good);
});
EM_JS(void, host_log_open, (), { Module["host"]["logOpen"](); });
EM_JS(void, host_log_append, (double before, double number, const char* bytes, int length), {
  Module["host"]["logAppend"](before, number, bytes, length);
});
EM_JS(void, host_log_damaged, (), { Module["host"]["logDamaged"](); });
EM_JS(void, host_log_take_over, (), { Module["host"]["logTakeOver"](); });
EM_JS(void, host_give_file, (const char* name, const char* bytes, int length, int share), {
  Module["host"]["giveFile"](UTF8ToString(name), bytes, length, !!share);
});
EM_JS(void, host_pick_file, (), { Module["host"]["pickFile"](); });
// clang-format on

namespace camside::page {

void request_frame() {
  host_request_frame();
}
void set_cursor(const char* css_name) {
  host_cursor(css_name);
}
void copy_text(const std::string& text) {
  host_copy(text.c_str());
}
void keep_awake(bool on) {
  host_keep_awake(on ? 1 : 0);
}
void ring() {
  host_ring();
}
void take_update() {
  host_take_update();
}
void close_text_field() {
  host_close_text();
}

void open_text_field(const TextField& field) {
  host_open_text(field.limit, field.label.c_str(), field.text.c_str());
}
void place_text_field(float x, float y, float width, float height) {
  host_place_text(x, y, width, height);
}

void load(int ticket, const std::string& name) {
  host_load(ticket, name.c_str());
}
void save(int ticket, const std::string& name, std::string_view bytes) {
  host_save(ticket, name.c_str(), bytes.data(), static_cast<int>(bytes.size()));
}
void set_aside(const std::string& name, bool previous_is_good) {
  host_set_aside(name.c_str(), previous_is_good ? 1 : 0);
}

void log_open() {
  host_log_open();
}
void log_append(std::uint64_t before, std::uint64_t number, std::string_view bytes) {
  host_log_append(static_cast<double>(before), static_cast<double>(number), bytes.data(),
                  static_cast<int>(bytes.size()));
}
void log_damaged() {
  host_log_damaged();
}
void log_take_over() {
  host_log_take_over();
}

void give_file(const std::string& name, const std::string& bytes, bool share) {
  host_give_file(name.c_str(), bytes.data(), static_cast<int>(bytes.size()), share ? 1 : 0);
}
void pick_file() {
  host_pick_file();
}

}  // namespace camside::page
