#include "screens/shell.hpp"

#include <imgui_internal.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "records/new_id.hpp"
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

// Line icons of our own, in a square of side 2r about c.
void draw_place_icon(ImDrawList* list, ImVec2 c, float r, Place place, ImU32 ink, float w) {
  if (place == Place::Bikes) {
    list->AddCircle({c.x - 0.55f * r, c.y + 0.3f * r}, 0.45f * r, ink, 0, w);
    list->AddCircle({c.x + 0.55f * r, c.y + 0.3f * r}, 0.45f * r, ink, 0, w);
    const ImVec2 frame[4] = {{c.x - 0.55f * r, c.y + 0.3f * r},
                             {c.x - 0.1f * r, c.y - 0.4f * r},
                             {c.x + 0.35f * r, c.y - 0.4f * r},
                             {c.x + 0.55f * r, c.y + 0.3f * r}};
    list->AddPolyline(frame, 4, ink, 0, w);
  } else if (place == Place::Bench) {
    list->AddCircle({c.x, c.y - 0.15f * r}, 0.7f * r, ink, 0, w);
    list->AddLine({c.x, c.y - 0.15f * r}, {c.x + 0.38f * r, c.y - 0.5f * r}, ink, w);
    list->AddLine({c.x, c.y + 0.55f * r}, {c.x, c.y + r}, ink, w);
  } else if (place == Place::LookOver) {
    list->AddCircle({c.x - 0.2f * r, c.y - 0.2f * r}, 0.6f * r, ink, 0, w);
    list->AddLine({c.x + 0.25f * r, c.y + 0.25f * r}, {c.x + 0.85f * r, c.y + 0.85f * r}, ink, w);
  } else {
    for (int i = -1; i <= 1; ++i) {
      const float y = c.y + 0.55f * r * static_cast<float>(i);
      const float knob = c.x + 0.4f * r * static_cast<float>(i == 0 ? 1 : -1);
      list->AddLine({c.x - 0.8f * r, y}, {c.x + 0.8f * r, y}, ink, w);
      list->AddCircleFilled({knob, y}, 0.2f * r, ink);
    }
  }
}

const char* name_of(Place place) {
  switch (place) {
    case Place::Bikes:
      return words::bikes();
    case Place::Bench:
      return words::bench();
    case Place::LookOver:
      return words::look_over();
    case Place::Setup:
      break;
  }
  return words::setup();
}

