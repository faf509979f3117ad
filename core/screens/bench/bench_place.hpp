// "Bench" in the bar: a tile for each question, and the screen of the one that is open.
#pragma once

#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "calc/question.hpp"
#include "screens/bench/question_screen.hpp"
#include "screens/bikes/bike_log.hpp"
#include "screens/bikes/log_to_bike.hpp"
#include "screens/place.hpp"
#include "work/settings.hpp"

namespace camside::screens {

class BenchPlace final : public Place {
 public:
  BenchPlace(storage::CurrentJob& job, Platform& platform, BikeLog& log, const work::Settings& settings,
             std::function<void(Ui&)> draw_update);

  PlaceId id() const override { return PlaceId::Bench; }
  std::string_view word() const override { return "bench"; }
  const char* name() const override;
  void draw_icon(ImDrawList* list, ImVec2 centre, float radius, ImU32 ink, float stroke) const override;
  void refresh(bool shown) override;
  void forget() override;

  std::string title(const View& view) override;
  std::optional<Verdict> verdict() const override;
  bool deep(const View& view) const override;
  void back() override;
  void home() override { open_.clear(); }
  const char* part() const override;
  void draw_middle(Ui& ui, const View& view) override;
  void draw_notice(Ui& ui) override;
  bool has_list() const override { return current() != nullptr; }
  void draw_list(Ui& ui, const View& view) override;
  Column column(const Ui& ui, const View& view) override;
  bool has_side(const View& view) const override;
  void draw_side(Ui& ui, const View& view) override;
  float bottom_height(const Ui& ui, const View& view) override;
  void draw_bottom(Ui& ui, const View& view) override;
  bool typing() const override;
  bool holding() const override;
  std::optional<double> next_wake(bool shown) const override;
  bool keeps_awake() const override { return settings_.keep_awake; }
  std::vector<std::string> where() const override;
  void come_back(const std::vector<std::string>& where) override;  // question, id of the measurement
  std::optional<Way> take_way() override { return std::exchange(way_, std::nullopt); }

  void open(std::string_view question) { open_ = question; }  // empty: the tiles

 private:
  QuestionScreen* current() const;
  void draw_tiles(Ui& ui, bool as_list);
  bool draw_tile(Ui& ui, const Question& question, ImVec2 size, bool as_list);
  void draw_log_it(Ui& ui, const records::Record& measured);

  storage::CurrentJob& job_;
  Platform& platform_;
  BikeLog& log_;
  const work::Settings& settings_;
  std::function<void(Ui&)> draw_update_;
  std::vector<std::unique_ptr<QuestionScreen>> questions_;
  LogToBike log_to_bike_;
  std::string open_;               // the question shown
  const char* ran_out_ = nullptr;  // the question a clock of which ran out while something else was shown
  std::optional<Way> way_;
};

}  // namespace camside::screens
