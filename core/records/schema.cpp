#include "records/schema.hpp"

#include <fmt/format.h>

#include <cmath>
#include <utility>
#include <vector>

#include "records/measurement.hpp"
#include "records/schema_parts.hpp"
#include "records/strict_json.hpp"
#include "units/format.hpp"

namespace camside::records {

namespace {

constexpr const char* day_pattern = "^[0-9]{4}-[0-9]{2}-[0-9]{2}$";

bool plain(Kind kind) {
  return units_of(kind).front().symbol.empty();
}

// Characters with a meaning in a regular expression are put in a class of their own, which every dialect reads alike.
std::string literal(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (c == '\\' || c == '^')
      out += std::string("\\") + c;
    else if (std::string_view(".$|?*+()[]{}/").find(c) != std::string_view::npos)
      out += std::string("[") + c + "]";
    else
      out += c;
  }
  return out;
}

std::string any_unit(Kind kind) {
  std::string units;
  for (const Unit& unit : units_of(kind)) {
    units += (units.empty() ? "" : "|") + literal(unit.symbol);
    for (const std::string_view alias : unit.aliases) units += "|" + literal(alias);
  }
  return units;
}

// A number as people write it: sign, digits with a point or a comma, groups, fractions, a power of ten.
constexpr const char* number_pattern = "[0-9.,½¼¾⅛⅜⅝⅞⅓⅔][0-9., /½¼¾⅛⅜⅝⅞⅓⅔-]*([eE][+-]?[0-9]+)?";

std::string pattern_of(Kind kind) {
  if (plain(kind)) return fmt::format("^ *[+−-]? *{} *$", number_pattern);
  return fmt::format("^ *[+−-]? *({} *({}) *)+$", number_pattern, any_unit(kind));
}

Json unit_list(Kind kind) {
  Json units = Json::array();
  for (const Unit& unit : units_of(kind)) units.push_back(std::string(unit.symbol));
  return units;
}

std::string sentence(std::string_view text) {
  std::string out(text);
  if (!out.empty() && std::string_view(".?!").find(out.back()) == std::string_view::npos) out += '.';
  return out;
}

class SchemaWriter final : public FieldVisitor {
 public:
  SchemaWriter() { objects_.push_back(empty_object()); }

  Json done() {
    Json object = std::move(objects_.back());
    if (object["required"].empty()) object.erase("required");
    return object;
  }

 private:
  static Json empty_object() {
    return Json{{"type", "object"}, {"properties", Json::object()}, {"required", Json::array()}};
  }

  void on_number(const Field& f, const NumberRef& n) override {
    Json schema = words_of(f);
    if (plain(n.kind)) {
      schema["type"] = Json::array({n.whole ? "integer" : "number", "string"});
      add_bounds(schema, f);
      schema["unit"] = Json::array();
    } else {
      schema["type"] = "string";
      schema["unit"] = unit_list(n.kind);
    }
    schema["pattern"] = pattern_of(n.kind);
    describe_number(schema, f, n);
    put(f, std::move(schema));
  }

  static void describe_number(Json& schema, const Field& f, const NumberRef& n) {
    std::string text = schema["description"].get<std::string>();
    const std::string range = range_text(f, n.kind);
    if (!plain(n.kind)) text += fmt::format(" A number with its unit: {}.", joined(unit_list(n.kind)));
    if (n.whole) text += " A whole number.";
    if (range != "any value") text += fmt::format(" Allowed: {}.", range);
    schema["description"] = text;
    if (f.required || !n.has()) return;
    schema["default"] = plain(n.kind) ? Json(n.get()) : Json(format_full(n.get(), units_of(n.kind).front()));
  }

  static void add_bounds(Json& schema, const Field& f) {
    if (std::isfinite(f.low)) schema[f.low_open ? "exclusiveMinimum" : "minimum"] = f.low;
    if (std::isfinite(f.high)) schema[f.high_open ? "exclusiveMaximum" : "maximum"] = f.high;
  }

  void on_text(const Field& f, const TextRef&) override {
    Json schema = words_of(f);
    schema["type"] = "string";
    if (f.required) schema["minLength"] = 1;
    put(f, std::move(schema));
  }
  void on_flag(const Field& f, const FlagRef& r) override {
    Json schema = words_of(f);
    schema["type"] = "boolean";
    if (!f.required && r.has()) schema["default"] = r.get();
    put(f, std::move(schema));
  }
  void on_date(const Field& f, const DateRef&) override {
    Json schema = words_of(f);
    schema["description"] = schema["description"].get<std::string>() + " A day as year-month-day.";
    schema["type"] = "string";
    schema["format"] = "date";
    schema["pattern"] = day_pattern;
    put(f, std::move(schema));
  }
  void on_choice(const Field& f, const ChoiceRef& c) override {
    Json schema = words_of(f);
    Json options = Json::array();
    for (const Choice& choice : c.choices)
      options.push_back({{"const", std::string(choice.name)}, {"title", std::string(choice.label)}});
    schema["oneOf"] = std::move(options);
    if (!f.required && c.get() >= 0) schema["default"] = std::string(c.choices[static_cast<std::size_t>(c.get())].name);
    put(f, std::move(schema));
  }

  void on_group(const Field& f, const GroupRef& g) override {
    if (!g.has()) g.make();
    put(f, with_words(f, object_of([&] { g.describe(*this); })));
  }

  void on_list(const Field& f, const ListRef& l) override {
    l.resize(1);
    Json item;
    if (l.of_groups) {
      item = object_of([&] { visit_item(l, 0); });
    } else {
      Json* outer = std::exchange(item_, &item);
      visit_item(l, 0);
      item_ = outer;
    }
    Json schema = words_of(f);
    schema["type"] = "array";
    schema["items"] = std::move(item);
    if (f.required) schema["minItems"] = 1;
    l.resize(0);
    put(f, std::move(schema));
  }

