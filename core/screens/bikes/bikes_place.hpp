// "Bikes" in the bar.
#pragma once

#include "screens/bikes/bikes_screen.hpp"
#include "screens/place.hpp"
#include "storage/current_job.hpp"

namespace camside::screens {

class BikesPlace final : public Place {
 public:
  // Without a log the place only says what is coming.
  BikesPlace(BikeLog& log, storage::CurrentJob& job, Platform& platform, storage::Store& store)
      : log_(log), job_(job), screen_(log, platform, store) {}

  PlaceId id() const override { return PlaceId::Bikes; }
  std::string_view word() const override { return "bikes"; }
  const char* name() const override;
  void draw_icon(ImDrawList* list, ImVec2 centre, float radius, ImU32 ink, float stroke) const override;
  void refresh(bool shown) override;

  std::string title(const View& view) override;
  bool deep(const View& view) const override;
  void back() override;
  const char* part() const override;
  void draw_middle(Ui& ui, const View& view) override;
  bool has_list() const override;
  void draw_list(Ui& ui, const View& view) override;
  Column column(const Ui& ui, const View& view) override;
  float bottom_height(const Ui& ui, const View& view) override;
  void draw_bottom(Ui& ui, const View& view) override;
  bool typing() const override { return log_.present() && screen_.keypad_open(); }
  bool holding() const override { return screen_.holding(); }
  bool wants_more() const override { return screen_.wants_more(); }
  bool keeps_awake() const override { return screen_.shows_code(); }  // held up to another phone's camera
  std::vector<std::string> where() const override;
  bool can_come_back(const std::vector<std::string>& where) const override;
  void come_back(const std::vector<std::string>& where) override;
  std::optional<Way> take_way() override { return std::exchange(way_, std::nullopt); }

  std::string said_of_summary() const { return screen_.said_of_summary(); }

 private:
  BikeLog& log_;
  storage::CurrentJob& job_;
  BikesScreen screen_;
  std::optional<Way> way_;
};

}  // namespace camside::screens
