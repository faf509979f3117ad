#include "records/field_reader.hpp"

#include <cmath>
#include <limits>
#include <utility>

#include "base/harmless.hpp"
#include "fields/field_remarks.hpp"
#include "fields/path.hpp"
#include "records/file_remarks.hpp"
#include "records/json_visitor.hpp"
#include "records/nearest.hpp"
#include "units/format.hpp"
#include "units/parse.hpp"

namespace camside::records {

namespace {

bool fits_int(double v) {
  return v >= std::numeric_limits<int>::min() && v <= std::numeric_limits<int>::max();
}

// Numbers of a kind whose base unit has no symbol (plain numbers, money) may stand in JSON as numbers.
bool plain(Kind kind) {
  return kind == Kind::Number || units_of(kind).front().symbol.empty();
}

std::string with_base_unit(const std::string& digits, Kind kind) {
  return digits + " " + std::string(units_of(kind).front().symbol);
}

std::string_view wanted_type(Kind kind) {
  return plain(kind) ? "a number" : "a text with its unit";
}

std::string names_of(Choices choices) {
  std::vector<std::string_view> names;
  for (const Choice& c : choices) names.push_back(c.name);
  return joined_names(names);
}

class FieldReader final : public JsonVisitor {
 public:
  explicit FieldReader(const Json& entered) : JsonVisitor(entered) {}
  Findings findings;

  // Of the object just read, which stands at `where`.
  void note_unknown(const std::string& where) {
    for (const std::string_view name : unasked()) {
      std::string field = where.empty() ? std::string(name) : where + "." + std::string(name);
      findings.push_back(remarks::unknown_field(std::move(field), nearest_name(name, asked())));
    }
  }

 private:
  void on_number(const Field& f, const NumberRef& n) override {
    const Json* value = present(f);
    if (value == nullptr) return;
    if (is_number(*value) && !plain(n.kind))
      return add(remarks::needs_a_unit(path_of(f), f.label, text_of(*value), with_base_unit(text_of(*value), n.kind)));
    if (!is_number(*value) && !value->is_string()) return wrong(f, *value, wanted_type(n.kind));
    const std::optional<double> base = is_number(*value) ? number_of(*value) : parsed(f, n.kind, text_of(*value));
    if (!base) return;
    if (n.whole && (*base != std::floor(*base) || !fits_int(*base)))
      return add(remarks::not_whole(path_of(f), f.label, text_of(*value)));
    n.set(*base);
  }

  std::optional<double> parsed(const Field& f, Kind kind, const std::string& text) {
    ParseOptions options;
    if (plain(kind)) options.default_unit = &units_of(kind).front();
    const auto entered = parse(kind, text, options);
    if (entered) return entered->base;
    const ParseRefusal& refusal = entered.error();
    add(remarks::unreadable(path_of(f), f.label, text, refusal.reason, refusal.remedy));
    return std::nullopt;
  }

  void on_text(const Field& f, const TextRef& t) override {
    const Json* value = present(f);
    if (value == nullptr) return;
    if (!value->is_string()) return wrong(f, *value, "a text");
    t.set(harmless(value->get_ref<const std::string&>()));
  }

  void on_flag(const Field& f, const FlagRef& r) override {
    const Json* value = present(f);
    if (value == nullptr) return;
    if (!value->is_boolean()) return wrong(f, *value, "true or false");
    r.set(value->get<bool>());
  }

  void on_date(const Field& f, const DateRef& r) override {
    const Json* value = present(f);
    if (value == nullptr) return;
    if (!value->is_string()) return wrong(f, *value, "a date such as 2003-05-14, as a text");
    const auto date = parse_date(value->get<std::string>());
    if (date) return r.set(*date);
    add(remarks::unreadable(path_of(f), f.label, text_of(*value), date.error().reason, date.error().remedy));
  }

  void on_choice(const Field& f, const ChoiceRef& c) override {
    const Json* value = present(f);
    if (value == nullptr) return;
    if (!value->is_string()) return wrong(f, *value, "one of its words, as a text");
    for (std::size_t i = 0; i < c.choices.size(); ++i) {
      if (c.choices[i].name == value->get_ref<const std::string&>()) return c.set(static_cast<int>(i));
    }
    add(remarks::not_a_choice(path_of(f), f.label, text_of(*value), names_of(c.choices)));
  }

  void on_group(const Field& f, const GroupRef& g) override {
    const Json* value = find(f);
    if (value == nullptr && g.optional) {
      if (f.required && !g.has()) add(remarks::missing(path(), f.label));
      return;
    }
    if (value != nullptr && !value->is_object()) return wrong_here(f, *value, "an object");
    if (!g.has()) g.make();
    enter(value == nullptr ? &nothing() : value);
    g.describe(*this);
    note_unknown(path());
    leave();
  }

  void on_list(const Field& f, const ListRef& l) override {
    const Json* value = find(f);
    if (value != nullptr && !value->is_array()) return wrong_here(f, *value, "a list");
    if (value != nullptr) {
      l.resize(0);
      l.resize(value->size());
      for (std::size_t i = 0; i < value->size(); ++i) read_item((*value)[i], l, i);
    }
    if (f.required && l.size() == 0) add(remarks::missing(path(), f.label));
  }

  void read_item(const Json& item, const ListRef& l, std::size_t i) {
    const std::string where = item_path(path(), i);
    if (l.of_groups && !item.is_object())
      return add(remarks::wrong_type(where, "An item of the list", name_of_type(item), "an object"));
    enter(&item);
    visit_item(l, i);
    if (l.of_groups) note_unknown(where);
    leave();
  }

  // The field's value; says so when it is missing and must not be.
  const Json* present(const Field& f) {
    const Json* value = find(f);
    if (value == nullptr && f.required) add(remarks::missing(path_of(f), f.label));
    return value;
  }
  void wrong(const Field& f, const Json& value, std::string_view wanted) {
    add(remarks::wrong_type(path_of(f), f.label, name_of_type(value), wanted));
  }
  void wrong_here(const Field& f, const Json& value, std::string_view wanted) {
    add(remarks::wrong_type(path(), f.label, name_of_type(value), wanted));
  }
  void add(Finding finding) { findings.push_back(std::move(finding)); }
};

}  // namespace

Findings read_fields(const Json& entered, AnyInput& input) {
  FieldReader reader(entered);
  input.describe_fields(reader);
  reader.note_unknown("");
  return std::move(reader.findings);
}

}  // namespace camside::records