  template <class Visit>
  Json object_of(Visit visit) {
    objects_.push_back(empty_object());
    visit();
    Json object = done();
    objects_.pop_back();
    return object;
  }

  static Json words_of(const Field& f) {
    return Json{{"title", std::string(f.label)}, {"description", sentence(f.help.empty() ? f.label : f.help)}};
  }
  static Json with_words(const Field& f, const Json& object) {
    Json schema = words_of(f);
    for (auto it = object.begin(); it != object.end(); ++it) schema[it.key()] = *it;
    return schema;
  }
  static std::string joined(const Json& names) {
    std::string out;
    for (const Json& name : names) out += (out.empty() ? "" : ", ") + name.get<std::string>();
    return out;
  }

  // A value without a name is the item of a list of plain values.
  void put(const Field& f, Json schema) {
    if (f.name.empty()) {
      if (item_ != nullptr) *item_ = std::move(schema);
      return;
    }
    Json& object = objects_.back();
    if (f.required) object["required"].push_back(std::string(f.name));
    object["properties"][std::string(f.name)] = std::move(schema);
  }

  std::vector<Json> objects_;
  Json* item_ = nullptr;
};

}  // namespace

Json entered_schema(const RecordKind& kind) {
  SchemaWriter writer;
  kind.make()->describe_fields(writer);
  Json schema{{"title", "What was entered"}, {"description", std::string(kind.question)}};
  const Json object = writer.done();
  for (auto it = object.begin(); it != object.end(); ++it) schema[it.key()] = *it;
  return schema;
}

Json text_schema(const char* title, const char* description) {
  return Json{{"title", title}, {"description", description}, {"type", "string"}};
}

namespace {

Json record_properties() {
  Json properties;
  properties["id"] =
      text_schema("Id", "Names this record for good, also across devices: a random UUID. May be left out.");
  properties["kind"] = Json{{"title", "Kind"}, {"description", "What was measured."}};
  properties["name"] = text_schema("Name", "In your own words: which part, which state.");
  properties["taken"] = text_schema(
      "Taken", "When it was read, as 2024-05-14T10:20:00-05:00 with the offset from UTC, or the day alone.");
  properties["taken"]["pattern"] = schema_time_pattern;
  properties["by"] = text_schema("By", "Who read it.");
  properties["note"] = text_schema("Note", "Anything worth keeping with it.");
  return properties;
}

Json record_schema(const RecordKind& kind) {
  Json record{{"title", std::string(kind.label)}, {"description", std::string(kind.question)}, {"type", "object"}};
  Json properties = record_properties();
  properties["kind"]["const"] = std::string(kind.name);
  properties["entered"] = entered_schema(kind);
  record["properties"] = std::move(properties);
  record["required"] = Json::array({"kind", "entered"});
  return record;
}

// The file around its records.
Json file_schema(const std::string& title, const std::string& description, Json record) {
  Json file{{"$schema", schema_dialect}, {"title", title}, {"description", description}, {"type", "object"}};
  Json version{{"title", "Version"}, {"description", "Version of the file."}, {"type", "integer"}, {"minimum", 1}};
  Json kind{{"title", "Kind of file"}, {"description", "Always \"measurements\"."}, {"const", "measurements"}};
  Json records{{"title", "Records"},
               {"description", "One for each measurement, of any age and order."},
               {"type", "array"},
               {"items", std::move(record)}};
  Json properties;
  properties["camside"] = std::move(version);
  properties["kind"] = std::move(kind);
  properties["bike"] = text_schema("Bike", "Which bike, in your own words.");
  properties["note"] = text_schema("Note", "Anything about the file as a whole.");
  properties["records"] = std::move(records);
  file["properties"] = std::move(properties);
  file["required"] = Json::array({"camside", "kind", "records"});
  return file;
}

}  // namespace

std::string schema_of(const RecordKind& kind) {
  return write_json(file_schema(fmt::format("Camside measurement file: {}", kind.label), std::string(kind.question),
                                record_schema(kind)));
}

std::string schema_of_all(std::span<const RecordKind> among) {
  Json record{{"title", "A measurement"}, {"description", "A measurement of one kind."}, {"type", "object"}};
  Json names = Json::array();
  Json by_kind = Json::array();
  Json definitions;
  for (const RecordKind& kind : among) {
    const std::string name(kind.name);
    names.push_back(name);
    definitions[name] = record_schema(kind);
    Json is_this_kind{{"properties", Json{{"kind", Json{{"const", name}}}}}};
    by_kind.push_back(Json{{"if", std::move(is_this_kind)}, {"then", Json{{"$ref", "#/$defs/" + name}}}});
  }
  Json kind_name{{"title", "Kind"}, {"description", "What was measured."}, {"enum", std::move(names)}};
  record["properties"] = Json{{"kind", std::move(kind_name)}};
  record["required"] = Json::array({"kind", "entered"});
  record["allOf"] = std::move(by_kind);
  Json file = file_schema("Camside measurement file", "Measurements of any kind.", std::move(record));
  file["$defs"] = std::move(definitions);
  return write_json(file);
}

std::string schema_of_fields(const std::string& title, const std::string& description, AnyInput& fields) {
  SchemaWriter writer;
  fields.describe_fields(writer);
  Json schema{{"$schema", schema_dialect}, {"title", title}, {"description", description}};
  const Json object = writer.done();
  for (auto it = object.begin(); it != object.end(); ++it) schema[it.key()] = *it;
  return write_json(schema);
}

}  // namespace camside::records
