// What Camside asks of its page; answered by page/host.js.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

namespace camside::page {

void request_frame();
void set_cursor(const char* css_name);
void copy_text(const std::string& text);
void keep_awake(bool on);
void take_update();
void ring();  // the page loads anew when it has been taken

struct TextField {
  int limit = 0;  // characters
  std::string label;
  std::string text;
};
void open_text_field(const TextField& field);                        // inside the tap, else a phone shows no keyboard
void place_text_field(float x, float y, float width, float height);  // CSS pixels
void close_text_field();

// Answered later by camside_loaded and camside_saved with the same ticket.
void load(int ticket, const std::string& name);
void save(int ticket, const std::string& name, std::string_view bytes);
void set_aside(const std::string& name, bool previous_is_good);

// Answered later by camside_log and camside_log_saved.
void log_open();
void log_append(std::uint64_t before, std::uint64_t number, std::string_view bytes);
void log_damaged();  // asks for the second copy
void log_take_over();

void give_file(const std::string& name, const std::string& bytes, bool share);  // inside the tap, both
void pick_file();

}  // namespace camside::page
