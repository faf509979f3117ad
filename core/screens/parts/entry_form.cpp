#include "screens/parts/entry_form.hpp"

#include <algorithm>

#include "screens/words.hpp"

namespace camside::screens {

using records::FieldSort;
using records::FormField;

struct EntryForm::Frame {
  Ui& ui;
  const std::vector<FormField>& form;
  const Findings& findings;
  std::string_view editing;
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

bool takes_keypad(const FormField& f) {
  return f.sort == FieldSort::Number || f.sort == FieldSort::Date || f.sort == FieldSort::Text;
}

bool needed(const FormField& f) {
  return f.field.required || f.entered;
}

}  // namespace

void EntryForm::number(Frame& f, const FormField& field, float width) {
  Ui::FieldLook look;
  look.label = field.field.label.empty() ? "Value" : std::string(field.field.label);
  look.text = field.text;
  look.preset = field.preset;
  look.error = error_at(f.findings, field.path);
  look.active = f.editing == field.path;
  look.required = field.field.required;
  look.width = width;
  order_.push_back(field.path);
  if (!scroll_to_.empty() && field.path == scroll_to_) ImGui::SetScrollHereY(0.4f);
  if (field.text.empty() && field.field.required) empty_.push_back(field.path);
  if (f.ui.field(field.path, look)) f.action = {FormAction::What::Edit, field.path, {}, 0};
}

void EntryForm::choice(Frame& f, const FormField& field) {
  std::vector<std::string> labels;
  int chosen = -1;
  for (std::size_t i = 0; i < field.choices.size(); ++i) {
    labels.emplace_back(field.choices[i].label);
    const std::string& now = field.text.empty() ? field.preset : field.text;
    if (field.choices[i].name == now) chosen = static_cast<int>(i);
  }
  const int pressed = f.ui.segmented(field.path, std::string(field.field.label), labels, chosen);
  if (pressed >= 0)
    f.action = {FormAction::What::Set, field.path, std::string(field.choices[static_cast<std::size_t>(pressed)].name),
                0};
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
      number(f, field, 0);
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

// The plain fields of an item stand side by side, two or three to a row; what is larger follows below.
void EntryForm::item(Frame& f, const FormField& of, std::size_t first, std::size_t last, std::size_t index) {
  const float gap = 8;
  const float remove_width = f.ui.target();
  std::size_t plain = 0;
  for (std::size_t k = first; k < last; ++k) plain += takes_keypad(f.form[k]) ? 1U : 0U;
  const float room = f.ui.width() - remove_width - gap;
  const std::size_t columns = std::max<std::size_t>(1, std::min<std::size_t>(plain, room > f.ui.px(420) ? 3 : 2));
  const float each = (room - gap * static_cast<float>(columns - 1)) / static_cast<float>(columns);
  std::size_t placed = 0;
  for (std::size_t k = first; k < last; ++k) {
    if (!takes_keypad(f.form[k])) continue;
    if (placed % columns != 0) ImGui::SameLine(0, gap);
    number(f, f.form[k], each);
    if (++placed == columns) {
      ImGui::SameLine(0, gap);
      ImGui::SetCursorPosY(ImGui::GetCursorPosY() + f.ui.px(16) + 6);
      const std::string name =
          std::string(words::remove()) + " " + std::string(of.field.label) + " " + std::to_string(index + 1);
      if (f.ui.area(of.path + std::to_string(index) + "x", Role::Button, name, {remove_width, f.ui.target()},
                    [&](const Area& at, bool pressed) {
                      const Pen pen = f.ui.pen(f.ui.theme().ground);
                      const ImU32 ink = pressed ? f.ui.theme().outside : f.ui.theme().quiet;
                      const float r = 7;
                      const ImVec2 c = at.centre();
                      pen.line({c.x - r, c.y - r}, {c.x + r, c.y + r}, ink);
                      pen.line({c.x - r, c.y + r}, {c.x + r, c.y - r}, ink);
                    }))
        f.action = {FormAction::What::RemoveItem, of.path, {}, index};
    }
  }
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

std::size_t EntryForm::list(Frame& f, std::size_t i) {
  const FormField& field = f.form[i];
  const std::size_t end = end_of(f.form, i);
  f.ui.gap(12);
  f.ui.heading(std::string(field.field.label));
  if (!field.field.help.empty()) f.ui.quiet(std::string(field.field.help));
  std::size_t k = i + 1;
  for (std::size_t index = 0; index < field.count; ++index) {
    const std::string prefix = field.path + "[" + std::to_string(index) + "]";
    const std::size_t first = k;
    while (k < end && (f.form[k].path == prefix || inside(f.form[k].path, prefix))) ++k;
    item(f, field, first, k, index);
  }
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
                           std::string_view editing) {
  order_.clear();
  empty_.clear();
  Frame f{ui, form, findings, editing, {}};
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

std::string EntryForm::after(std::string_view path) const {
  const auto at = std::find(order_.begin(), order_.end(), path);
  return at == order_.end() || at + 1 == order_.end() ? std::string() : *(at + 1);
}

std::string EntryForm::first_empty() const {
  if (!empty_.empty()) return empty_.front();
  return {};
}

}  // namespace camside::screens
