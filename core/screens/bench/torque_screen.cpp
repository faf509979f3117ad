// Torque: where the wrench is set, with the lever drawn from above.
#include <algorithm>
#include <cmath>

#include "calc/torque/torque.hpp"
#include "screens/bench/question_screen.hpp"
#include "screens/drawings/torque_drawing.hpp"
#include "screens/widgets/shown.hpp"
#include "units/format.hpp"

namespace camside::screens {

namespace {

TorquePlot plot_of(const torque::Input& in, const torque::Result& r, System system) {
  const auto length = [&](Length v) {
    return format(v.base(), preferred_unit(Kind::Length, system), system == System::Inch ? 2 : 0);
  };
  TorquePlot plot;
  plot.setting_words = shown(Kind::Torque, r.setting.base(), system);
  if (!in.extension) return plot;
  plot.wrench = in.extension->wrench->in_mm();
  plot.extension = in.extension->length->in_mm();
  plot.angle_rad = in.extension->angle.in_rad();
  plot.wrench_words = length(*in.extension->wrench);
  plot.extension_words = length(*in.extension->length);
  return plot;
}

}  // namespace

QuestionLook torque_look();  // for looks.cpp

QuestionLook torque_look() {
  QuestionLook look;
  look.kind = "torque";
  look.plan.front = {"torque", "source", "extension", "scale_end", "bolt"};
  look.drawing_height = [](const Ui& ui, const Solved& solved, float width) {
    return solved.result_as<torque::Result>() ? std::clamp(0.5f * width, ui.px(180), 340.0f) : 0.0f;
  };
  look.drawing = [](const Ui& ui, const Solved& solved, System system, const Area& area) {
    const auto* const r = solved.result_as<torque::Result>();
    const auto* const in = solved.input_as<torque::Input>();
    if (r && in) draw_torque(ui.pen(ui.theme().ground), area, plot_of(*in, *r, system));
  };
  return look;
}

}  // namespace camside::screens
