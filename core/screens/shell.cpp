#include "screens/shell.hpp"

#include <imgui_internal.h>

#include <algorithm>

#include "screens/bench/bench_place.hpp"
#include "screens/bikes/bikes_place.hpp"
#include "screens/look_over/look_over_place.hpp"
#include "screens/setup_place.hpp"
#include "screens/words.hpp"
#include "units/format.hpp"

namespace camside::screens {

namespace {

constexpr float margin = 16.0f;
constexpr float places_height = 64.0f;
constexpr float rail_width = 92.0f;

constexpr ImGuiWindowFlags plain_child = ImGuiWindowFlags_NoNav;

enum class Scroll : std::uint8_t { None, Finger, Bar };  // Finger: no bar, a thin mark shows where one is

// A part of the window with its own scrolling. Everything inside is drawn between the two calls.
bool begin_part(const char* id, const Area& area, float pad, Scroll scroll) {
  ImGui::SetCursorScreenPos(area.min);
  ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {pad, pad > 0 ? 8.0f : 0.0f});
  const ImGuiWindowFlags flags = scroll == Scroll::None
                                     ? ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse
                                 : scroll == Scroll::Finger ? ImGuiWindowFlags_NoScrollbar
                                                            : 0;
  return ImGui::BeginChild(id, {area.width(), area.height()}, ImGuiChildFlags_AlwaysUseWindowPadding,
                           flags | plain_child);
}

// A thin mark at the edge: how much there is and where one is. Nothing to take hold of.
void draw_scroll_mark(const Theme& theme) {
  const ImGuiWindow* const window = ImGui::GetCurrentWindow();
  if (window->ScrollMax.y <= 0 || !(window->Flags & ImGuiWindowFlags_NoScrollbar)) return;
  const float all = window->Size.y + window->ScrollMax.y;
  const float length = std::max(24.0f, window->Size.y * window->Size.y / all);
  const float top = window->Pos.y + (window->Size.y - length) * window->Scroll.y / window->ScrollMax.y;
  const float x = window->Pos.x + window->Size.x - 5;
  ImGui::GetWindowDrawList()->PushClipRectFullScreen();
  ImGui::GetWindowDrawList()->AddRectFilled({x, top}, {x + 3, top + length}, theme.line, 2);
  ImGui::GetWindowDrawList()->PopClipRect();
}

void end_part() {
  ImGui::EndChild();
  ImGui::PopStyleVar();
}

void end_scrolling_part(const Theme& theme) {
  draw_scroll_mark(theme);
  end_part();
}

}  // namespace

Shell::Shell(storage::Store& store, Platform& platform, const Fonts& fonts, storage::LogKeeper* log)
    : platform_(platform),
      job_(store),
      settings_keeper_(store, "settings"),
      store_(store),
      fonts_(fonts),
      last_place_(store,
                  [this, alive = std::weak_ptr<bool>(alive_)] {
                    if (alive.lock()) frames_wanted_ = 3;
                  }),
      bike_log_(log, platform) {
  make_places();
  load_settings();
  const auto wake_up = [this, alive = std::weak_ptr<bool>(alive_)] {
    if (alive.lock()) frames_wanted_ = 3;
  };
  job_.open(wake_up);
  bike_log_.open(wake_up);
}

Shell::~Shell() = default;

// The one list of the places, in the order of PlaceId.
void Shell::make_places() {
  const auto update = [this](Ui& ui) { draw_update(ui); };
  auto bikes = std::make_unique<BikesPlace>(bike_log_, job_, platform_, store_);
  const BikesPlace& bikes_place = *bikes;
  places_.push_back(std::move(bikes));
  places_.push_back(std::make_unique<BenchPlace>(job_, platform_, bike_log_, settings_, update));
  places_.push_back(std::make_unique<LookOverPlace>(job_, platform_, bike_log_,
                                                    [&bikes_place] { return bikes_place.said_of_summary(); }));
  places_.push_back(std::make_unique<SetupPlace>(
      platform_, settings_, [this](const work::Settings& wanted) { change(wanted); }, update));
}

