#include "records/form.hpp"

#include <algorithm>
#include <utility>

#include "fields/path.hpp"
#include "records/field_reader.hpp"
#include "records/file_remarks.hpp"
#include "records/json_path.hpp"
#include "records/json_visitor.hpp"
#include "records/nearest.hpp"
#include "units/format.hpp"
#include "units/parse.hpp"

namespace camside::records {

namespace {

class FormBuilder final : public JsonVisitor {
 public:
  explicit FormBuilder(const Json& entered) : JsonVisitor(entered) {}
  std::vector<FormField> fields;

 private:
  void on_number(const Field& f, const NumberRef& n) override {
    FormField& form = add(f, FieldSort::Number);
    form.kind = n.kind;
    form.whole = n.whole;
    form.range = range_text(f, n.kind);
    if (f.required || form.entered || !n.has()) return;
    form.preset_base = n.get();
    form.preset = format_full(n.get(), units_of(n.kind).front());
  }
  void on_text(const Field& f, const TextRef& t) override {
    FormField& form = add(f, FieldSort::Text);
    if (!form.entered && t.has()) form.preset = t.get();
  }
  void on_flag(const Field& f, const FlagRef& r) override {
    FormField& form = add(f, FieldSort::Flag);
    if (!f.required && !form.entered && r.has()) form.preset = r.get() ? "true" : "false";
  }
  void on_date(const Field& f, const DateRef& r) override {
    FormField& form = add(f, FieldSort::Date);
    if (!f.required && !form.entered && r.has() && r.get().ok()) form.preset = format_date(r.get());
  }
  void on_choice(const Field& f, const ChoiceRef& c) override {
    FormField& form = add(f, FieldSort::Choice);
    form.choices = c.choices;
    if (!f.required && !form.entered && c.get() >= 0) form.preset = c.choices[static_cast<std::size_t>(c.get())].name;
  }

  void on_group(const Field& f, const GroupRef& g) override {
    const Json* value = find(f);
    FormField& form = append(path(), f, FieldSort::Group, value);
    form.optional_group = g.optional;
    if (!g.has()) g.make();
    enter(value == nullptr ? &nothing() : value);
    ++depth_;
    g.describe(*this);
    --depth_;
    leave();
  }

  void on_list(const Field& f, const ListRef& l) override {
    const Json* value = find(f);
    const bool there = value != nullptr && value->is_array();
    if (there) l.resize(value->size());
    FormField& form = append(path(), f, FieldSort::List, value);
    form.of_groups = l.of_groups;
    form.count = l.size();
    ++depth_;
    for (std::size_t i = 0; i < l.size(); ++i) {
      enter(there ? &(*value)[i] : &nothing());
      visit_item(l, i);
      leave();
    }
    --depth_;
  }

  FormField& add(const Field& f, FieldSort sort) {
    const Json* value = find(f);
    if (value == &nothing()) value = nullptr;
    FormField& form = append(path_of(f), f, sort, value);
    if (value != nullptr) form.text = text_of(*value);
    return form;
  }
  FormField& append(std::string path, const Field& f, FieldSort sort, const Json* value) {
    FormField form;
    form.path = std::move(path);
    form.field = f;
    form.sort = sort;
    form.depth = depth_;
    form.entered = value != nullptr;
    return fields.emplace_back(std::move(form));
  }

  int depth_ = 0;
};

// How a typed text of this field stands in JSON.
Json json_of(const FormField& form, const std::string& text, const Unit* unit) {
  const bool plain = form.kind == Kind::Number || units_of(form.kind).front().symbol.empty();
  if (form.sort == FieldSort::Number && plain) return number_from(text);
  if (form.sort == FieldSort::Number && unit != nullptr) {
    const auto read = parse(form.kind, text);
    if (!read && read.error().fault == ParseFault::NeedsUnit) return Json(text + " " + std::string(unit->symbol));
  }
  if (form.sort == FieldSort::Flag && (text == "true" || text == "yes")) return Json(true);
  if (form.sort == FieldSort::Flag && (text == "false" || text == "no")) return Json(false);
  return Json(text);
}

Finding unknown_path(std::string_view path, const std::vector<FormField>& form) {
  std::vector<std::string_view> known;
  known.reserve(form.size());
  for (const FormField& field : form) known.emplace_back(field.path);
  return remarks::no_such_field(std::string(path), nearest_name(path, known));
}

const FormField* field_at(const std::vector<FormField>& form, std::string_view path) {
  const auto it = std::find_if(form.begin(), form.end(), [&](const FormField& f) { return f.path == path; });
  return it == form.end() ? nullptr : &*it;
}

std::optional<Finding> finding_at(const Record& record, const RecordKind& kind, std::string_view path) {
  const std::unique_ptr<AnyInput> input = kind.make();
  Findings findings = read_fields(record.entered(), *input);
  const auto fields = [&](FieldVisitor& v) { input->describe_fields(v); };
  const Findings of_range = check_fields(fields);
  findings.insert(findings.end(), of_range.begin(), of_range.end());
  const auto it = std::find_if(findings.begin(), findings.end(), [&](const Finding& f) { return f.field == path; });
  return it == findings.end() ? std::nullopt : std::optional(*it);
}

}  // namespace

std::vector<FormField> form_of(const Record& record, std::span<const RecordKind> among) {
  const RecordKind* kind = find_kind(record.kind(), among);
  if (kind == nullptr) return {};
  const std::unique_ptr<AnyInput> input = kind->make();
  read_fields(record.entered(), *input);  // what a calculator asks for may depend on what was entered before
  FormBuilder builder(record.entered());
  input->describe_fields(builder);
  return std::move(builder.fields);
}

std::optional<Finding> set_text(Record& record, std::string_view path, std::string_view text, const Unit* unit,
                                std::span<const RecordKind> among) {
  const RecordKind* kind = find_kind(record.kind(), among);
  const std::vector<FormField> form = form_of(record, among);
  const FormField* field = field_at(form, path);
  if (kind == nullptr || field == nullptr || field->sort == FieldSort::Group || field->sort == FieldSort::List)
    return unknown_path(path, form);
  if (text.empty() && !path.ends_with(']')) {
    take_out(record.entered(), path);
    return finding_at(record, *kind, path);
  }
  Json* place = place_at(record.entered(), path);
  if (place == nullptr) return unknown_path(path, form);
  *place = json_of(*field, std::string(text), unit);
  return finding_at(record, *kind, path);
}

std::string add_item(Record& record, std::string_view list_path, std::span<const RecordKind> among) {
  const std::vector<FormField> form = form_of(record, among);
  const FormField* field = field_at(form, list_path);
  if (field == nullptr || field->sort != FieldSort::List) return "";
  Json* list = place_at(record.entered(), list_path);
  if (list == nullptr) return "";
  if (!list->is_array()) *list = Json::array();
  list->push_back(field->of_groups ? Json::object() : Json(""));
  return item_path(list_path, list->size() - 1);
}

bool remove_item(Record& record, std::string_view list_path, std::size_t index) {
  return take_out(record.entered(), item_path(list_path, index));
}

bool remove_field(Record& record, std::string_view path) {
  return take_out(record.entered(), path);
}

}  // namespace camside::records
