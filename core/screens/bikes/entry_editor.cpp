#include "screens/bikes/entry_editor.hpp"

#include <algorithm>

#include "log/log_remarks.hpp"
#include "screens/widgets/answer.hpp"
#include "screens/words.hpp"

namespace camside::screens {

using records::FieldSort;
using records::FormField;

namespace {

constexpr const char* day_path = "@day";  // stands beside what is entered, so no field of a kind is called so

// What is wrong with a draft, by the paths of the form: those of "entered" lose that word. What is only missing yet is
// said when it is to be saved.
Findings findings_of(const records::Entry& draft, bool saving) {
  constexpr std::string_view entered = "entered.";
  Findings some;
  for (Finding& finding : records::check_entry(draft)) {
    if (finding.field.starts_with(entered)) finding.field.erase(0, entered.size());
    if (finding.severity == Severity::Refusal) some.push_back(std::move(finding));
  }
  if (saving && draft.kind() == "facts" && draft.entered_text("nickname").empty())
    some.push_back(remarks::entry_refused("nickname", words::no_nickname(), words::give_nickname()));
  return some;
}

FormPlan plan_of(const std::vector<FormField>& fields) {
  FormPlan plan;
  for (const FormField& field : fields)
    if (field.depth == 0 && field.path.find_first_of(".[") == std::string::npos) plan.front.push_back(field.field.name);
  plan.hidden = [](std::string_view top, const std::vector<FormField>& form) {
    if (top != "own_engine") return false;
    return std::none_of(form.begin(), form.end(), [](const FormField& f) {
      return (f.path == "engine" && f.text == "own") || (f.path == "own_engine" && f.entered);
    });
  };
  return plan;
}

}  // namespace

void EntryEditor::start(records::Entry draft, const Unit* unit) {
  close();
  draft_ = std::move(draft);
  begun_ = draft_;
  unit_ = unit;
  active_ = true;
  look_again();
  plan_ = plan_of(fields_);
}

void EntryEditor::begin(records::Entry draft, const Unit* unit) {
  start(std::move(draft), unit);
}

void EntryEditor::begin_at_once(records::Entry draft, const Unit* unit) {
  start(std::move(draft), unit);
  at_once_ = open_first_ = true;
}

void EntryEditor::close() {
  keypad_.close();
  form_ = {};
  active_ = at_once_ = open_first_ = tried_ = finished_ = false;
}

void EntryEditor::look_again() {
  stale_ = false;
  fields_ = records::form_of(draft_.record, records::entry_kinds());
  findings_ = findings_of(draft_, tried_);
}

void EntryEditor::refresh() {
  if (stale_) look_again();
}

const FormField* EntryEditor::field(std::string_view path) const {
  for (const FormField& f : fields_)
    if (f.path == path) return &f;
  return nullptr;
}

void EntryEditor::set(const std::string& path, const std::string& text) {
  if (path == day_path)
    draft_.record.set("day", text);
  else
    records::set_text(draft_.record, path, text, nullptr, records::entry_kinds());
  stale_ = true;
}

// The letters come while the field is over the canvas, perhaps after this draft was closed: then they are not meant for
// the next one.
bool EntryEditor::edit_in_text_field(const FormField& of, Platform& platform) {
  TextRequest request;
  request.field = of.path;
  request.label = of.field.label.empty() ? words::value() : std::string(of.field.label);
  request.text = of.text;
  request.changed = [this, path = of.path, id = draft_.id()](const std::string& text) {
    if (active_ && draft_.id() == id) set(path, text);
  };
  request.done = [] {};
  return platform.open_text_field(request);
}

void EntryEditor::edit(const std::string& path, Platform& platform, System system) {
  const FormField* const of = field(path);
  if (!of) return;
  keypad_.close();
  const bool words_wanted = of->sort == FieldSort::Text;
  if (words_wanted && edit_in_text_field(*of, platform)) return;
  const Typing typing = words_wanted ? Typing::Words : of->sort == FieldSort::Date ? Typing::Date : Typing::Number;
  const bool plain = of->kind == Kind::Number || of->kind == Kind::Money;
  const Unit* unit = plain ? nullptr : &preferred_unit(of->kind, system);
  if (of->kind == Kind::Distance && unit_) unit = unit_;
  const std::string label = of->field.label.empty() ? words::value() : std::string(of->field.label);
  keypad_.open(of->path, label, of->kind, of->text, unit, of->range, typing);
  form_.scroll_to(of->path);
}

void EntryEditor::edit_day() {
  keypad_.open(day_path, words::day(), Kind::Number, draft_.day().substr(0, 10), nullptr, "", Typing::Date);
}

void EntryEditor::carry_out(const FormAction& action, Platform& platform, System system) {
  switch (action.what) {
    case FormAction::What::Edit:
      return edit(action.path, platform, system);
    case FormAction::What::Set:
      return set(action.path, action.text);
    case FormAction::What::AddItem:
      records::add_item(draft_.record, action.path, records::entry_kinds());
      break;
    case FormAction::What::RemoveItem:
      keypad_.close();
      records::remove_item(draft_.record, action.path, action.index);
      break;
    case FormAction::What::RemoveField:
      keypad_.close();
      records::remove_field(draft_.record, action.path);
      break;
    case FormAction::What::LayOut:
    case FormAction::What::None:
      return;
  }
  stale_ = true;
}

void EntryEditor::save() {
  keypad_.close();
  tried_ = true;
  look_again();
  at_once_ = false;
  finished_ = findings_.empty();
}

std::optional<records::Entry> EntryEditor::take_finished() {
  if (!active_ || !finished_) return std::nullopt;
  records::Entry entry = draft_;
  close();
  return entry;
}

// When it was, if that wasn't today.
void EntryEditor::draw_day(Ui& ui) {
  if (draft_.kind() == "facts") return;
  Ui::FieldLook look;
  look.label = words::day();
  look.text = draft_.day().substr(0, 10);
  look.active = keypad_.path() == day_path;
  for (const Finding& finding : findings_)
    if (finding.field == "day") look.error = finding.text;
  ui.gap(8);
  if (ui.field("entry day", look)) edit_day();
}

void EntryEditor::draw_refusals(Ui& ui) {
  if (tried_) draw_remarks(ui, findings_);
}

void EntryEditor::draw(Ui& ui, Platform& platform, System system) {
  refresh();
  if (open_first_ && !fields_.empty()) edit(fields_.front().path, platform, system);
  open_first_ = false;
  draw_refusals(ui);
  carry_out(form_.draw(ui, fields_, plan_, findings_, keypad_.path(), system), platform, system);
  draw_day(ui);
  ui.gap(12);
  if (ui.button("discard entry", words::discard(), Look::Quiet)) close();
  ui.gap(24);
}

float EntryEditor::bottom_height(const Ui& ui) const {
  return keypad_.is_open() ? keypad_.height(ui) : std::max(64.0f, ui.target()) + 16;
}

// Next goes through the fields; behind the last one, and with Done where one number is all, the entry is saved.
void EntryEditor::take_typed(Platform& platform, System system, KeypadEvent event) {
  const std::string path = keypad_.path();
  const FormField* const of = field(path);
  const std::string before = path == day_path ? draft_.day() : of ? of->text : std::string();
  if (keypad_.text() != before) set(path, keypad_.text());
  const std::string following = event == KeypadEvent::Next && path != day_path ? form_.after(path) : std::string();
  const bool over = event == KeypadEvent::Close || (event == KeypadEvent::Next && following.empty());
  if (!following.empty()) edit(following, platform, system);
  if (!over) return;
  const bool nothing = keypad_.text().empty();
  if (at_once_) return nothing ? close() : save();
  keypad_.close();
}

void EntryEditor::draw_bottom(Ui& ui, Platform& platform, System system, float height) {
  if (!keypad_.is_open()) {
    if (ui.button("save entry", words::save(), Look::Main)) save();
    return;
  }
  const bool given_up = ImGui::IsKeyPressed(ImGuiKey_Escape, false);
  const KeypadEvent event = keypad_.draw(ui, height);
  if (given_up && at_once_) return close();
  if (event != KeypadEvent::None) take_typed(platform, system, event);
}

}  // namespace camside::screens