void Shell::load_settings() {
  store_.load(
      "settings", [](std::string_view) { return true; },
      [this, alive = std::weak_ptr<bool>(alive_)](tl::expected<storage::Loaded, Finding> loaded) {
        if (!alive.lock() || !loaded) return;
        settings_ = work::read_settings(loaded->bytes);
        frames_wanted_ = 3;
      });
}

void Shell::change(const work::Settings& settings) {
  if (settings == settings_) return;
  settings_ = settings;
  settings_keeper_.put(work::write_settings(settings_));
  frames_wanted_ = 3;
}

Place& Shell::shown() const {
  return *places_[static_cast<std::size_t>(place_)];
}

work::Whereabouts Shell::whereabouts() const {
  work::Whereabouts all{std::string(shown().word())};
  for (std::string& part : shown().where()) all.push_back(std::move(part));
  return all;
}

// To where one was when the program ended, unless something was tapped meanwhile.
void Shell::come_back() {
  const work::Whereabouts* const found = last_place_.found();
  if (!found || !job_ready_) return;
  const bool fresh = place_ == PlaceId::Bench && shown().where().empty();
  const std::vector<std::string> where(found->begin() + 1, found->end());
  const auto it =
      std::find_if(places_.begin(), places_.end(), [&](const auto& p) { return p->word() == found->front(); });
  const bool known = it != places_.end();
  if (fresh && known && !(*it)->can_come_back(where)) return;
  last_place_.leave();
  if (fresh && known) go({(*it)->id(), where});
}

void Shell::open(std::string_view kind) {
  go({PlaceId::Bench, {std::string(kind)}});
}

void Shell::go(const Way& way) {
  place_ = way.place;
  shown().come_back(way.where);
  frames_wanted_ = 3;
}

void Shell::go(PlaceId place) {
  if (place == place_) shown().home();
  go(Way{place, {}});
}

const Theme& Shell::theme() const {
  const bool light = settings_.theme == work::ThemeChoice::Sun ||
                     (settings_.theme == work::ThemeChoice::System && platform_.light_wanted());
  return light ? sun_theme() : shop_theme();
}

Shell::Layout Shell::layout() const {
  Layout l;
  l.insets = platform_.insets();
  l.size = ImGui::GetIO().DisplaySize;
  const bool wide = l.size.x >= 900 && l.size.y >= 560;
  const bool sideways = !wide && l.size.x >= 560 && l.size.x > l.size.y;
  l.shape = wide ? Shape::Wide : sideways ? Shape::Sideways : Shape::Portrait;
  return l;
}

View Shell::view(const Layout& l) const {
  return {settings_.system, l.shape, 0.0f};
}

void Shell::keys() {
  if (!shown().typing() && ImGui::IsKeyPressed(ImGuiKey_Escape, false)) shown().back();
}

void Shell::check_timers() {
  for (const auto& place : places_) place->refresh(place.get() == &shown());
}

void Shell::take_ways() {
  for (const auto& place : places_)
    if (const auto way = place->take_way()) go(*way);
}

void Shell::draw() {
  store_.poll();
  check_timers();
  take_ways();
  if (job_.ready() && !job_ready_) {
    job_ready_ = true;
    for (const auto& place : places_) place->forget();
  }
  come_back();
  frames_wanted_ = std::max(0, frames_wanted_ - 1);
  apply_to_imgui(theme());
  gesture_.begin_frame();
  focus_.begin_frame(items_, shown().typing());
  focus_.type_in(platform_.text_field_open());
  items_.clear();
  keys();
  draw_window(layout());
  take_ways();
  last_place_.put(whereabouts());
  place_text_field();
  platform_.keep_awake(shown().keeps_awake());
}

