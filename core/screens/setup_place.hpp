// "Settings" in the bar: how the owner wants to see things, safety, and what this program is.
#pragma once

#include <functional>

#include "screens/place.hpp"
#include "screens/platform.hpp"
#include "work/settings.hpp"

namespace camside::screens {

class SetupPlace final : public Place {
 public:
  SetupPlace(Platform& platform, const work::Settings& settings, std::function<void(const work::Settings&)> change,
             std::function<void(Ui&)> draw_update)
      : platform_(platform), settings_(settings), change_(std::move(change)), draw_update_(std::move(draw_update)) {}

  PlaceId id() const override { return PlaceId::Setup; }
  std::string_view word() const override { return "setup"; }
  const char* name() const override;
  void draw_icon(ImDrawList* list, ImVec2 centre, float radius, ImU32 ink, float stroke) const override;
  void draw_middle(Ui& ui, const View& view) override;

 private:
  void draw_kept(Ui& ui);

  Platform& platform_;
  const work::Settings& settings_;
  std::function<void(const work::Settings&)> change_;
  std::function<void(Ui&)> draw_update_;
};

}  // namespace camside::screens
