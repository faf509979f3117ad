#include "screens/widgets/entry_form.hpp"

#include <algorithm>

#include "fields/path.hpp"
#include "screens/widgets/shown.hpp"
#include "screens/words.hpp"

namespace camside::screens {

using records::FieldSort;
using records::FormField;

struct EntryForm::Frame {
  Ui& ui;
  const std::vector<FormField>& form;
  const Findings& findings;
  const FormPlan& plan;
  std::string_view editing;
  System system;
  FormAction action;
};

namespace {

std::string_view top_of(std::string_view path) {
  return path.substr(0, path.find_first_of(".["));
}

bool inside(std::string_view path, std::string_view parent) {
  return path.size() > parent.size() && path.starts_with(parent) &&
         (path[parent.size()] == '.' || path[parent.size()] == '[');
}

std::size_t end_of(const std::vector<FormField>& form, std::size_t i) {
  std::size_t end = i + 1;
  while (end < form.size() && inside(form[end].path, form[i].path)) ++end;
  return end;
}

std::string error_at(const Findings& findings, std::string_view path) {
  for (const Finding& f : findings)
    if (f.field == path && f.severity == Severity::Refusal && f.number != 201)
      return f.remedy.empty() ? f.text : f.text + ". " + f.remedy;
  return {};
}

// What is taken while nothing is entered, in the unit people read.
std::string preset_text(const FormField& f, System system) {
  const bool plain = !f.preset_base || f.kind == Kind::Number || f.kind == Kind::Money;
  return plain ? f.preset : shown(f.kind, *f.preset_base, system);
}

std::string label_of(const FormField& f) {
  return f.field.label.empty() ? words::value() : std::string(f.field.label);
}

bool takes_keypad(const FormField& f) {
  return f.sort == FieldSort::Number || f.sort == FieldSort::Date || f.sort == FieldSort::Text;
}

bool needed(const FormField& f) {
  return f.field.required || f.entered;
}

}  // namespace

void EntryForm::number(Frame& f, const FormField& field, float width, const std::string& label, bool bare) {
  Ui::FieldLook look;
  look.label = label;
  look.text = field.text;
  look.preset = preset_text(field, f.system);
  look.error = error_at(f.findings, field.path);
  look.active = f.editing == field.path;
  look.required = field.field.required;
  look.bare = bare;
  look.width = width;
  order_.push_back(field.path);
  if (!scroll_to_.empty() && field.path == scroll_to_) ImGui::SetScrollHereY(0.4f);
  if (field.text.empty() && field.field.required) empty_.push_back(field.path);
  if (f.ui.field(field.path, look)) f.action = {FormAction::What::Edit, field.path, {}, 0};
}

void EntryForm::number(Frame& f, const FormField& field) {
  number(f, field, 0, label_of(field), false);
}

// Once taken, a choice of several is folded to one row that says what was taken.
void EntryForm::choice(Frame& f, const FormField& field) {
  std::vector<std::string> labels;
  int chosen = -1;
  for (std::size_t i = 0; i < field.choices.size(); ++i) {
    labels.emplace_back(field.choices[i].label);
    const std::string& now = field.text.empty() ? field.preset : field.text;
    if (field.choices[i].name == now) chosen = static_cast<int>(i);
  }
  const std::string label(field.field.label);
  if (field.entered && chosen >= 0 && unfolded_ != field.path &&
      f.ui.columns_of(labels) < static_cast<int>(labels.size())) {
    if (f.ui.row(field.path, label, labels[static_cast<std::size_t>(chosen)])) unfolded_ = field.path;
    return;
  }
  const int pressed = f.ui.segmented(field.path, label, labels, chosen);
  if (pressed < 0) return;
  unfolded_.clear();
  f.action = {FormAction::What::Set, field.path, std::string(field.choices[static_cast<std::size_t>(pressed)].name), 0};
}

void EntryForm::flag(Frame& f, const FormField& field) {
  const std::string labels[2] = {words::yes(), words::no()};
  const std::string& now = field.text.empty() ? field.preset : field.text;
  const int chosen = now == "true" ? 0 : now == "false" ? 1 : -1;
  const int pressed = f.ui.segmented(field.path, std::string(field.field.label), labels, chosen);
  if (pressed >= 0) f.action = {FormAction::What::Set, field.path, pressed == 0 ? "true" : "false", 0};
}

void EntryForm::one(Frame& f, std::size_t i) {
  const FormField& field = f.form[i];
  switch (field.sort) {
    case FieldSort::Choice:
      choice(f, field);
      break;
    case FieldSort::Flag:
      flag(f, field);
      break;
    case FieldSort::Number:
    case FieldSort::Date:
    case FieldSort::Text:
      number(f, field);
      break;
    case FieldSort::Group:
    case FieldSort::List:
      break;
  }
}

std::size_t EntryForm::group(Frame& f, std::size_t i) {
  const FormField& field = f.form[i];
  const std::size_t end = end_of(f.form, i);
  const bool shown = !field.optional_group || field.entered || opened_.contains(field.path);
  f.ui.gap(12);
  f.ui.heading(std::string(field.field.label));
  if (!field.field.help.empty()) f.ui.quiet(std::string(field.field.help));
  if (!shown) {
    if (f.ui.button(field.path + " add", std::string(words::add_group()) + " – " + std::string(field.field.label)))
      opened_.insert(field.path);
    return end;
  }
  for (std::size_t k = i + 1; k < end;) {
    if (f.form[k].sort == FieldSort::Group)
      k = group(f, k);
    else if (f.form[k].sort == FieldSort::List)
      k = list(f, k);
    else
      one(f, k++);
  }
  if (field.optional_group &&
      f.ui.button(field.path + " remove", std::string(words::remove()) + " – " + std::string(field.field.label),
                  Look::Quiet)) {
    opened_.erase(field.path);
    if (field.entered) f.action = {FormAction::What::RemoveField, field.path, {}, 0};
  }
  return end;
}

bool EntryForm::in_row(const Frame& f, const FormField& list, const FormField& field) const {
  if (!takes_keypad(field)) return false;
  const MarkedList* const marked = f.plan.marked_list(list.path);
  if (!marked || field.entered || more_) return true;
  const std::string_view name = std::string_view(field.path).substr(field.path.rfind('.') + 1);
  const bool column = std::find(marked->columns.begin(), marked->columns.end(), name) != marked->columns.end();
  return column && !(f.plan.hidden && f.plan.hidden(list.path + "." + std::string(name), f.form));
}

void EntryForm::remove_cross(Frame& f, const FormField& list, std::size_t index) {
  const std::string name =
      std::string(words::remove()) + " " + std::string(list.field.label) + " " + std::to_string(index + 1);
  const float side = f.ui.target();
  if (f.ui.area(list.path + std::to_string(index) + "x", Role::Button, name, {side, side},
                [&](const Area& at, bool pressed) {
                  const Pen pen = f.ui.pen(f.ui.theme().ground);
                  const ImU32 ink = pressed ? f.ui.theme().outside : f.ui.theme().quiet;
                  const float r = 7;
                  const ImVec2 c = at.centre();
                  pen.line({c.x - r, c.y - r}, {c.x + r, c.y + r}, ink);
                  pen.line({c.x - r, c.y + r}, {c.x + r, c.y - r}, ink);
                }))
    f.action = {FormAction::What::RemoveItem, list.path, {}, index};
}

// The plain fields of an item stand side by side, two or three to a row, the cross behind the first row. A list of
// marks has its labels once, above the first item.
void EntryForm::item_row(Frame& f, const FormField& list, const Fields& fields, std::size_t index) {
  const float gap = 8;
  const float room = f.ui.width() - f.ui.target() - gap;
  const std::size_t most = room > f.ui.px(420) ? 3 : room > f.ui.px(190) ? 2 : 1;
  const std::size_t columns = std::max<std::size_t>(1, std::min(fields.size(), most));
  const float each = (room - gap * static_cast<float>(columns - 1)) / static_cast<float>(columns);
  const bool bare = index > 0 && fields.size() <= columns && f.plan.marked_list(list.path);
  for (std::size_t i = 0; i < fields.size(); ++i) {
    if (i % columns != 0) ImGui::SameLine(0, gap);
    number(f, *fields[i], each, label_of(*fields[i]) + " " + std::to_string(index + 1), bare);
    if (i + 1 != columns) continue;
    ImGui::SameLine(0, gap);
    if (!bare) ImGui::SetCursorPosY(ImGui::GetCursorPosY() + f.ui.px(16) + 6);
    remove_cross(f, list, index);
  }
}

void EntryForm::item_rest(Frame& f, std::size_t first, std::size_t last) {
  for (std::size_t k = first; k < last;) {
    if (f.form[k].sort == FieldSort::Group)
      k = group(f, k);
    else if (f.form[k].sort == FieldSort::List)
      k = list(f, k);
    else {
      if (!takes_keypad(f.form[k])) one(f, k);
      ++k;
    }
  }
}

void EntryForm::item(Frame& f, const FormField& of, std::size_t first, std::size_t last, std::size_t index) {
  Fields row;
  for (std::size_t k = first; k < last; ++k) {
    const FormField& field = f.form[k];
    // Fields of groups and lists inside are drawn by these.
    const bool own =
        field.path.find_first_of(".[", of.path.size() + 1 + std::to_string(index).size() + 2) == std::string::npos;
    if (own && in_row(f, of, field)) row.push_back(&field);
  }
  item_row(f, of, row, index);
  item_rest(f, first, last);
}

void EntryForm::offer_marks(Frame& f, const FormField& list) {
  const MarkedList* const marked = f.plan.marked_list(list.path);
  if (!marked || marked->counts.empty() || list.count > 0) return;
  std::vector<std::string> labels;
  for (const int n : marked->counts) labels.push_back(words::marks(n));
  const int pressed = f.ui.segmented(list.path + " marks", words::lay_out_marks(), labels, -1);
  if (pressed >= 0)
    f.action = {FormAction::What::LayOut,
                list.path,
                {},
                static_cast<std::size_t>(marked->counts[static_cast<std::size_t>(pressed)])};
}

std::size_t EntryForm::list(Frame& f, std::size_t i) {
  const FormField& field = f.form[i];
  const std::size_t end = end_of(f.form, i);
  f.ui.gap(12);
  f.ui.heading(std::string(field.field.label));
  if (!field.field.help.empty()) f.ui.quiet(std::string(field.field.help));
  std::size_t k = i + 1;
  for (std::size_t index = 0; index < field.count; ++index) {
    const std::string prefix = item_path(field.path, index);
    const std::size_t first = k;
    while (k < end && (f.form[k].path == prefix || inside(f.form[k].path, prefix))) ++k;
    item(f, field, first, k, index);
  }
  offer_marks(f, field);
  if (f.ui.button(field.path + " add", std::string(words::add_item()) + " – " + std::string(field.field.label)))
    f.action = {FormAction::What::AddItem, field.path, {}, 0};
  return end;
}

void EntryForm::section(Frame& f, std::string_view top) {
  for (std::size_t i = 0; i < f.form.size();) {
    if (f.form[i].path != top) {
      ++i;
      continue;
    }
    if (f.form[i].sort == FieldSort::Group)
      i = group(f, i);
    else if (f.form[i].sort == FieldSort::List)
      i = list(f, i);
    else
      one(f, i++);
  }
}

FormAction EntryForm::draw(Ui& ui, const std::vector<FormField>& form, const FormPlan& plan, const Findings& findings,
                           std::string_view editing, System system) {
  order_.clear();
  empty_.clear();
  Frame f{ui, form, findings, plan, editing, system, {}};
  const auto hidden = [&](std::string_view top) { return plan.hidden && plan.hidden(top, form); };
  const auto in_front = [&](std::string_view top) {
    return std::find(plan.front.begin(), plan.front.end(), top) != plan.front.end();
  };
  for (const std::string_view top : plan.front)
    if (!hidden(top)) section(f, top);
  std::vector<std::string_view> rest;
  for (const FormField& field : form) {
    const std::string_view top = top_of(field.path);
    if (field.path == top && !in_front(top) && !hidden(top)) rest.push_back(top);
  }
  bool any_behind = false;
  for (const std::string_view top : rest) {
    const auto at = std::find_if(form.begin(), form.end(), [&](const FormField& x) { return x.path == top; });
    if (more_ || (plan.front.empty() && needed(*at)) || (at->field.required && !at->entered))
      section(f, top);
    else
      any_behind = true;
  }
  if (!rest.empty() && (any_behind || more_)) {
    ui.gap(8);
    if (ui.button("more entries", more_ ? words::fewer_entries() : words::more_entries())) more_ = !more_;
  }
  return f.action;
}

const MarkedList* FormPlan::marked_list(std::string_view path) const {
  const auto at = std::find_if(marked.begin(), marked.end(), [&](const MarkedList& m) { return m.list == path; });
  return at == marked.end() ? nullptr : &*at;
}

std::string EntryForm::after(std::string_view path) const {
  const auto at = std::find(order_.begin(), order_.end(), path);
  return at == order_.end() || at + 1 == order_.end() ? std::string() : *(at + 1);
}

std::string EntryForm::first_empty() const {
  if (!empty_.empty()) return empty_.front();
  return {};
}

}  // namespace camside::screens
