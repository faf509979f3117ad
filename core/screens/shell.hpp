// The whole face of Camside: four places, the Bench with its questions, the layout for phone, phone on its side and
// desk. An app makes one Shell, calls draw() once between ImGui::NewFrame() and ImGui::Render(), and draws frames only
// while wants_more_frames() says so, an event came in, or next_wake() has passed.
//
// Units are CSS pixels: io.DisplaySize in them, io.DisplayFramebufferScale = the screen's density. Touch goes to Dear
// ImGui through the stock backend, marked ImGuiMouseSource_TouchScreen; what it means is judged by parts/gesture.hpp.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "screens/bikes/bike_log.hpp"
#include "screens/bikes/bikes_screen.hpp"
#include "work/last_place.hpp"
#include "screens/bikes/log_to_bike.hpp"
#include "screens/look_over/look_over_screen.hpp"
#include "screens/widgets/gesture.hpp"
#include "screens/widgets/item.hpp"
#include "screens/widgets/ui.hpp"
#include "screens/platform.hpp"
#include "screens/bench/question_screen.hpp"
#include "work/settings.hpp"
#include "storage/current_job.hpp"
#include "storage/keeper.hpp"
#include "storage/store.hpp"

namespace camside::screens {

enum class Place : std::uint8_t { Bikes, Bench, LookOver, Setup };

class Shell {
 public:
  // Without a log of the bikes, the place for them only says what is coming. The shell opens it.
  Shell(storage::Store& store, Platform& platform, const Fonts& fonts, storage::LogKeeper* log = nullptr);

  void draw();
  void wake() { frames_wanted_ = 3; }  // something came in: a tap, a key, a resize, the store's answer
  void finger(std::int64_t id, ImVec2 at, bool down) { gesture_.finger(id, at, down); }  // each on its own
  void watch_clocks();  // part of draw(); alone, for a window that nobody sees
  bool wants_more_frames() const;
  std::optional<double> next_wake() const;  // seconds from now; none: sleep until something happens

  const Items& items() const { return items_; }
  std::string items_json() const;  // for browser tests and the accessibility mirror
  storage::CurrentJob& job() { return job_; }
  const work::Settings& settings() const { return settings_; }
  void change(const work::Settings& settings);
  void open(std::string_view kind);  // a question's screen; empty: the Bench
  void go(Place place);
  Place place() const { return place_; }

 private:
  struct Layout {
    bool wide = false;      // list, screen, Working side by side
    bool sideways = false;  // a phone held sideways: places at the left, keypad at the right
    Insets insets;
    ImVec2 size{};
  };

  void load_settings();
  work::Whereabouts whereabouts() const;
  void come_back();
  Layout layout() const;
  const Theme& theme() const;
  void draw_portrait(Ui& ui, const Layout& layout);
  void draw_sideways(Ui& ui, const Layout& layout);
  void draw_wide(Ui& ui, const Layout& layout);
  void draw_places(Ui& ui, const Area& area, bool column);
  void draw_header(Ui& ui, float width, bool back);
  void draw_middle(Ui& ui, QuestionScreen::Beside beside);
  void draw_bikes(Ui& ui);
  void draw_beside(Ui& ui, const Area& side);
  void draw_right_column(Ui& ui, const Area& at);
  const char* middle_name() const;
  void draw_bench(Ui& ui, bool as_list);
  void draw_coming(Ui& ui, const char* title, const char* text);
  void draw_setup(Ui& ui);
  void draw_save_state(Ui& ui);
  void draw_kept(Ui& ui);
  void draw_update(Ui& ui);
  QuestionScreen* current() const;
  BikesScreen* bikes();  // where they are shown
  const BikesScreen* bikes() const;
  LookOverScreen* look_over();  // where it is shown
  const LookOverScreen* look_over() const;
  void draw_look_over(Ui& ui, bool wide);
  bool wide() const { return layout().wide; }
  bool typing() const;
  float bottom_height(const Ui& ui);
  void draw_bottom(Ui& ui, float height);
  bool draw_back(Ui& ui, float height);
  void draw_log_it(Ui& ui, const records::Record& measured);
  void reopen(const records::Record& measured);
  void keys();
  void place_text_field();
  void draw_ran_out(Ui& ui);

  std::shared_ptr<bool> alive_ = std::make_shared<bool>(true);
  Platform& platform_;
  storage::CurrentJob job_;
  storage::Keeper settings_keeper_;
  storage::Store& store_;
  Fonts fonts_;
  work::Settings settings_;
  work::LastPlace last_place_;
  Gesture gesture_;
  Focus focus_;
  Items items_;
  Place place_ = Place::Bench;
  std::vector<std::unique_ptr<QuestionScreen>> questions_;
  BikeLog bike_log_;
  BikesScreen bikes_;
  LookOverScreen look_over_;
  LogToBike log_to_bike_;
  std::string open_;               // kind of the question shown
  const char* ran_out_ = nullptr;  // kind of the question a clock of which ran out while something else was shown
  bool job_ready_ = false;
  int frames_wanted_ = 3;
};

}  // namespace camside::screens