void Shell::draw_window(const Layout& l) {
  ImGui::SetNextWindowPos({0, 0});
  ImGui::SetNextWindowSize(l.size);
  ImGui::Begin("camside", nullptr,
               ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoSavedSettings |
                   ImGuiWindowFlags_NoBringToFrontOnFocus | ImGuiWindowFlags_NoScrollWithMouse);
  Ui ui(theme(), fonts_, settings_.text_scale, items_, focus_, gesture_);
  switch (l.shape) {
    case Shape::Wide:
      draw_wide(ui, l);
      break;
    case Shape::Sideways:
      draw_sideways(ui, l);
      break;
    case Shape::Portrait:
      draw_portrait(ui, l);
      break;
  }
  ImGui::End();
}

// The real text field over the drawn one. What isn't shown any more isn't typed in either.
void Shell::place_text_field() {
  const std::string open = platform_.text_field_open();
  if (open.empty()) return;
  const auto drawn = std::find_if(items_.begin(), items_.end(), [&](const Item& i) { return i.field == open; });
  if (drawn == items_.end()) return platform_.close_text_field();
  const ImVec2 size{drawn->box_max.x - drawn->box_min.x, drawn->box_max.y - drawn->box_min.y};
  platform_.place_text_field({drawn->box_min.x, drawn->box_min.y, size.x, size.y});
}

void Shell::draw_places(Ui& ui, const Area& area, bool column) {
  begin_part("places", area, 0, column ? Scroll::Finger : Scroll::None);
  const float count = static_cast<float>(places_.size());
  const float each = column ? area.width() : area.width() / count;
  const float high = column ? std::max(60.0f, std::min(84.0f, area.height() / count - 8)) : area.height();
  for (const auto& place : places_) {
    if (!column && place != places_.front()) ImGui::SameLine(0, 0);
    const bool on = place->id() == place_;
    const char* const name = place->name();
    if (ui.area(name, Role::Place, name, {each, high}, [&](const Area& at, bool pressed) {
          ImDrawList* const list = ImGui::GetWindowDrawList();
          const ImU32 ink = on ? ui.theme().accent : ui.theme().quiet;
          if (pressed) list->AddRectFilled(at.min, at.max, ui.theme().pressed, 10);
          place->draw_icon(list, {at.centre().x, at.min.y + 0.36f * at.height()}, 13, ink, ui.theme().stroke);
          ui.fit({{at.min.x + 2, at.min.y + 0.6f * at.height()}, {at.max.x - 2, at.max.y - 2}}, name, ink,
                 std::min(ui.px(14), 18.0f), on ? ui.fonts().bold : ui.fonts().words);
        }))
      go(place->id());
    items_.back().chosen = on;
  }
  end_part();
}

// The way back. True: it was taken.
bool Shell::draw_back(Ui& ui, float height) {
  const bool taken = ui.area("back", Role::Button, words::back(), {56, height}, [&](const Area& at, bool pressed) {
    const Pen pen = ui.pen(ui.theme().ground);
    const ImU32 ink = pressed ? ui.theme().text : ui.theme().accent;
    const ImVec2 c = at.centre();
    pen.line({c.x + 5, c.y - 10}, {c.x - 5, c.y}, ink, ui.theme().stroke * 1.3f);
    pen.line({c.x - 5, c.y}, {c.x + 5, c.y + 10}, ink, ui.theme().stroke * 1.3f);
  });
  if (taken) shown().back();
  return taken;
}

