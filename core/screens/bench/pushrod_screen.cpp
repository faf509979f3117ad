// Pushrods: turns and flats huge, the direction that lengthens, turns still to go tapped off one by one, the four rods
// with a clock each, and the engine lock.
#include <algorithm>
#include <cmath>

#include "calc/pushrod/pushrod.hpp"
#include "screens/bench/extra_part.hpp"
#include "screens/bench/look_parts.hpp"
#include "screens/bench/question_screen.hpp"
#include "screens/drawings/pushrod_drawing.hpp"
#include "screens/words.hpp"
#include "units/format.hpp"

namespace camside::screens {

namespace {

using pushrod::RodState;

RodMark mark_of(RodState state) {
  switch (state) {
    case RodState::NotLoaded:
      break;
    case RodState::BleedingDown:
      return RodMark::Waiting;
    case RodState::CheckNow:
      return RodMark::CheckNow;
    case RodState::StillUp:
    case RodState::Loose:
      return RodMark::Trouble;
    case RodState::Released:
      return RodMark::Free;
  }
  return RodMark::Idle;
}

std::size_t place(pushrod::Rod rod) {
  return static_cast<std::size_t>(rod);
}

std::string label_of(pushrod::Rod rod) {
  return std::string(pushrod::rod_choices[place(rod)].label);
}

std::string way_words(const pushrod::Setting& s) {
  if (!s.turn) return words::direction_not_known();
  const bool longer = s.way == pushrod::Way::LengthenFromZero;
  return words::way_of_turning(std::string(pushrod::word_of(*s.turn)), longer);
}

PushrodPlot plot_of(const pushrod::Input& in, const pushrod::Result& r) {
  PushrodPlot plot;
  plot.adjustable = r.setting.has_value();
  plot.flats_per_turn = in.flats_per_turn;
  if (r.setting) {
    plot.end_flat = static_cast<int>(r.setting->set.flats);
    if (r.setting->turn) plot.clockwise = *r.setting->turn == pushrod::Sense::Clockwise;
    plot.turn_words = way_words(*r.setting);
  }
  for (std::size_t i = 0; i < plot.rods.size(); ++i) {
    const pushrod::Rod rod = r.picture[i];
    const RodState state = r.rod_states[place(rod)];
    plot.rods[i] = {label_of(rod), std::string(pushrod::word_of(state)), mark_of(state)};
  }
  plot.locked = r.lock == pushrod::EngineLock::Locked || r.lock == pushrod::EngineLock::CheckNow;
  plot.lock_words = words::do_not_turn();
  return plot;
}

// Turns still to go, tapped off one by one: that is what prevents miscounting.
class CountDown {
 public:
  void draw(Ui& ui, const pushrod::Setting& setting, int flats_per_turn) {
    if (setting.set_flats != all_) restart(setting.set_flats);
    const long left = all_ - done_;
    const std::string togo = format_turns_flats(left, flats_per_turn);
    ui.heading(left > 0 ? words::still_to_go() : words::all_turns_made());
    const bool whole = left >= flats_per_turn;
    if (left > 0) {
      if (tap_area(ui, togo, whole ? words::tap_after_turn() : words::tap_after_flats()))
        done_ += whole ? flats_per_turn : left;
    }
    if (done_ > 0 && ui.button("count again", words::count_again(), Look::Quiet)) done_ = 0;
  }

 private:
  void restart(long flats) {
    all_ = flats;
    done_ = 0;
  }
  static bool tap_area(Ui& ui, const std::string& togo, const char* what) {
    return ui.area("turn made", Role::Button, what, {ui.width(), ui.px(112)}, [&](const Area& at, bool pressed) {
      ImDrawList* const list = ImGui::GetWindowDrawList();
      list->AddRectFilled(at.min, at.max, pressed ? ui.theme().pressed : ui.theme().card, 14);
      list->AddRect(at.min, at.max, ui.theme().accent, 14, 0, ui.theme().stroke);
      const float split = at.min.y + 0.62f * at.height();
      ui.fit({{at.min.x + 12, at.min.y + 8}, {at.max.x - 12, split}}, togo, ui.theme().text, ui.px(40),
             ui.fonts().bold);
      ui.fit({{at.min.x + 12, split}, {at.max.x - 12, at.max.y - 8}}, what, ui.theme().accent, ui.px(18),
             ui.fonts().bold);
    });
  }

  long all_ = -1;
  long done_ = 0;
};

std::string clock_text(double seconds) {
  const auto whole = static_cast<long>(std::max(0.0, seconds));
  const long rest = whole % 60;
  return std::to_string(whole / 60) + (rest < 10 ? ":0" : ":") + std::to_string(rest);
}

// Spin tests of the four rods. The clock only says when to try; the answers are the mechanic's.
class Clocks {
 public:
  void draw(Ui& ui, const pushrod::Input& in, const pushrod::Result& r, const std::vector<records::FormField>& form,
            const Edits& edits) {
    running_ = false;
    ends_s_ = {};
    ui.gap(12);
    ui.heading(words::rods_set());
    for (const pushrod::Rod rod : r.picture) draw_rod(ui, in, r.rod_states[place(rod)], rod, form, edits);
  }
  bool running() const { return running_; }
  std::optional<double> next_end_s() const {
    std::optional<double> next;
    for (const auto& end : ends_s_)
      if (end && (!next || *end < *next)) next = end;
    return next;
  }
  bool ran_out(double now_s) {
    bool any = false;
    for (auto& end : ends_s_) {
      if (!end || *end > now_s) continue;
      any = true;
      end.reset();
    }
    return any;
  }