// In the order of Place.
constexpr std::array<std::string_view, 4> place_names{"bikes", "bench", "look-over", "setup"};

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
      bike_log_(log, platform),
      bikes_(bike_log_, platform, store),
      look_over_(job_, platform, bike_log_) {
  for (QuestionLook look : {runout_look(), backlash_look(), gear_pick_look(), pushrod_look(), inspection_due_look(),
                            wear_look(), gear_pair_look(), life_look()})
    questions_.push_back(std::make_unique<QuestionScreen>(std::move(look)));
  load_settings();
  const auto wake_up = [this, alive = std::weak_ptr<bool>(alive_)] {
    if (alive.lock()) frames_wanted_ = 3;
  };
  job_.open(wake_up);
  bike_log_.open(wake_up);
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

work::Whereabouts Shell::whereabouts() const {
  work::Whereabouts all{std::string(place_names[static_cast<std::size_t>(place_)])};
  if (place_ == Place::Bench && !open_.empty()) all.push_back(open_);
  if (place_ == Place::Bikes && !bikes_.shown().empty()) all.push_back(bikes_.shown());
  if (place_ == Place::LookOver)
    for (std::string& part : look_over_.where()) all.push_back(std::move(part));
  return all;
}

// To where one was when the program ended, unless something was tapped meanwhile.
void Shell::come_back() {
  const work::Whereabouts* const found = last_place_.found();
  if (!found || !job_ready_) return;
  const std::string& place = found->front();
  const bool fresh = place_ == Place::Bench && open_.empty();
  const bool in_log = place == place_names[static_cast<std::size_t>(Place::Bikes)] && found->size() > 1;
  if (fresh && in_log && bike_log_.present() && !bike_log_.ready()) return;
  const work::Whereabouts there = *found;
  last_place_.leave();
  const auto it = std::find(place_names.begin(), place_names.end(), there.front());
  if (!fresh || it == place_names.end()) return;
  go(static_cast<Place>(it - place_names.begin()));
  if (place_ == Place::Bench && there.size() > 1) open_ = there[1];
  if (place_ == Place::Bikes && there.size() > 1 && bike_log_.bike(there[1])) bikes_.show(there[1]);
  if (place_ == Place::LookOver) look_over_.come_back({there.begin() + 1, there.end()});
}

void Shell::open(std::string_view kind) {
  open_ = kind;
  place_ = Place::Bench;
  frames_wanted_ = 3;
}

void Shell::go(Place place) {
  if (place == Place::Bench && place_ == Place::Bench) open_.clear();
  if (place == Place::LookOver && place_ == Place::LookOver) look_over_.home();
  place_ = place;
  frames_wanted_ = 3;
}

QuestionScreen* Shell::current() const {
  if (place_ != Place::Bench) return nullptr;
  for (const auto& q : questions_)
    if (q->kind() == open_) return q.get();
  return nullptr;
}

const Theme& Shell::theme() const {
  const bool light =
      settings_.theme == work::ThemeChoice::Sun || (settings_.theme == work::ThemeChoice::System && platform_.light_wanted());
  return light ? sun_theme() : shop_theme();
}

Shell::Layout Shell::layout() const {
  Layout l;
  l.insets = platform_.insets();
  l.size = ImGui::GetIO().DisplaySize;
  l.wide = l.size.x >= 900 && l.size.y >= 560;
  l.sideways = !l.wide && l.size.x >= 560 && l.size.x > l.size.y;
  return l;
}

BikesScreen* Shell::bikes() {
  return place_ == Place::Bikes && bike_log_.present() ? &bikes_ : nullptr;
}

const BikesScreen* Shell::bikes() const {
  return place_ == Place::Bikes && bike_log_.present() ? &bikes_ : nullptr;
}

LookOverScreen* Shell::look_over() {
  return place_ == Place::LookOver && platform_.all_here() && job_.ready() ? &look_over_ : nullptr;
}

const LookOverScreen* Shell::look_over() const {
  return place_ == Place::LookOver && platform_.all_here() && job_.ready() ? &look_over_ : nullptr;
}

bool Shell::typing() const {
  if (const LookOverScreen* shown = look_over()) return shown->keypad_open();
  if (const BikesScreen* shown = bikes()) return shown->keypad_open();
  const QuestionScreen* const question = current();
  return question && question->keypad_open();
}

void Shell::keys() {
  if (typing() || !ImGui::IsKeyPressed(ImGuiKey_Escape, false)) return;
  open_.clear();
  if (BikesScreen* shown = bikes()) shown->back();
  if (LookOverScreen* shown = look_over()) shown->back();
}

// A measurement out of a bike's log, on the Bench. What lies there is kept: one that was changed since stays beside it.
void Shell::reopen(const records::Record& measured) {
  if (!job_.ready()) return;
  auto& all = job_.job().records;
  auto there = std::find_if(all.begin(), all.end(), [&](const records::Record& r) {
    return r.kind() == measured.kind() && r.entered() == measured.entered();
  });
  if (there == all.end()) {
    records::Record copy = measured;
    if (job_.job().find(copy.id())) copy.json["id"] = records::new_id();
    there = all.insert(all.end(), std::move(copy));
    job_.commit();
  }
  const std::string id = there->id();
  open(measured.kind());
  if (QuestionScreen* question = current()) question->choose(id);
}

float Shell::bottom_height(const Ui& ui) {
  if (LookOverScreen* shown = look_over()) return shown->bottom_height(ui, wide());
  if (const BikesScreen* shown = bikes()) return shown->bottom_height(ui);
  const QuestionScreen* const question = current();
  return question && job_.ready() ? question->bottom_height(ui) : 0;
}

void Shell::draw_bottom(Ui& ui, float height) {
  if (LookOverScreen* shown = look_over()) return shown->draw_bottom(ui, settings_.system, height);
  if (BikesScreen* shown = bikes()) return shown->draw_bottom(ui, settings_.system, height);
  // None: another place was tapped in this frame.
  if (QuestionScreen* question = current()) question->draw_bottom(ui, job_, platform_, settings_.system, height);
}

// A clock goes on while something else is on screen, or nothing.
void Shell::watch_clocks() {
  const double now_s = platform_.seconds();
  for (const auto& q : questions_) {
    if (!q->ran_out(now_s)) continue;
    platform_.ring();
    if (q.get() != current()) ran_out_ = words::tile_of(q->kind())->kind.data();
  }
  if (const QuestionScreen* question = current(); question && ran_out_ && question->kind() == ran_out_)
    ran_out_ = nullptr;
}

void Shell::draw_ran_out(Ui& ui) {
  if (ran_out_ && ui.row("ran out", words::wait_is_over(), words::show_it())) open(ran_out_);
}

void Shell::draw() {
  store_.poll();
  bike_log_.refresh();
  watch_clocks();
  if (bikes_.file_came()) go(Place::Bikes);
  if (job_.ready() && !job_ready_) {
    job_ready_ = true;
    for (const auto& q : questions_) q->forget();
    look_over_.forget();
  }
  come_back();
  frames_wanted_ = std::max(0, frames_wanted_ - 1);
  apply_to_imgui(theme());
  gesture_.begin_frame();
  focus_.begin_frame(items_, typing());
  focus_.type_in(platform_.text_field_open());
  items_.clear();
  keys();
  const Layout l = layout();
  ImGui::SetNextWindowPos({0, 0});
  ImGui::SetNextWindowSize(l.size);
  ImGui::Begin("camside", nullptr,
               ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoSavedSettings |
                   ImGuiWindowFlags_NoBringToFrontOnFocus | ImGuiWindowFlags_NoScrollWithMouse);
  Ui ui(theme(), fonts_, settings_.text_scale, items_, focus_, gesture_);
  if (l.wide)
    draw_wide(ui, l);
  else if (l.sideways)
    draw_sideways(ui, l);
  else
    draw_portrait(ui, l);
  ImGui::End();
  last_place_.put(whereabouts());
  place_text_field();
  const bool held_up = place_ == Place::Bikes && bikes_.shows_code();  // to another phone's camera
  platform_.keep_awake(held_up || (place_ == Place::Bench && settings_.keep_awake));
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
  const Place all[] = {Place::Bikes, Place::Bench, Place::LookOver, Place::Setup};
  begin_part("places", area, 0, column ? Scroll::Finger : Scroll::None);
  const float each = column ? area.width() : area.width() / 4;
  const float high = column ? std::max(60.0f, std::min(84.0f, area.height() / 4 - 8)) : area.height();
  for (const Place place : all) {
    if (!column && place != Place::Bikes) ImGui::SameLine(0, 0);
    const bool on = place == place_;
    if (ui.area(name_of(place), Role::Place, name_of(place), {each, high}, [&](const Area& at, bool pressed) {
          ImDrawList* const list = ImGui::GetWindowDrawList();
          const ImU32 ink = on ? ui.theme().accent : ui.theme().quiet;
          if (pressed) list->AddRectFilled(at.min, at.max, ui.theme().pressed, 10);
          const float r = 13;
          draw_place_icon(list, {at.centre().x, at.min.y + 0.36f * at.height()}, r, place, ink, ui.theme().stroke);
          ui.fit({{at.min.x + 2, at.min.y + 0.6f * at.height()}, {at.max.x - 2, at.max.y - 2}}, name_of(place), ink,
                 std::min(ui.px(14), 18.0f), on ? ui.fonts().bold : ui.fonts().words);
        }))
      go(place);
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
  if (!taken) return false;
  if (QuestionScreen* question = current()) question->keypad().close();
  if (BikesScreen* shown = bikes()) shown->back();
  if (LookOverScreen* shown = look_over()) shown->back();
  open_.clear();
  return true;
}

void Shell::draw_header(Ui& ui, float width, bool back) {
  QuestionScreen* const question = current();
  const BikesScreen* const shown = bikes();
  LookOverScreen* const looked = look_over();
  const float height = ui.target();
  const bool way_back = (back && question) || (shown && shown->deep()) || (looked && looked->deep());
  if (way_back) {
    if (draw_back(ui, height)) return;
    ImGui::SameLine(0, 8);
  }
  const words::Tile* const tile = question ? words::tile_of(question->kind()) : nullptr;
  const std::string title = tile ? tile->name : shown ? shown->title() : looked ? looked->title() : name_of(place_);
  const float indent = back && !way_back ? margin / 2 : 0;
  const ImVec2 at{ImGui::GetCursorScreenPos().x + indent, ImGui::GetCursorScreenPos().y};
  const float left = at.x;
  const bool verdict = question && question->solved().solved && question->solved().outcome.judgement;
  const float room = width - (way_back ? 64.0f : 0.0f) - (verdict ? 44.0f : 0.0f);
  ui.publish(Role::Heading, title, at, {at.x + room, at.y + height});
  ui.fit({at, {left + room, at.y + height}}, title, ui.theme().text, ui.px(22), ui.fonts().bold, {0, 0.5f});
  if (verdict) {
    const Verdict v = question->solved().outcome.judgement->verdict;
    draw_verdict_mark(ui.pen(ui.theme().ground), {left + room + 22, at.y + height / 2}, 12, v,
                      colour_of(ui.theme(), v));
  }
  ImGui::Dummy({room, height});
}

void Shell::draw_save_state(Ui& ui) {
  if (job_.state() == storage::SaveState::Failed) {
    ui.begin_card();
    ui.coloured(words::not_saved(), ui.theme().outside, ui.px(18), ui.fonts().bold);
    if (job_.reason()) {
      ui.text(job_.reason()->text);
      ui.quiet(job_.reason()->remedy);
    }
    if (ui.button("retry save", words::try_again())) job_.retry();
    ui.end_card();
  }
  draw_remarks(ui, job_.findings());
}

void Shell::draw_bench(Ui& ui, bool as_list) {
  if (!as_list) {
    draw_save_state(ui);
    draw_update(ui);
  }
  const float gap = 12;
  const float w = ui.width();
  const int columns = as_list ? 1 : w > 620 ? 3 : w >= 300 && settings_.text_scale < 1.4f ? 2 : 1;
  const float each = (w - gap * static_cast<float>(columns - 1)) / static_cast<float>(columns);
  const float high = as_list ? ui.target() + 12 : columns == 1 ? ui.px(104) : ui.px(128);
  int i = 0;
  for (const words::Tile& tile : words::tiles()) {
    const bool here = platform_.all_here() || !tile.later;
    const bool ready = here && !tile.kind.empty() && records::find_kind(tile.kind);
    const bool on = as_list && tile.kind == open_ && !open_.empty();
    if (i++ % columns != 0) ImGui::SameLine(0, gap);
    if (ui.area(
            tile.name, Role::Button, tile.name, {each, high},
            [&](const Area& at, bool pressed) {
              ImDrawList* const list = ImGui::GetWindowDrawList();
              list->AddRectFilled(at.min, at.max, on || pressed ? ui.theme().pressed : ui.theme().card, 14);
              if (on) list->AddRectFilled(at.min, {at.min.x + 5, at.max.y}, ui.theme().accent, 2);
              const ImU32 ink = ready ? ui.theme().text : ui.theme().quiet;
              const Area inner = at.inset(14);
              if (as_list) return ui.fit(inner, tile.name, ink, ui.px(18), ui.fonts().bold, {0, 0.5f});
              ui.fit({inner.min, {inner.max.x, inner.min.y + 0.48f * inner.height()}}, tile.name, ink, ui.px(20),
                     ui.fonts().bold, {0, 0});
              ui.fit({{inner.min.x, inner.min.y + 0.48f * inner.height()}, inner.max}, tile.question, ui.theme().quiet,
                     ui.px(16), ui.fonts().words, {0, 1});
            },
            ready))
      open(tile.kind);
    if (columns > 1 && i % columns == 0) ui.gap(gap);
  }
  if (!platform_.all_here()) ui.quiet(words::rest_is_coming());
}

void Shell::draw_coming(Ui& ui, const char* title, const char* text) {
  ui.title(title);
  ui.text(text);
}

void Shell::draw_kept(Ui& ui) {
  const Kept kept = platform_.kept();
  if (!kept.version.empty()) ui.quiet(words::version(kept.version));
  if (kept.kept) ui.quiet(words::kept_on_device());
  draw_update(ui);
}

// Offered, never forced, and not before all is saved.
void Shell::draw_update(Ui& ui) {
  if (!platform_.kept().update_ready) return;
  const bool safe = job_.all_safe() && (!bike_log_.present() || bike_log_.keeper().all_safe());
  if (ui.row("update", words::update_ready(), words::load_it(), safe)) platform_.take_update();
}

void Shell::draw_setup(Ui& ui) {
  work::Settings s = settings_;
  const std::string systems[] = {"Inch", "Metric"};
  const std::string themes[] = {"System", "Shop (dark)", "Sun (light)"};
  const std::string sizes[] = {"Small", "Normal", "Large", "Huge", "Largest"};
  const float scales[] = {0.9f, 1.0f, 1.3f, 1.6f, 2.0f};
  const std::string hands[] = {"Right hand", "Left hand"};
  if (const int i = ui.segmented("units", words::units(), systems, s.system == System::Metric ? 1 : 0); i >= 0)
    s.system = i == 1 ? System::Metric : System::Inch;
  if (const int i = ui.segmented("theme", words::theme(), themes, static_cast<int>(s.theme)); i >= 0)
    s.theme = static_cast<work::ThemeChoice>(i);
  int size = 1;
  for (int i = 0; i < 5; ++i)
    if (s.text_scale >= scales[i] - 0.01f) size = i;
  if (const int i = ui.segmented("size", words::text_size(), sizes, size); i >= 0) s.text_scale = scales[i];
  if (const int i = ui.segmented("hand", words::hand(), hands, s.left_hand ? 1 : 0); i >= 0) s.left_hand = i == 1;
  const std::string screens[] = {"Stays awake", "May sleep"};
  if (const int i = ui.segmented("awake", words::screen_on_bench(), screens, s.keep_awake ? 0 : 1); i >= 0)
    s.keep_awake = i == 0;
  ui.gap(12);
  ui.heading("Safety");
  ui.text(words::safety());
  ui.gap(12);
  ui.heading("Camside");
  ui.quiet(words::about());
  draw_kept(ui);
  change(s);
}

void Shell::draw_bikes(Ui& ui) {
  bikes_.draw_middle(ui, settings_.system);
  if (const auto measured = bikes_.take_reopened()) reopen(*measured);
}

void Shell::draw_look_over(Ui& ui, bool wide) {
  draw_save_state(ui);
  look_over_.draw_middle(ui, settings_.system, wide, bikes_.said_of_summary());
  const auto bike = look_over_.take_bike();
  if (!bike) return;
  go(Place::Bikes);
  bikes_.show(*bike);
}

void Shell::draw_log_it(Ui& ui, const records::Record& measured) {
  ui.gap(8);
  if (bike_log_.keeper().state() == storage::SaveState::Failed) draw_log_state(ui, bike_log_);
  if (log_to_bike_.draw(ui, bike_log_, measured)) go(Place::Bikes);
}

void Shell::draw_middle(Ui& ui, QuestionScreen::Beside beside) {
  draw_ran_out(ui);
  switch (place_) {
    case Place::Bikes:
      if (bikes()) return draw_bikes(ui);
      return draw_coming(ui, words::bikes(), words::bikes_coming());
    case Place::LookOver:
      if (look_over()) return draw_look_over(ui, beside.working);
      if (!platform_.all_here()) ui.quiet(words::rest_is_coming());
      return;
    case Place::Setup:
      return draw_setup(ui);
    case Place::Bench:
      break;
  }
  if (!job_.job().bike().empty()) ui.quiet(words::bike_is(job_.job().bike()));
  if (QuestionScreen* question = current()) {
    draw_save_state(ui);
    if (bike_log_.ready()) beside.below_drawing = [&](const records::Record& measured) { draw_log_it(ui, measured); };
    question->draw_middle(ui, job_, platform_, settings_.system, beside);
  } else {
    draw_bench(ui, false);
  }
}

const char* Shell::middle_name() const {
  if (const BikesScreen* shown = bikes()) return shown->part();
  if (const LookOverScreen* shown = look_over()) return shown->part();
  const QuestionScreen* const question = current();
  return question ? question->kind().data() : name_of(place_);
}

void Shell::draw_portrait(Ui& ui, const Layout& l) {
  const Area all{{l.insets.left, l.insets.top}, {l.size.x - l.insets.right, l.size.y - l.insets.bottom}};
  const float header = ui.target() + 8;
  const float places = typing() ? 0 : places_height;
  const float bottom = std::min(bottom_height(ui), 0.72f * all.height());
  begin_part("header", {all.min, {all.max.x, all.min.y + header}}, margin / 2, Scroll::None);
  draw_header(ui, all.width() - margin, true);
  end_part();
  const float middle_end = all.max.y - places - bottom;
  begin_part(middle_name(), {{all.min.x, all.min.y + header}, {all.max.x, middle_end}}, margin, Scroll::Finger);
  draw_middle(ui, {});
  end_scrolling_part(theme());
  if (bottom > 0) {
    begin_part("bottom", {{all.min.x, middle_end}, {all.max.x, all.max.y - places}}, margin / 2, Scroll::None);
    draw_bottom(ui, bottom);
    end_part();
  }
  if (places > 0) draw_places(ui, {{all.min.x, all.max.y - places}, all.max}, false);
}

// Beside the middle: the keypad while typing, else the drawing with the main action below, at the thumb.
void Shell::draw_beside(Ui& ui, const Area& side) {
  if (typing()) {
    begin_part("bottom", side, margin / 2, Scroll::None);
    draw_bottom(ui, side.height() - 8);
    return end_part();
  }
  const float action = bottom_height(ui);
  const Area upper{side.min, {side.max.x, side.max.y - action}};
  if (QuestionScreen* question = current()) {
    begin_part("side", upper, margin / 2, Scroll::Finger);
    question->draw_side(ui, job_, platform_, settings_.system, upper.height() - 16);
    end_scrolling_part(theme());
  }
  if (LookOverScreen* looked = look_over(); looked && looked->in_round()) {
    begin_part("side", upper, margin / 2, Scroll::Finger);
    looked->draw_side(ui);
    end_scrolling_part(theme());
  }
  if (action <= 0) return;
  begin_part("bottom", {{side.min.x, side.max.y - action}, side.max}, margin / 2, Scroll::None);
  draw_bottom(ui, action);
  end_part();
}

void Shell::draw_sideways(Ui& ui, const Layout& l) {
  QuestionScreen* const question = current();
  const Area all{{l.insets.left, l.insets.top}, {l.size.x - l.insets.right, l.size.y - l.insets.bottom}};
  const bool beside = question && job_.ready() && !job_.job().records.empty();
  const bool acts = beside || ((bikes() || look_over()) && bottom_height(ui) > 0);
  // Where the side holds a button only, until something is typed, the words have the width.
  const bool narrow = !typing() && (bikes() || (look_over() && !look_over()->in_round()));
  const float side = !acts ? 0 : narrow ? std::min(220.0f, 0.26f * all.width()) : std::min(360.0f, 0.45f * all.width());
  const float rail_x = settings_.left_hand ? all.max.x - rail_width : all.min.x;
  draw_places(ui, {{rail_x, all.min.y}, {rail_x + rail_width, all.max.y}}, true);
  const float left = settings_.left_hand ? all.min.x + side : all.min.x + rail_width;
  const float right = settings_.left_hand ? all.max.x - rail_width : all.max.x - side;
  const float header = ui.target() + 4;
  begin_part("header", {{left, all.min.y}, {right, all.min.y + header}}, margin / 2, Scroll::None);
  draw_header(ui, right - left - margin, true);
  end_part();
  begin_part(middle_name(), {{left, all.min.y + header}, {right, all.max.y}}, margin, Scroll::Finger);
  draw_middle(ui, {.working = false, .drawing = beside});
  end_scrolling_part(theme());
  const float x = settings_.left_hand ? all.min.x : right;
  if (side > 0) draw_beside(ui, {{x, all.min.y}, {x + side, all.max.y}});
}

// Working above, the keypad or the main action below it. A complete entry has no main action: the Working is there.
void Shell::draw_right_column(Ui& ui, const Area& at) {
  const QuestionScreen* const question = current();
  LookOverScreen* const looked = look_over();
  const bool acts = !question || question->keypad_open() || !question->complete();
  const float bottom = acts ? bottom_height(ui) : 0;
  if (question) {
    begin_part("working", {at.min, {at.max.x, at.max.y - bottom}}, margin, Scroll::Bar);
    if (question->solved().solved) draw_working(ui, question->solved().outcome);
    end_part();
  }
  if (looked && looked->has_side()) {
    begin_part("working", {at.min, {at.max.x, at.max.y - bottom}}, margin, Scroll::Bar);
    looked->draw_side(ui);
    end_part();
  }
  if (bottom <= 0) return;
  begin_part("bottom", {{at.min.x, at.max.y - bottom}, at.max}, margin, Scroll::None);
  draw_bottom(ui, bottom);
  end_part();
}

void Shell::draw_wide(Ui& ui, const Layout& l) {
  const Area all{{l.insets.left, l.insets.top}, {l.size.x - l.insets.right, l.size.y - l.insets.bottom}};
  QuestionScreen* const question = current();
  const float list = std::clamp(0.2f * all.width(), 220.0f, 300.0f);
  LookOverScreen* const looked = look_over();
  const bool beside = question || bikes() || looked;
  // Where there is no Working a button stands there, or the keypad.
  const bool narrow = !typing() && (bikes() || (looked && !looked->has_side()));
  const float right = !beside  ? 0
                      : narrow ? std::clamp(0.18f * all.width(), 200.0f, 280.0f)
                               : std::clamp(0.28f * all.width(), 300.0f, 440.0f);
  const float header = ui.target() + 8;
  draw_places(ui, {{all.min.x, all.min.y}, {all.min.x + rail_width, all.max.y}}, true);
  float middle_x = all.min.x + rail_width + 8;
  if (question || (bikes() && bikes()->deep() && !bike_log_.rows().empty())) {
    const Area at{{middle_x, all.min.y + header}, {middle_x + list, all.max.y}};
    begin_part("list", at, margin / 2, Scroll::Bar);
    question ? draw_bench(ui, true) : bikes_.draw_list(ui, true);
    end_part();
    middle_x += list;
  } else if (looked && looked->has_list()) {
    const Area at{{middle_x, all.min.y + header}, {middle_x + list, all.max.y}};
    begin_part("list", at, margin / 2, Scroll::Bar);
    looked->draw_list(ui, settings_.system);
    end_part();
    middle_x += list;
  }
  const float middle_end = all.max.x - right;
  const float column = std::min(middle_end - middle_x, 860.0f);
  begin_part("header", {{middle_x, all.min.y}, {middle_x + column, all.min.y + header}}, margin, Scroll::None);
  draw_header(ui, column - 2 * margin, false);
  end_part();
  begin_part(middle_name(), {{middle_x, all.min.y + header}, {middle_x + column, all.max.y}}, margin, Scroll::Bar);
  draw_middle(ui, {.working = true, .drawing = false});
  end_part();
  if (beside) draw_right_column(ui, {{middle_end, all.min.y}, all.max});
}

bool Shell::wants_more_frames() const {
  const bool queued = ImGui::GetCurrentContext()->InputEventsQueue.Size > 0;
  bool holding = bikes_.holding() || look_over_.holding() || (place_ == Place::Bikes && bikes_.wants_more());
  for (const auto& q : questions_) holding = holding || q->keypad().holding();
  return frames_wanted_ > 0 || queued || holding || bike_log_.changed() || gesture_.wants_more();
}

std::optional<double> Shell::next_wake() const {
  const QuestionScreen* const question = current();
  std::optional<double> wake = question ? question->next_wake_s() : std::nullopt;
  for (const auto& q : questions_) {
    const auto alarm = q->next_alarm_s();
    if (!alarm) continue;
    const double rest = std::max(0.001, *alarm - platform_.seconds());
    wake = std::min(wake.value_or(rest), rest);
  }
  return wake;
}

std::string Shell::items_json() const {
  records::Json all = records::Json::array();
  for (const Item& item : items_) {
    all.push_back({{"role", word_of(item.role)},
                   {"label", item.label},
                   {"value", item.value},
                   {"chosen", item.chosen},
                   {"enabled", item.enabled},
                   {"press", item.pressable()},
                   {"visible", item.visible()},
                   {"rect", {item.min.x, item.min.y, item.max.x - item.min.x, item.max.y - item.min.y}}});
    if (item.field.empty()) continue;
    const ImVec2 size{item.box_max.x - item.box_min.x, item.box_max.y - item.box_min.y};
    all.back()["box"] = {item.box_min.x, item.box_min.y, size.x, size.y};
  }
  return all.dump(-1, ' ', false, records::Json::error_handler_t::replace);
}

}  // namespace camside::screens