void Shell::draw_header(Ui& ui, float width, const View& view) {
  const float height = ui.target();
  const bool way_back = shown().deep(view);
  if (way_back) {
    if (draw_back(ui, height)) return;
    ImGui::SameLine(0, 8);
  }
  const std::string title = shown().title(view);
  const float indent = view.shape != Shape::Wide && !way_back ? margin / 2 : 0;
  const ImVec2 at{ImGui::GetCursorScreenPos().x + indent, ImGui::GetCursorScreenPos().y};
  const float left = at.x;
  const std::optional<Verdict> verdict = shown().verdict();
  const float room = width - (way_back ? 64.0f : 0.0f) - (verdict ? 44.0f : 0.0f);
  ui.publish(Role::Heading, title, at, {at.x + room, at.y + height});
  ui.fit({at, {left + room, at.y + height}}, title, ui.theme().text, ui.px(22), ui.fonts().bold, {0, 0.5f});
  if (verdict)
    draw_verdict_mark(ui.pen(ui.theme().ground), {left + room + 22, at.y + height / 2}, 12, *verdict,
                      colour_of(ui.theme(), *verdict));
  ImGui::Dummy({room, height});
}

// Offered, never forced, and not before all is saved.
void Shell::draw_update(Ui& ui) {
  if (!platform_.kept().update_ready) return;
  const bool safe = job_.all_safe() && (!bike_log_.present() || bike_log_.keeper().all_safe());
  if (ui.row("update", words::update_ready(), words::load_it(), safe)) platform_.take_update();
}

void Shell::draw_middle(Ui& ui, const View& view) {
  for (const auto& place : places_) place->draw_notice(ui);
  shown().draw_middle(ui, view);
}

void Shell::draw_bottom(Ui& ui, const Area& at, float pad, View view) {
  if (at.height() <= 0) return;
  begin_part("bottom", at, pad, Scroll::None);
  view.height = at.height();
  shown().draw_bottom(ui, view);
  end_part();
}

void Shell::draw_portrait(Ui& ui, const Layout& l) {
  const View v = view(l);
  const Area all{{l.insets.left, l.insets.top}, {l.size.x - l.insets.right, l.size.y - l.insets.bottom}};
  const float header = ui.target() + 8;
  const float places = shown().typing() ? 0 : places_height;
  const float bottom = std::min(shown().bottom_height(ui, v), 0.72f * all.height());
  begin_part("header", {all.min, {all.max.x, all.min.y + header}}, margin / 2, Scroll::None);
  draw_header(ui, all.width() - margin, v);
  end_part();
  const float middle_end = all.max.y - places - bottom;
  begin_part(shown().part(), {{all.min.x, all.min.y + header}, {all.max.x, middle_end}}, margin, Scroll::Finger);
  draw_middle(ui, v);
  end_scrolling_part(theme());
  draw_bottom(ui, {{all.min.x, middle_end}, {all.max.x, middle_end + bottom}}, margin / 2, v);
  if (places > 0) draw_places(ui, {{all.min.x, all.max.y - places}, all.max}, false);
}

// Beside the middle: the keypad while typing, else something to look at with the main action below, at the thumb.
void Shell::draw_beside(Ui& ui, const Area& side, const View& view) {
  if (shown().typing()) return draw_bottom(ui, side, margin / 2, view);
  const float action = shown().bottom_height(ui, view);
  const Area upper{side.min, {side.max.x, side.max.y - action}};
  if (shown().has_side(view)) {
    begin_part("side", upper, margin / 2, Scroll::Finger);
    shown().draw_side(ui, {view.system, view.shape, upper.height() - 16});
    end_scrolling_part(theme());
  }
  draw_bottom(ui, {{side.min.x, side.max.y - action}, side.max}, margin / 2, view);
}