 private:
  static std::string path_of(const std::vector<records::FormField>& form, pushrod::Rod rod) {
    const std::string_view name = pushrod::rod_choices[place(rod)].name;
    for (const records::FormField& f : form)
      if (f.path.starts_with("checks[") && f.path.ends_with("].rod") && f.text == name)
        return f.path.substr(0, f.path.size() - 4);
    return {};
  }

  void draw_rod(Ui& ui, const pushrod::Input& in, RodState state, pushrod::Rod rod,
                const std::vector<records::FormField>& form, const Edits& edits) {
    const std::string name = label_of(rod);
    const std::string path = path_of(form, rod);
    std::optional<double>& since = since_s_[place(rod)];
    if (state == RodState::NotLoaded || path.empty()) {
      since.reset();
      if (ui.row("set " + name, name, words::set_now())) load(rod, path, edits);
      return;
    }
    // After a restart nobody knows how long ago it was: the wait begins anew.
    if (!since) since = edits.now_s - entered_s(form, path);
    const double gone = edits.now_s - *since;
    const bool over = gone >= in.least_wait.in_seconds();
    const bool free = state == RodState::Released;
    running_ = running_ || (!over && !free);
    if (!over && !free) ends_s_[place(rod)] = *since + in.least_wait.in_seconds();
    const std::string word(pushrod::word_of(over && state == RodState::BleedingDown ? RodState::CheckNow : state));
    const std::string clock = free ? word : word + " · " + clock_text(gone);
    if (ui.row("rod " + name, name, clock)) open_ = open_ == path ? std::string() : path;
    if (open_ == path || over) questions(ui, path, gone, form, edits);
  }

  static double entered_s(const std::vector<records::FormField>& form, const std::string& path) {
    const auto entered = parse(Kind::Duration, stands_in(form, path + ".since_loaded"));
    return entered ? Duration::minutes(entered->base).in_seconds() : 0.0;
  }

  void load(pushrod::Rod rod, std::string path, const Edits& edits) {
    if (path.empty()) path = edits.add_item("checks");
    edits.set(path + ".rod", pushrod::rod_choices[place(rod)].name);
    edits.set(path + ".loaded", "true");
    edits.set(path + ".since_loaded", "");
    since_s_[place(rod)] = edits.now_s;
  }

  static void questions(Ui& ui, const std::string& path, double gone_s, const std::vector<records::FormField>& form,
                        const Edits& edits) {
    const std::string labels[2] = {words::yes(), words::no()};
    const auto ask = [&](const char* field, const char* question) {
      const std::string now = stands_in(form, path + "." + field);
      const int chosen = now == "true" ? 0 : now == "false" ? 1 : -1;
      const int pressed = ui.segmented(path + field + "?", question, labels, chosen);
      if (pressed < 0) return;
      edits.set(path + "." + field, pressed == 0 ? "true" : "false");
      edits.set(path + ".since_loaded", format_decimal(gone_s / 60.0, 1) + " min");
    };
    ask("spins_with_drag", words::spins_with_drag());
    ask("play", words::play_up_and_down());
  }

  std::array<std::optional<double>, 4> since_s_{};
  std::array<std::optional<double>, 4> ends_s_{};  // of those still running
  std::string open_;
  bool running_ = false;
};

class PushrodExtra final : public ExtraPart {
 public:
  void draw(Ui& ui, const Solved& solved, const std::vector<records::FormField>& form, const Edits& edits) override {
    const auto* const r = solved.result_as<pushrod::Result>();
    const auto* const in = solved.input_as<pushrod::Input>();
    if (!r || !in) return;
    if (r->setting && r->setting->set_flats > 0) count_down_.draw(ui, *r->setting, in->flats_per_turn);
    if (in->lifter == pushrod::Lifter::Hydraulic) clocks_.draw(ui, *in, *r, form, edits);
  }
  std::optional<double> next_wake_s() const override { return clocks_.running() ? std::optional(1.0) : std::nullopt; }
  std::optional<double> next_alarm_s() const override { return clocks_.next_end_s(); }
  bool ran_out(double now_s) override { return clocks_.ran_out(now_s); }

 private:
  CountDown count_down_;
  Clocks clocks_;
};

bool hidden(std::string_view top, const std::vector<records::FormField>& form) {
  const bool solid = stands_in(form, "lifter") == "solid";
  const bool fixed = stands_in(form, "rods") == "fixed";
  if (solid && (top == "lifter_state" || top == "travel" || top == "preload" || top == "least_margin")) return true;
  return fixed && (top == "pitch" || top == "flats_per_turn" || top == "thread_hand" || top == "adjuster_end");
}

}  // namespace

QuestionLook pushrod_look();  // for looks.cpp

QuestionLook pushrod_look() {
  QuestionLook look;
  look.kind = "pushrod";
  look.scales = false;
  look.plan.front = {"lifter",  "lifter_state", "rods",         "pitch",         "travel",
                     "preload", "thread_hand",  "adjuster_end", "flats_per_turn"};
  look.plan.hidden = hidden;
  look.drawing_height = [](const Ui& ui, const Solved& solved, float width) {
    const auto* const r = solved.result_as<pushrod::Result>();
    const auto* const in = solved.input_as<pushrod::Input>();
    return r && in ? pushrod_height(ui.pen(ui.theme().ground), plot_of(*in, *r), width) : 0.0f;
  };
  look.drawing = [](const Ui& ui, const Solved& solved, System, const Area& area) {
    const auto* const r = solved.result_as<pushrod::Result>();
    const auto* const in = solved.input_as<pushrod::Input>();
    if (r && in) draw_pushrods(ui.pen(ui.theme().ground), area, plot_of(*in, *r));
  };
  look.extra = [] { return std::make_unique<PushrodExtra>(); };
  return look;
}

}  // namespace camside::screens
