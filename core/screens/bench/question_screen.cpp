#include "screens/bench/question_screen.hpp"

#include <algorithm>

#include "calc/questions.hpp"
#include "fields/path.hpp"
#include "records/new_id.hpp"
#include "screens/words.hpp"
#include "units/format.hpp"
#include "units/parse.hpp"

namespace camside::screens {

namespace {

constexpr float most_drawing = 520.0f;
constexpr float usual_words = 1.2f;  // times their size; larger ones reach into corners

const records::FormField* find_field(const std::vector<records::FormField>& fields, std::string_view path) {
  for (const auto& f : fields)
    if (f.path == path) return &f;
  return nullptr;
}

}  // namespace

// The keypad starts in the unit typed last, else in the one that the trade reads this kind in.
const Unit* QuestionScreen::starting_unit(Kind kind, System system) {
  if (units_of_ != system) units_.clear();
  units_of_ = system;
  if (kind == Kind::Number || kind == Kind::Money) return nullptr;
  const auto typed = units_.find(kind);
  return typed == units_.end() ? &preferred_unit(kind, system) : typed->second;
}

QuestionScreen::QuestionScreen(QuestionLook look) : look_(std::move(look)) {
  if (look_.extra) extra_ = look_.extra();
}

void QuestionScreen::forget() {
  stale_ = true;
  keypad_.close();
  shown_id_.clear();
}

void QuestionScreen::choose(const std::string& id) {
  forget();
  chosen_id_ = id;
}

// The record chosen, else the newest of this kind.
records::Record* QuestionScreen::record(storage::CurrentJob& job) {
  auto& all = job.job().records;
  for (records::Record& r : all)
    if (!chosen_id_.empty() && r.id() == chosen_id_ && r.kind() == look_.kind) return &r;
  for (auto it = all.rbegin(); it != all.rend(); ++it)
    if (it->kind() == look_.kind) return &*it;
  return nullptr;
}

void QuestionScreen::refresh(const records::Record* of) {
  const std::string id = of ? of->id() : std::string();
  if (!stale_ && id == shown_id_) return;
  stale_ = false;
  ++version_;
  if (id != shown_id_) zoom_ = {};
  shown_id_ = id;
  fields_ = of ? records::form_of(*of) : std::vector<records::FormField>();
  solved_ = of ? records::solve(*of) : Solved{};
}

void QuestionScreen::commit(storage::CurrentJob& job) {
  stale_ = true;
  job.commit();
}

records::Record& QuestionScreen::add_record(storage::CurrentJob& job, Platform& platform, bool example) {
  const RecordKind& kind = *records::find_kind(look_.kind);
  records::Record fresh = records::make_record(kind, records::new_id(), platform.local_time());
  if (example) {
    for (const records::Record& demo : records::demo_records(kind)) {
      fresh.take_entered(demo.entered());
      fresh.set("name", demo.name());
      fresh.set("note", demo.note().empty() ? words::invented() : demo.note());
      break;
    }
  }
  chosen_id_ = fresh.id();
  job.job().records.push_back(std::move(fresh));
  commit(job);
  return job.job().records.back();
}

void QuestionScreen::edit(std::string_view path, Platform& platform, storage::CurrentJob& job, System system) {
  records::Record* const of = record(job);
  const records::FormField* const field = find_field(fields_, path);
  if (!of || !field) return;
  scroll_to_field_ = true;
  keypad_.close();
  const bool words_wanted = field->sort == records::FieldSort::Text;
  const std::string label = field->field.label.empty() ? words::value() : std::string(field->field.label);
  if (words_wanted) {
    TextRequest request;
    request.field = field->path;
    request.label = label;
    request.text = field->text;
    request.changed = [this, &job, p = std::string(path)](const std::string& text) {
      if (records::Record* r = record(job)) records::set_text(*r, p, text);
      commit(job);
    };
    request.done = [] {};
    if (platform.open_text_field(request)) return;
  }
  const Typing typing = words_wanted                              ? Typing::Words
                        : field->sort == records::FieldSort::Date ? Typing::Date
                                                                  : Typing::Number;
  keypad_.open(field->path, label, field->kind, field->text, starting_unit(field->kind, system), field->range, typing);
}

void QuestionScreen::carry_out(const FormAction& action, storage::CurrentJob& job, Platform& platform, System system) {
  records::Record* const of = record(job);
  if (!of || action.what == FormAction::What::None) return;
  const auto keep_for_undo = [&](const std::string& what) {
    undo_ = records::JsonValue(of->entered());
    undo_id_ = of->id();
    undo_text_ = words::removed(what);
  };
  switch (action.what) {
    case FormAction::What::Edit:
      edit(action.path, platform, job, system);
      return;
    case FormAction::What::Set:
      records::set_text(*of, action.path, action.text);
      break;
    case FormAction::What::AddItem: {
      const MarkedList* const marked = look_.plan.marked_list(action.path);
      if (!marked || !continue_marks(*of, *marked)) records::add_item(*of, action.path);
      break;
    }
    case FormAction::What::RemoveItem:
      keep_for_undo("Entry " + std::to_string(action.index + 1));
      keypad_.close();
      records::remove_item(*of, action.path, action.index);
      break;
    case FormAction::What::RemoveField:
      keep_for_undo("The group");
      keypad_.close();
      records::remove_field(*of, action.path);
      break;
    case FormAction::What::LayOut:
      lay_out(*of, action.path, action.index);
      break;
    case FormAction::What::None:
      return;
  }
  commit(job);
}

// Marks every so many degrees, the first at 0; their readings are typed afterwards.
void QuestionScreen::lay_out(records::Record& of, std::string_view list, std::size_t count) {
  const MarkedList* const marked = look_.plan.marked_list(list);
  if (!marked) return;
  for (std::size_t i = 0; i < count; ++i) {
    const std::string item = records::add_item(of, list);
    const double at_deg = static_cast<double>(marked->whole_deg) * static_cast<double>(i) / static_cast<double>(count);
    records::set_text(of, item + "." + std::string(marked->mark), format_decimal(at_deg, 1) + " °");
  }
}

// One more item in a list of marks, its mark as far from the last as that is from the one before. False when the turn
// is full.
bool QuestionScreen::continue_marks(records::Record& of, const MarkedList& marked) {
  const auto mark_of = [&](std::size_t index) -> std::optional<double> {
    const std::string path = item_path(marked.list, index, marked.mark);
    const records::FormField* const f = find_field(fields_, path);
    const auto entered = f ? parse(Kind::Angle, f->text) : parse(Kind::Angle, "");
    return entered ? std::optional(Angle::rad(entered->base).in_deg()) : std::nullopt;
  };
  const records::FormField* const list = find_field(fields_, marked.list);
  const std::size_t count = list ? list->count : 0;
  const auto last = count >= 2 ? mark_of(count - 1) : std::nullopt;
  const auto before = count >= 2 ? mark_of(count - 2) : std::nullopt;
  const bool known = last && before;
  const double following = known ? 2 * *last - *before : 0.0;
  if (known && following >= marked.whole_deg - 0.05) return false;
  const std::string item = records::add_item(of, marked.list);
  if (known) records::set_text(of, item + "." + std::string(marked.mark), format_decimal(following, 1) + " °");
  return true;
}

// At the end of a list a further item, so that twelve readings are typed without looking. False: there is none to add.
bool QuestionScreen::next_item(storage::CurrentJob& job, Platform& platform, System system) {
  const std::string here = keypad_.path();
  const std::size_t bracket = here.rfind('[');
  const std::string list = bracket == std::string::npos ? std::string() : here.substr(0, bracket);
  records::Record* const of = record(job);
  const records::FormField* const field = find_field(fields_, here);
  if (!of || list.empty() || !field || !field->entered || form_.after(here).starts_with(list + "[")) return false;
  const records::FormField* const all = find_field(fields_, list);
  const std::string fresh = item_path(list, all ? all->count : 0);
  const MarkedList* const marked = look_.plan.marked_list(list);
  if (marked ? !continue_marks(*of, *marked) : records::add_item(*of, list).empty()) return false;
  commit(job);
  refresh(record(job));
  for (const auto& f : fields_) {
    if (!f.path.starts_with(fresh) || f.sort != records::FieldSort::Number || f.entered) continue;
    edit(f.path, platform, job, system);
    return true;
  }
  keypad_.close();
  return true;
}

// The next field; marks that were laid out are passed over.
void QuestionScreen::next(storage::CurrentJob& job, Platform& platform, System system) {
  if (next_item(job, platform, system)) return;
  std::string following = form_.after(keypad_.path());
  for (const MarkedList& marked : look_.plan.marked) {
    const records::FormField* const field = find_field(fields_, following);
    const bool is_mark = following.starts_with(marked.list) && following.ends_with("." + std::string(marked.mark));
    if (is_mark && field && field->entered) following = form_.after(following);
  }
  if (following.empty())
    keypad_.close();
  else
    edit(following, platform, job, system);
}

// Shown when the job holds several of this kind: two meshes, a crank before and after truing.
void QuestionScreen::draw_chooser(Ui& ui, storage::CurrentJob& job) {
  std::vector<const records::Record*> all;
  for (const records::Record& r : job.job().records)
    if (r.kind() == look_.kind) all.push_back(&r);
  if (all.size() < 2) return;
  std::vector<std::string> names;
  int now = static_cast<int>(all.size()) - 1;
  for (std::size_t i = 0; i < all.size(); ++i) {
    names.push_back(all[i]->name().empty() ? words::nth(i + 1, all.size()) : all[i]->name());
    if (all[i]->id() == shown_id_) now = static_cast<int>(i);
  }
  const int pressed = ui.segmented("measurements", words::other_measurements(), names, now);
  if (pressed < 0) return;
  chosen_id_ = all[static_cast<std::size_t>(pressed)]->id();
  keypad_.close();
}

// Where fingers go, said before the first reading; an answer says it again.
void QuestionScreen::draw_cautions_before(Ui& ui) const {
  const Question* const question = find_question(look_.kind);
  if (question && question->before) draw_remarks(ui, question->before());
}

void QuestionScreen::draw_start(Ui& ui, storage::CurrentJob& job, Platform& platform) {
  const RecordKind* const kind = records::find_kind(look_.kind);
  if (!kind) {
    ui.text(words::coming());
    return;
  }
  ui.heading(std::string(kind->question));
  draw_cautions_before(ui);
  if (ui.button("start", words::enter_first(), Look::Main)) {
    add_record(job, platform, false);
    form_.show_all(false);
  }
  if (ui.button("example", words::show_example())) add_record(job, platform, true);
}

void QuestionScreen::draw_drawing(Ui& ui, System system, float most_height) {
  if (!look_.drawing || !solved_.solved) return;
  const float width = ui.width();
  const float height = look_.drawing_height(ui, solved_, width);
  if (height <= 0) return;
  const bool corner = look_.free_corner && ui.px(1) < usual_words;
  const float most = most_height - (corner ? 0 : zoom_button_height());
  const float high = look_.scales ? std::min(height, most) : height;
  draw_enlargeable(
      ui, zoom_, "drawing", std::string(look_.kind) + " drawing", {width, high},
      [&](const Area& area) { look_.drawing(ui, solved_, system, area); },
      corner ? ZoomButton::Corner : ZoomButton::Below);
}

void QuestionScreen::draw_side(Ui& ui, storage::CurrentJob& job, Platform& platform, System system, float height) {
  if (look_.drawing)
    draw_drawing(ui, system, height);
  else
    draw_extra(ui, job, platform, system);
}

void QuestionScreen::draw_extra(Ui& ui, storage::CurrentJob& job, Platform& platform, System system) {
  if (!extra_ || !solved_.solved) return;
  Edits edits;
  edits.now_s = platform.seconds();
  edits.system = system;
  edits.version = version_;
  edits.set = [&](std::string_view path, std::string_view text) {
    if (records::Record* of = record(job)) records::set_text(*of, path, text);
    commit(job);
  };
  edits.add_item = [&](std::string_view list) {
    records::Record* const of = record(job);
    return of ? records::add_item(*of, list) : std::string();
  };
  ui.gap(8);
  extra_->draw(ui, solved_, fields_, edits);
}

void QuestionScreen::draw_undo(Ui& ui, storage::CurrentJob& job) {
  if (undo_text_.empty()) return;
  if (ui.row("undo", undo_text_, words::undo())) {
    if (records::Record* of = job.job().find(undo_id_)) of->take_entered(undo_);
    undo_text_.clear();
    commit(job);
  }
}

void QuestionScreen::draw_form(Ui& ui, storage::CurrentJob& job, Platform& platform, System system) {
  form_.scroll_to(scroll_to_field_ ? keypad_.path() : std::string());
  scroll_to_field_ = false;
  const FormAction action = form_.draw(ui, fields_, look_.plan, solved_.findings, keypad_.path(), system);
  carry_out(action, job, platform, system);
}

void QuestionScreen::draw_working_here(Ui& ui) {
  if (scroll_to_working_) ImGui::SetScrollHereY(0.0f);
  scroll_to_working_ = false;
  if (ui.button("working", working_open_ ? words::hide_working() : words::working())) working_open_ = !working_open_;
  if (working_open_) draw_working(ui, solved_.outcome);
}

// What is good to know but answers nothing: the further figures, the notes, and the Working where it isn't beside.
void QuestionScreen::draw_rest(Ui& ui, System system, bool working_beside) {
  const Findings notes = good_to_know(solved_.findings);
  if (!notes.empty()) {
    if (ui.button("notes", notes_open_ ? words::hide_notes() : words::notes(notes.size()), Look::Quiet))
      notes_open_ = !notes_open_;
    if (notes_open_) draw_remarks(ui, notes);
  }
  if (!solved_.solved) return;
  ui.gap(12);
  draw_figures(ui, solved_.outcome, system);
  if (!working_beside) draw_working_here(ui);
}

void QuestionScreen::draw_middle(Ui& ui, storage::CurrentJob& job, Platform& platform, System system,
                                 const Beside& beside) {
  const records::Record* const of = record(job);
  refresh(of);
  if (!of) return draw_start(ui, job, platform);
  if (!of->note().empty()) ui.quiet(of->note());
  draw_answer(ui, solved_, system);
  draw_undo(ui, job);
  ui.gap(12);
  if (!beside.drawing) draw_drawing(ui, system, most_drawing);
  if (!beside.drawing || look_.drawing) draw_extra(ui, job, platform, system);
  if (!solved_.solved) draw_cautions_before(ui);
  draw_remarks(ui, what_matters_now(solved_.findings));
  if (beside.below_drawing && solved_.solved) beside.below_drawing(*of);
  ui.gap(12);
  draw_form(ui, job, platform, system);
  ui.gap(12);
  draw_rest(ui, system, beside.working);
  ui.gap(12);
  draw_chooser(ui, job);
  if (ui.button("new", words::new_measurement(), Look::Quiet)) add_record(job, platform, false);
  ui.gap(24);
}

float QuestionScreen::bottom_height(const Ui& ui) const {
  if (keypad_.is_open()) return keypad_.height(ui);
  return std::max(64.0f, ui.target()) + 16;
}

void QuestionScreen::draw_bottom(Ui& ui, storage::CurrentJob& job, Platform& platform, System system, float height) {
  records::Record* const of = record(job);
  if (!of) return;
  if (keypad_.is_open()) {
    const KeypadEvent event = keypad_.draw(ui, height);
    if (event == KeypadEvent::Close) return keypad_.close();
    if (event == KeypadEvent::None) return;
    const records::FormField* const field = find_field(fields_, keypad_.path());
    if (field && keypad_.unit()) units_[field->kind] = keypad_.unit();
    if (field && field->text != keypad_.text()) {
      records::set_text(*of, keypad_.path(), keypad_.text());
      commit(job);
      refresh(of);
    }
    if (event == KeypadEvent::Next) next(job, platform, system);
    return;
  }
  const std::string wanted = form_.first_empty();
  const records::FormField* const refused = refused_field();
  const std::string label = refused          ? words::correct_field(std::string(refused->field.label))
                            : wanted.empty() ? std::string(words::working())
                                             : std::string(words::enter_next());
  if (!ui.button("main action", label, Look::Main)) return;
  if (refused)
    edit(std::string(refused->path), platform, job, system);
  else if (!wanted.empty())
    edit(wanted, platform, job, system);
  else
    working_open_ = scroll_to_working_ = true;
}

// What was typed and can't be so; it comes before what is still to enter.
const records::FormField* QuestionScreen::refused_field() const {
  for (const Finding& f : solved_.findings) {
    const records::FormField* const field = f.severity == Severity::Refusal ? find_field(fields_, f.field) : nullptr;
    const bool typed = field && field->sort != records::FieldSort::Choice && !field->text.empty();
    if (typed && !field->field.label.empty()) return field;
  }
  return nullptr;
}

}  // namespace camside::screens