void Shell::draw_sideways(Ui& ui, const Layout& l) {
  const View v = view(l);
  const Area all{{l.insets.left, l.insets.top}, {l.size.x - l.insets.right, l.size.y - l.insets.bottom}};
  const Column wanted = shown().column(ui, v);
  const float side = wanted == Column::None     ? 0
                     : wanted == Column::Narrow ? std::min(220.0f, 0.26f * all.width())
                                                : std::min(360.0f, 0.45f * all.width());
  const float rail_x = settings_.left_hand ? all.max.x - rail_width : all.min.x;
  draw_places(ui, {{rail_x, all.min.y}, {rail_x + rail_width, all.max.y}}, true);
  const float left = settings_.left_hand ? all.min.x + side : all.min.x + rail_width;
  const float right = settings_.left_hand ? all.max.x - rail_width : all.max.x - side;
  const float header = ui.target() + 4;
  begin_part("header", {{left, all.min.y}, {right, all.min.y + header}}, margin / 2, Scroll::None);
  draw_header(ui, right - left - margin, v);
  end_part();
  begin_part(shown().part(), {{left, all.min.y + header}, {right, all.max.y}}, margin, Scroll::Finger);
  draw_middle(ui, v);
  end_scrolling_part(theme());
  const float x = settings_.left_hand ? all.min.x : right;
  if (side > 0) draw_beside(ui, {{x, all.min.y}, {x + side, all.max.y}}, v);
}

// Something to look at above, the keypad or the main action below it.
void Shell::draw_right_column(Ui& ui, const Area& at, const View& view) {
  const float bottom = shown().bottom_height(ui, view);
  if (shown().has_side(view)) {
    begin_part("working", {at.min, {at.max.x, at.max.y - bottom}}, margin, Scroll::Bar);
    shown().draw_side(ui, view);
    end_part();
  }
  draw_bottom(ui, {{at.min.x, at.max.y - bottom}, at.max}, margin, view);
}

void Shell::draw_wide(Ui& ui, const Layout& l) {
  const View v = view(l);
  const Area all{{l.insets.left, l.insets.top}, {l.size.x - l.insets.right, l.size.y - l.insets.bottom}};
  const Column wanted = shown().column(ui, v);
  const float right = wanted == Column::None     ? 0
                      : wanted == Column::Narrow ? std::clamp(0.18f * all.width(), 200.0f, 280.0f)
                                                 : std::clamp(0.28f * all.width(), 300.0f, 440.0f);
  const float header = ui.target() + 8;
  draw_places(ui, {{all.min.x, all.min.y}, {all.min.x + rail_width, all.max.y}}, true);
  float middle_x = all.min.x + rail_width + 8;
  if (shown().has_list()) {
    const float list = std::clamp(0.2f * all.width(), 220.0f, 300.0f);
    begin_part("list", {{middle_x, all.min.y + header}, {middle_x + list, all.max.y}}, margin / 2, Scroll::Bar);
    shown().draw_list(ui, v);
    end_part();
    middle_x += list;
  }
  const float middle_end = all.max.x - right;
  const float column = std::min(middle_end - middle_x, 860.0f);
  begin_part("header", {{middle_x, all.min.y}, {middle_x + column, all.min.y + header}}, margin, Scroll::None);
  draw_header(ui, column - 2 * margin, v);
  end_part();
  begin_part(shown().part(), {{middle_x, all.min.y + header}, {middle_x + column, all.max.y}}, margin, Scroll::Bar);
  draw_middle(ui, v);
  end_part();
  if (wanted != Column::None) draw_right_column(ui, {{middle_end, all.min.y}, all.max}, v);
}

bool Shell::wants_more_frames() const {
  const bool queued = ImGui::GetCurrentContext()->InputEventsQueue.Size > 0;
  const bool held = std::any_of(places_.begin(), places_.end(), [](const auto& p) { return p->holding(); });
  return frames_wanted_ > 0 || queued || held || shown().wants_more() || bike_log_.changed() || gesture_.wants_more();
}

std::optional<double> Shell::next_wake() const {
  std::optional<double> first;
  for (const auto& place : places_) {
    const std::optional<double> wake = place->next_wake(place.get() == &shown());
    if (wake) first = std::min(first.value_or(*wake), *wake);
  }
  return first;
}

std::string Shell::items_json() const {
  return items_as_json(items_);
}

}  // namespace camside::screens
