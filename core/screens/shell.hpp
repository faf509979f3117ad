// The whole face of Camside: the bar of its places (place.hpp) and the layout for phone, phone on its side and desk. An
// app makes one Shell, calls draw() once between ImGui::NewFrame() and ImGui::Render(), and draws frames only while
// wants_more_frames() says so, an event came in, or next_wake() has passed.
//
// Units are CSS pixels: io.DisplaySize in them, io.DisplayFramebufferScale = the screen's density. Touch goes to Dear
// ImGui through the stock backend, marked ImGuiMouseSource_TouchScreen; what it means is judged by widgets/gesture.hpp.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "screens/bikes/bike_log.hpp"
#include "screens/place.hpp"
#include "screens/platform.hpp"
#include "screens/widgets/gesture.hpp"
#include "screens/widgets/item.hpp"
#include "screens/widgets/ui.hpp"
#include "storage/current_job.hpp"
#include "storage/keeper.hpp"
#include "storage/store.hpp"
#include "work/last_place.hpp"
#include "work/settings.hpp"

namespace camside::screens {

class Shell {
 public:
  // Without a log of the bikes, the place for them only says what is coming. The shell opens it.
  Shell(storage::Store& store, Platform& platform, const Fonts& fonts, storage::LogKeeper* log = nullptr);
  ~Shell();
  Shell(const Shell&) = delete;
  Shell& operator=(const Shell&) = delete;

  void draw();
  void wake() { frames_wanted_ = 3; }  // something came in: a tap, a key, a resize, the store's answer
  void finger(std::int64_t id, ImVec2 at, bool down) { gesture_.finger(id, at, down); }  // each on its own
  void check_timers();  // part of draw(); alone, for a window that nobody sees
  bool wants_more_frames() const;
  std::optional<double> next_wake() const;  // seconds from now; none: sleep until something happens

  const Items& items() const { return items_; }
  std::string items_json() const;  // for browser tests and the accessibility mirror
  storage::CurrentJob& job() { return job_; }
  const work::Settings& settings() const { return settings_; }
  void change(const work::Settings& settings);
  void open(std::string_view kind);  // a question's screen; empty: the Bench
  void go(PlaceId place);
  PlaceId place() const { return place_; }

 private:
  struct Layout {
    Shape shape = Shape::Portrait;
    Insets insets;
    ImVec2 size{};
  };

  void make_places();
  void load_settings();
  Place& shown() const;
  void go(const Way& way);
  void take_ways();
  work::Whereabouts whereabouts() const;
  void come_back();
  Layout layout() const;
  View view(const Layout& layout) const;
  const Theme& theme() const;
  void keys();
  void place_text_field();
  void draw_window(const Layout& layout);
  void draw_portrait(Ui& ui, const Layout& layout);
  void draw_sideways(Ui& ui, const Layout& layout);
  void draw_wide(Ui& ui, const Layout& layout);
  void draw_places(Ui& ui, const Area& area, bool column);
  void draw_header(Ui& ui, float width, const View& view);
  bool draw_back(Ui& ui, float height);
  void draw_middle(Ui& ui, const View& view);
  void draw_bottom(Ui& ui, const Area& at, float pad, View view);
  void draw_beside(Ui& ui, const Area& side, const View& view);
  void draw_right_column(Ui& ui, const Area& at, const View& view);
  void draw_update(Ui& ui);

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
  PlaceId place_ = PlaceId::Bench;
  BikeLog bike_log_;
  std::vector<std::unique_ptr<Place>> places_;  // in the order of PlaceId
  bool job_ready_ = false;
  int frames_wanted_ = 3;
};

}  // namespace camside::screens
