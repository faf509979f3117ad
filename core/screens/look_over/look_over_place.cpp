#include "screens/look_over/look_over_place.hpp"

#include "screens/job_state.hpp"
#include "screens/words.hpp"

namespace camside::screens {

const char* LookOverPlace::name() const {
  return words::look_over();
}

void LookOverPlace::draw_icon(ImDrawList* list, ImVec2 c, float r, ImU32 ink, float w) const {
  list->AddCircle({c.x - 0.2f * r, c.y - 0.2f * r}, 0.6f * r, ink, 0, w);
  list->AddLine({c.x + 0.25f * r, c.y + 0.25f * r}, {c.x + 0.85f * r, c.y + 0.85f * r}, ink, w);
}

std::string LookOverPlace::title(const View&) {
  return here() ? screen_.title() : words::look_over();
}

bool LookOverPlace::deep(const View&) const {
  return here() && screen_.deep();
}

void LookOverPlace::back() {
  if (here()) screen_.back();
}

const char* LookOverPlace::part() const {
  return here() ? screen_.part() : name();
}

void LookOverPlace::draw_middle(Ui& ui, const View& view) {
  if (!platform_.all_here()) ui.quiet(words::rest_is_coming());
  if (!here()) return;
  draw_job_state(ui, job_);
  screen_.draw_middle(ui, view.system, view.shape == Shape::Wide, said_of_summary_());
  if (const auto bike = screen_.take_bike()) way_ = Way{PlaceId::Bikes, {*bike}};
}

bool LookOverPlace::has_list() const {
  return here() && screen_.has_list();
}

void LookOverPlace::draw_list(Ui& ui, const View& view) {
  screen_.draw_list(ui, view.system);
}

Column LookOverPlace::column(const Ui& ui, const View& view) {
  if (!here() || (view.shape == Shape::Sideways && bottom_height(ui, view) <= 0)) return Column::None;
  return typing() || has_side(view) ? Column::Full : Column::Narrow;
}

bool LookOverPlace::has_side(const View& view) const {
  return here() && (view.shape == Shape::Wide ? screen_.has_side() : screen_.in_round());
}

void LookOverPlace::draw_side(Ui& ui, const View&) {
  screen_.draw_side(ui);
}

float LookOverPlace::bottom_height(const Ui& ui, const View& view) {
  return here() ? screen_.bottom_height(ui, view.shape == Shape::Wide) : 0;
}

void LookOverPlace::draw_bottom(Ui& ui, const View& view) {
  screen_.draw_bottom(ui, view.system, view.height);
}

}  // namespace camside::screens
