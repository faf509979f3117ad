#include "screens/bikes/bikes_place.hpp"

#include "screens/words.hpp"
#include "work/reopened.hpp"

namespace camside::screens {

const char* BikesPlace::name() const {
  return words::bikes();
}

void BikesPlace::draw_icon(ImDrawList* list, ImVec2 c, float r, ImU32 ink, float w) const {
  const auto at = [&](float x, float y) { return ImVec2{c.x + x * r, c.y + y * r}; };
  list->AddCircle(at(-0.62f, 0.34f), 0.4f * r, ink, 0, w);
  list->AddCircle(at(0.66f, 0.34f), 0.4f * r, ink, 0, w);
  list->AddLine(at(0.66f, 0.34f), at(0.34f, -0.52f), ink, w);         // fork
  list->AddLine(at(0.34f, -0.52f), at(0.12f, -0.58f), ink, w);        // handlebar
  list->AddLine(at(0.4f, -0.28f), at(-0.7f, -0.14f), ink, 1.6f * w);  // tank and seat
  list->AddLine(at(0.0f, 0.42f), at(-0.2f, 0.04f), ink, 1.4f * w);    // the two cylinders
  list->AddLine(at(0.0f, 0.42f), at(0.2f, 0.04f), ink, 1.4f * w);
}

void BikesPlace::refresh(bool) {
  log_.refresh();
  if (screen_.file_came()) way_ = Way{id(), {}};
}

std::string BikesPlace::title(const View&) {
  return log_.present() ? screen_.title() : words::bikes();
}

bool BikesPlace::deep(const View&) const {
  return log_.present() && screen_.deep();
}

void BikesPlace::back() {
  if (log_.present()) screen_.back();
}

const char* BikesPlace::part() const {
  return log_.present() ? screen_.part() : name();
}

void BikesPlace::draw_middle(Ui& ui, const View& view) {
  if (!log_.present()) {
    ui.title(words::bikes());
    return ui.text(words::bikes_coming());
  }
  screen_.draw_middle(ui, view.system);
  if (const auto measured = screen_.take_reopened(); measured && job_.ready())
    way_ = Way{PlaceId::Bench, {measured->kind(), work::reopened(job_, *measured)}};
}

bool BikesPlace::has_list() const {
  return log_.present() && screen_.deep() && !log_.rows().empty();
}

void BikesPlace::draw_list(Ui& ui, const View&) {
  screen_.draw_list(ui, true);
}

Column BikesPlace::column(const Ui& ui, const View& view) {
  if (!log_.present() || (view.shape == Shape::Sideways && screen_.bottom_height(ui) <= 0)) return Column::None;
  return typing() ? Column::Full : Column::Narrow;
}

float BikesPlace::bottom_height(const Ui& ui, const View&) {
  return log_.present() ? screen_.bottom_height(ui) : 0;
}

void BikesPlace::draw_bottom(Ui& ui, const View& view) {
  screen_.draw_bottom(ui, view.system, view.height);
}

std::vector<std::string> BikesPlace::where() const {
  return screen_.shown().empty() ? std::vector<std::string>{} : std::vector<std::string>{screen_.shown()};
}

bool BikesPlace::can_come_back(const std::vector<std::string>& where) const {
  return where.empty() || !log_.present() || log_.ready();
}

void BikesPlace::come_back(const std::vector<std::string>& where) {
  if (!where.empty() && log_.present() && log_.bike(where[0])) screen_.show(where[0]);
}

}  // namespace camside::screens
