// Camside in the browser: opens the window, then does nothing until the page asks for a frame (page/host.js). The
// functions at the end are all the page may call.
#include <emscripten/emscripten.h>
#include <imgui.h>

#include <cstdlib>
#include <string>

#include "app.hpp"

namespace camside::page {
namespace {

App* app = nullptr;  // lives as long as the page

std::string taken(char* bytes, int length) {
  std::string text(bytes == nullptr ? "" : bytes, static_cast<std::size_t>(length));
  std::free(bytes);
  return text;
}

}  // namespace
}  // namespace camside::page

using camside::page::Answer;
using camside::page::app;
using camside::page::taken;

int main() {
  ImGui::CreateContext();
  app = new camside::page::App;
  return app->open() ? 0 : 1;
}

extern "C" {

// Draws a frame. Seconds until the next one is wanted; negative when nothing more will change by itself.
EMSCRIPTEN_KEEPALIVE double camside_frame() {
  return app->frame();
}
EMSCRIPTEN_KEEPALIVE void camside_settle() {
  app->settle();
}

EMSCRIPTEN_KEEPALIVE void camside_resize(float css_width, float css_height, int pixel_width, int pixel_height) {
  app->resize({css_width, css_height, pixel_width, pixel_height});
}
EMSCRIPTEN_KEEPALIVE void camside_insets(float top, float right, float bottom, float left) {
  app->insets({top, right, bottom, left});
}
EMSCRIPTEN_KEEPALIVE void camside_light(int on) {
  app->prefer_light(on != 0);
}
EMSCRIPTEN_KEEPALIVE void camside_reduced_motion(int on) {
  app->prefer_still(on != 0);
}
EMSCRIPTEN_KEEPALIVE void camside_context(int there) {
  app->context(there != 0);
}

// A wheel with Ctrl, in notches: a pinch on a trackpad comes as that, though nobody holds the key.
EMSCRIPTEN_KEEPALIVE void camside_stretch(float notches) {
  app->stretch(notches);
}

EMSCRIPTEN_KEEPALIVE void camside_text(char* bytes, int length) {
  app->text(taken(bytes, length));
}
EMSCRIPTEN_KEEPALIVE void camside_paste(char* bytes, int length) {
  app->paste(taken(bytes, length));
}
EMSCRIPTEN_KEEPALIVE void camside_text_done() {
  app->text_done();
}

EMSCRIPTEN_KEEPALIVE void camside_loaded(int ticket, int answer, char* newest, int newest_length, char* previous,
                                         int previous_length) {
  app->loaded(ticket, static_cast<Answer>(answer), {taken(newest, newest_length), taken(previous, previous_length)});
}
EMSCRIPTEN_KEEPALIVE void camside_saved(int ticket, int answer) {
  app->saved(ticket, static_cast<Answer>(answer));
}

// What has come into the log since, who writes, and the number of the last entry; the first one answers the opening,
// and brings the second copy where that holds more, or where the database can't be read. One that was asked for it
// because of damage brings it too.
EMSCRIPTEN_KEEPALIVE void camside_log(int answer, int writes, double last, char* bytes, int length, char* copied,
                                      int copied_length) {
  app->log_told({static_cast<Answer>(answer), writes != 0, static_cast<std::uint64_t>(last), taken(bytes, length),
                 taken(copied, copied_length)});
}
EMSCRIPTEN_KEEPALIVE void camside_log_saved(int answer) {
  app->log_saved(static_cast<Answer>(answer));
}
// Whether the browser has promised not to make room at our cost.
EMSCRIPTEN_KEEPALIVE void camside_lasting(int promised) {
  app->lasting(promised != 0);
}

EMSCRIPTEN_KEEPALIVE void camside_can_share(int can) {
  app->can_share(can != 0);
}
// Where the page was opened, without what stands behind '?' or '#'.
EMSCRIPTEN_KEEPALIVE void camside_address(char* bytes, int length) {
  app->address(taken(bytes, length));
}
// A file was picked or dropped; `trouble` says why it can't be read, if so.
EMSCRIPTEN_KEEPALIVE void camside_file(char* name, int name_length, char* bytes, int length, char* trouble,
                                       int trouble_length) {
  app->file_came({taken(name, name_length), taken(bytes, length), taken(trouble, trouble_length)});
}
EMSCRIPTEN_KEEPALIVE void camside_file_given(int given) {
  app->file_given(given != 0);
}

// The rest of the program is here too; nothing of the log or of a kept job comes before.
EMSCRIPTEN_KEEPALIVE void camside_all_here() {
  app->all_here();
}

// The version that runs, whether it is kept on this device, whether a newer one waits to be taken.
EMSCRIPTEN_KEEPALIVE void camside_kept(int kept, int update_ready, char* version, int length) {
  app->kept({kept != 0, update_ready != 0, taken(version, length)});
}

// What is on screen as JSON, for tests; changes nothing.
EMSCRIPTEN_KEEPALIVE const char* camside_items() {
  return app->items();
}

}  // extern "C"
