#include "screens/bench/bench_place.hpp"

#include <algorithm>

#include "calc/questions.hpp"
#include "screens/bench/looks.hpp"
#include "screens/job_state.hpp"
#include "screens/words.hpp"

namespace camside::screens {

BenchPlace::BenchPlace(storage::CurrentJob& job, Platform& platform, BikeLog& log, const work::Settings& settings,
                       std::function<void(Ui&)> draw_update)
    : job_(job), platform_(platform), log_(log), settings_(settings), draw_update_(std::move(draw_update)) {
  for (QuestionLook& look : looks()) questions_.push_back(std::make_unique<QuestionScreen>(std::move(look)));
}

const char* BenchPlace::name() const {
  return words::bench();
}

void BenchPlace::draw_icon(ImDrawList* list, ImVec2 c, float r, ImU32 ink, float w) const {
  list->AddCircle({c.x, c.y - 0.15f * r}, 0.7f * r, ink, 0, w);
  list->AddLine({c.x, c.y - 0.15f * r}, {c.x + 0.38f * r, c.y - 0.5f * r}, ink, w);
  list->AddLine({c.x, c.y + 0.55f * r}, {c.x, c.y + r}, ink, w);
}

QuestionScreen* BenchPlace::current() const {
  for (const auto& q : questions_)
    if (q->kind() == open_) return q.get();
  return nullptr;
}

// A clock goes on while something else is on screen, or nothing.
void BenchPlace::refresh(bool shown) {
  const double now_s = platform_.seconds();
  const QuestionScreen* const open = shown ? current() : nullptr;
  for (const auto& q : questions_) {
    if (!q->ran_out(now_s)) continue;
    platform_.ring();
    if (q.get() != open) ran_out_ = q->kind().data();
  }
  if (open && ran_out_ && open->kind() == ran_out_) ran_out_ = nullptr;
}

void BenchPlace::forget() {
  for (const auto& q : questions_) q->forget();
}

std::string BenchPlace::title(const View&) {
  const QuestionScreen* const question = current();
  const Question* const of = question ? find_question(question->kind()) : nullptr;
  return of ? std::string(of->tile.name) : name();
}

std::optional<Verdict> BenchPlace::verdict() const {
  const QuestionScreen* const question = current();
  if (!question || !question->solved().solved || !question->solved().outcome.judgement) return std::nullopt;
  return question->solved().outcome.judgement->verdict;
}

bool BenchPlace::deep(const View& view) const {
  return view.shape != Shape::Wide && current() != nullptr;
}

void BenchPlace::back() {
  if (QuestionScreen* question = current()) question->keypad().close();
  open_.clear();
}

const char* BenchPlace::part() const {
  const QuestionScreen* const question = current();
  return question ? question->kind().data() : name();
}

void BenchPlace::draw_notice(Ui& ui) {
  if (ran_out_ && ui.row("ran out", words::wait_is_over(), words::show_it())) way_ = Way{id(), {ran_out_}};
}

void BenchPlace::draw_log_it(Ui& ui, const records::Record& measured) {
  ui.gap(8);
  if (log_.keeper().state() == storage::SaveState::Failed) draw_log_state(ui, log_);
  if (log_to_bike_.draw(ui, log_, measured)) way_ = Way{PlaceId::Bikes, {}};
}

void BenchPlace::draw_middle(Ui& ui, const View& view) {
  if (!job_.job().bike().empty()) ui.quiet(words::bike_is(job_.job().bike()));
  QuestionScreen* const question = current();
  if (!question) return draw_tiles(ui, false);
  draw_job_state(ui, job_);
  QuestionScreen::Beside beside;
  beside.working = view.shape == Shape::Wide;
  beside.drawing = view.shape == Shape::Sideways && has_side(view);
  if (log_.ready()) beside.below_drawing = [&](const records::Record& measured) { draw_log_it(ui, measured); };
  question->draw_middle(ui, job_, platform_, view.system, beside);
}

bool BenchPlace::draw_tile(Ui& ui, const Question& question, ImVec2 size, bool as_list) {
  const std::string name(question.tile.name);
  const bool ready = platform_.all_here() || question.part == Part::First;
  const bool on = as_list && question.kind.name == open_;
  return ui.area(
      name, Role::Button, name, size,
      [&](const Area& at, bool pressed) {
        ImDrawList* const list = ImGui::GetWindowDrawList();
        list->AddRectFilled(at.min, at.max, on || pressed ? ui.theme().pressed : ui.theme().card, 14);
        if (on) list->AddRectFilled(at.min, {at.min.x + 5, at.max.y}, ui.theme().accent, 2);
        const ImU32 ink = ready ? ui.theme().text : ui.theme().quiet;
        const Area inner = at.inset(14);
        if (as_list) return ui.fit(inner, name, ink, ui.px(18), ui.fonts().bold, {0, 0.5f});
        const float split = inner.min.y + 0.48f * inner.height();
        ui.fit({inner.min, {inner.max.x, split}}, name, ink, ui.px(20), ui.fonts().bold, {0, 0});
        ui.fit({{inner.min.x, split}, inner.max}, std::string(question.tile.question), ui.theme().quiet, ui.px(16),
               ui.fonts().words, {0, 1});
      },
      ready);
}

void BenchPlace::draw_tiles(Ui& ui, bool as_list) {
  if (!as_list) {
    draw_job_state(ui, job_);
    draw_update_(ui);
  }
  const float gap = 12;
  const float w = ui.width();
  const int columns = as_list ? 1 : w > 620 ? 3 : w >= 300 && settings_.text_scale < 1.4f ? 2 : 1;
  const float each = (w - gap * static_cast<float>(columns - 1)) / static_cast<float>(columns);
  const float high = as_list ? ui.target() + 12 : columns == 1 ? ui.px(104) : ui.px(128);
  for (const Where where : {Where::Bench, Where::Desk}) {
    if (where == Where::Desk) {
      ui.gap(12);
      ui.heading(words::desk());
    }
    int i = 0;
    for (const Question& question : questions()) {
      if (question.where != where) continue;
      if (i > 0 && i % columns == 0 && columns > 1) ui.gap(gap);
      if (i++ % columns != 0) ImGui::SameLine(0, gap);
      if (draw_tile(ui, question, {each, high}, as_list)) way_ = Way{id(), {std::string(question.kind.name)}};
    }
  }
  if (!platform_.all_here()) ui.quiet(words::rest_is_coming());
}

void BenchPlace::draw_list(Ui& ui, const View&) {
  draw_tiles(ui, true);
}

Column BenchPlace::column(const Ui&, const View& view) {
  if (view.shape == Shape::Wide) return current() ? Column::Full : Column::None;
  return has_side(view) ? Column::Full : Column::None;
}

// Beside a question held sideways stands its drawing, at the desk its working.
bool BenchPlace::has_side(const View& view) const {
  const QuestionScreen* const question = current();
  if (!question) return false;
  return view.shape == Shape::Wide || (job_.ready() && !job_.job().records.empty());
}

void BenchPlace::draw_side(Ui& ui, const View& view) {
  QuestionScreen* const question = current();
  if (!question) return;
  if (view.shape == Shape::Sideways) return question->draw_side(ui, job_, platform_, view.system, view.height);
  if (question->solved().solved) draw_working(ui, question->solved().outcome);
}

// At the desk a complete entry has no main action: the working is there.
float BenchPlace::bottom_height(const Ui& ui, const View& view) {
  const QuestionScreen* const question = current();
  if (!question || !job_.ready()) return 0;
  const bool acts = view.shape != Shape::Wide || question->keypad_open() || !question->complete();
  return acts ? question->bottom_height(ui) : 0;
}

void BenchPlace::draw_bottom(Ui& ui, const View& view) {
  // None: another place was tapped in this frame.
  if (QuestionScreen* question = current()) question->draw_bottom(ui, job_, platform_, view.system, view.height);
}

bool BenchPlace::typing() const {
  const QuestionScreen* const question = current();
  return question && question->keypad_open();
}

bool BenchPlace::holding() const {
  return std::any_of(questions_.begin(), questions_.end(), [](const auto& q) { return q->keypad().holding(); });
}

std::optional<double> BenchPlace::next_wake(bool shown) const {
  const QuestionScreen* const question = shown ? current() : nullptr;
  std::optional<double> wake = question ? question->next_wake_s() : std::nullopt;
  for (const auto& q : questions_) {
    const auto alarm = q->next_alarm_s();
    if (!alarm) continue;
    const double rest = std::max(0.001, *alarm - platform_.seconds());
    wake = std::min(wake.value_or(rest), rest);
  }
  return wake;
}

std::vector<std::string> BenchPlace::where() const {
  return open_.empty() ? std::vector<std::string>{} : std::vector<std::string>{open_};
}

void BenchPlace::come_back(const std::vector<std::string>& where) {
  if (where.empty()) return;
  open_ = where[0];
  if (QuestionScreen* question = current(); question && where.size() > 1) question->choose(where[1]);
}

}  // namespace camside::screens
