// "Look-over" in the bar.
#pragma once

#include <functional>

#include "screens/look_over/look_over_screen.hpp"
#include "screens/place.hpp"

namespace camside::screens {

class LookOverPlace final : public Place {
 public:
  // `said_of_summary`: what came of the last summary that left.
  LookOverPlace(storage::CurrentJob& job, Platform& platform, BikeLog& log,
                std::function<std::string()> said_of_summary)
      : job_(job), platform_(platform), said_of_summary_(std::move(said_of_summary)), screen_(job, platform, log) {}

  PlaceId id() const override { return PlaceId::LookOver; }
  std::string_view word() const override { return "look-over"; }
  const char* name() const override;
  void draw_icon(ImDrawList* list, ImVec2 centre, float radius, ImU32 ink, float stroke) const override;
  void forget() override { screen_.forget(); }

  std::string title(const View& view) override;
  bool deep(const View& view) const override;
  void back() override;
  void home() override { screen_.home(); }
  const char* part() const override;
  void draw_middle(Ui& ui, const View& view) override;
  bool has_list() const override;
  void draw_list(Ui& ui, const View& view) override;
  Column column(const Ui& ui, const View& view) override;
  bool has_side(const View& view) const override;
  void draw_side(Ui& ui, const View& view) override;
  float bottom_height(const Ui& ui, const View& view) override;
  void draw_bottom(Ui& ui, const View& view) override;
  bool typing() const override { return here() && screen_.keypad_open(); }
  bool holding() const override { return screen_.holding(); }
  std::vector<std::string> where() const override { return screen_.where(); }
  void come_back(const std::vector<std::string>& where) override { screen_.come_back(where); }
  std::optional<Way> take_way() override { return std::exchange(way_, std::nullopt); }

 private:
  // Its code is in the page's second part, and its records in the job.
  bool here() const { return platform_.all_here() && job_.ready(); }

  storage::CurrentJob& job_;
  Platform& platform_;
  std::function<std::string()> said_of_summary_;
  LookOverScreen screen_;
  std::optional<Way> way_;
};

}  // namespace camside::screens
