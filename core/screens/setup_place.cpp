#include "screens/setup_place.hpp"

#include "screens/words.hpp"

namespace camside::screens {

const char* SetupPlace::name() const {
  return words::setup();
}

void SetupPlace::draw_icon(ImDrawList* list, ImVec2 c, float r, ImU32 ink, float w) const {
  for (int i = -1; i <= 1; ++i) {
    const float y = c.y + 0.55f * r * static_cast<float>(i);
    const float knob = c.x + 0.4f * r * static_cast<float>(i == 0 ? 1 : -1);
    list->AddLine({c.x - 0.8f * r, y}, {c.x + 0.8f * r, y}, ink, w);
    list->AddCircleFilled({knob, y}, 0.2f * r, ink);
  }
}

void SetupPlace::draw_kept(Ui& ui) {
  const Kept kept = platform_.kept();
  if (!kept.version.empty()) ui.quiet(words::version(kept.version));
  if (kept.kept) ui.quiet(words::kept_on_device());
  draw_update_(ui);
}

void SetupPlace::draw_middle(Ui& ui, const View&) {
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
  change_(s);
}

}  // namespace camside::screens
