#include "knowledge/knowledge.hpp"

#include <algorithm>
#include <utility>

#include "fields/data_remarks.hpp"
#include "fields/path.hpp"
#include "knowledge/knowledge_remarks.hpp"
#include "records/field_reader.hpp"
#include "records/schema.hpp"
#include "records/strict_json.hpp"

namespace camside::knowledge {

namespace {

constexpr std::pair<std::string_view, std::string_view> all[] = {
#include "knowledge_files.inc"
    {"", ""},  // a list may not be empty
};

// What the field reader and the schema writer want: fields without their type.
class Fields final : public AnyInput {
 public:
  void describe_fields(FieldVisitor& visitor) override { describe(visitor, known); }
  Solved solve() const override { return {}; }
  Knowledge known;
};

bool is_engine(const Knowledge& k, std::string_view id) {
  const auto& engines = k.book.engines;
  return std::any_of(engines.begin(), engines.end(), [&](const look_over::Engine& e) { return e.id == id; });
}

void find_strangers(const Knowledge& k, const std::vector<std::string>& engines, const std::string& path,
                    Findings& found) {
  for (std::size_t i = 0; i < engines.size(); ++i) {
    if (!is_engine(k, engines[i]))
      found.push_back(remarks::names_nothing(item_path(path + ".engines", i), "engine", engines[i]));
  }
}

// Ids used twice, and engines that there are not.
template <class T>
void check_list(const Knowledge& k, const std::vector<T>& list, std::string_view name, Findings& found) {
  for (std::size_t i = 0; i < list.size(); ++i) {
    find_strangers(k, list[i].engines, item_path(name, i), found);
    for (std::size_t j = 0; j < i; ++j) {
      if (list[j].id == list[i].id) found.push_back(remarks::id_twice(item_path(name, i) + ".id", list[i].id));
    }
  }
}

void check_figures(const Knowledge& k, Findings& found) {
  for (std::size_t i = 0; i < k.items.size(); ++i) {
    if (!k.items[i].every && !k.items[i].months) found.push_back(remarks::empty_item(item_path("items", i)));
  }
  for (std::size_t i = 0; i < k.waits.size(); ++i) {
    if (*k.waits[i].least > *k.waits[i].most)
      found.push_back(remarks::range_backwards(item_path("waits", i) + ".most"));
  }
}

void check_risks(const Knowledge& k, Findings& found) {
  for (std::size_t i = 0; i < k.items.size(); ++i) {
    const Item& item = k.items[i];
    if (item.risk.empty()) continue;
    const look_over::Risk* const risk = risk_of(k.book, item.risk);
    const std::string path = item_path("items", i);
    if (!risk)
      found.push_back(remarks::names_nothing(path + ".risk", "risk", item.risk));
    else if (risk->every != item.every)
      found.push_back(remarks::intervals_differ(path + ".every", item.risk));
  }
}

Findings faults_of(const Knowledge& k) {
  Findings found = look_over::book_faults(k.book);
  check_list(k, k.items, "items", found);
  check_list(k, k.limits, "limits", found);
  check_list(k, k.waits, "waits", found);
  check_list(k, k.fixes, "fixes", found);
  check_list(k, k.parts, "parts", found);
  for (std::size_t i = 0; i < k.facts.size(); ++i) find_strangers(k, k.facts[i].engines, item_path("facts", i), found);
  check_figures(k, found);
  check_risks(k, found);
  return found;
}

// The reader keeps an unknown name with a note; here it stands in the way.
Findings refusing(Findings found) {
  for (Finding& f : found) f = remarks::unknown_name(std::move(f));
  return found;
}

}  // namespace

tl::expected<Knowledge, Findings> read_knowledge(std::string_view text) {
  const auto json = records::read_json(text);
  if (!json) return tl::make_unexpected(Findings{json.error()});
  if (!json->is_object()) return tl::make_unexpected(Findings{remarks::not_knowledge(records::name_of_type(*json))});
  Fields fields;
  Findings found = records::read_fields(*json, fields);
  if (found.empty()) found = check_fields(fields.known);
  if (found.empty()) found = faults_of(fields.known);
  if (!found.empty()) return tl::make_unexpected(refusing(std::move(found)));
  return std::move(fields.known);
}

std::string_view knowledge_file(std::string_view name) {
  const auto* const it = std::find_if(std::begin(all), std::end(all), [&](const auto& e) { return e.first == name; });
  return it == std::end(all) ? std::string_view{} : it->second;
}

std::string_view usual_knowledge_file() {
  return knowledge_file("air_cooled_v_twin");
}

const Knowledge& usual_knowledge() {
  static const Knowledge usual = read_knowledge(usual_knowledge_file()).value_or(Knowledge{});
  return usual;
}

std::vector<std::string_view> knowledge_names() {
  std::vector<std::string_view> names;
  for (const auto& [name, text] : all) {
    if (!name.empty()) names.push_back(name);
  }
  return names;
}

std::string schema_of_knowledge() {
  Fields fields;
  return records::schema_of_fields("Camside: what is known of engines",
                                   "Engines by what they are, with risks, questions, items, limits, fixes and parts; "
                                   "every figure with what it rests on.",
                                   fields);
}

}  // namespace camside::knowledge
