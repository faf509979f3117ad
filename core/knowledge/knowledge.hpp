// What Camside knows of engine years: typed, checked on reading, every figure with what it rests on. The data stands in
// assets/knowledge/*.json, which the program carries inside; nothing of an engine is in the code.
//
// A file is read whole or refused whole: bytes and JSON as in records/strict_json.hpp (100-109), fields as in
// records/field_reader.hpp (113-119, 201, 203; an unknown name is refused too, since a figure misspelt away would go
// unnoticed), ranges (200-205), and what no range can tell (1930-1939). Each refusal names the path of its field:
// "risks[2].chances[1].chance".
//
// An item with a `risk` has the interval of that risk, so that a look-over and a due list can't disagree (1940).
// `engines` of an item lists the ids of the engines it is about; none: all.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <vector>

#include "calc/look_over/look_over.hpp"
#include "fields/field.hpp"
#include "findings/finding.hpp"
#include "findings/source.hpp"
#include "units/quantity.hpp"

namespace camside::knowledge {

// Looked after every so often.
struct Item {
  std::string id;
  std::string name;
  std::vector<std::string> engines;
  std::vector<std::string> drives;  // none: whatever turns the cams
  std::optional<Distance> every;
  std::optional<int> months;
  std::optional<Distance> every_worn;  // once it was seen worn; no longer than that until it is replaced
  bool replaced = false;               // due to be replaced; else to be looked at
  std::string risk;     // of the look-over, which it prevents: without proof it is due when that must be done
  std::string part_of;  // a name that means this one too: "Tensioner shoes"
  bool hidden = false;  // a good look at the whole of `part_of` is none at this one
  std::string note;
  std::optional<Source> source;
};
void describe(FieldVisitor& v, Item& i);

enum class Bound : std::uint8_t { AtMost, AtLeast, UpTo };  // UpTo: a prompt to measure, no limit

struct LengthLimit {
  std::string id;
  std::string name;
  std::vector<std::string> engines;
  Bound bound = Bound::AtMost;
  std::optional<Limit<Length>> limit;
  std::string note;
};
void describe(FieldVisitor& v, LengthLimit& l);

struct Wait {
  std::string id;
  std::string name;
  std::vector<std::string> engines;
  std::optional<Duration> least;
  std::optional<Duration> most;
  std::string note;
  std::optional<Source> source;
};
void describe(FieldVisitor& v, Wait& w);

// A way to put the cam side right, open only when every condition is answered.
struct Fix {
  std::string id;
  std::string name;
  std::vector<std::string> engines;
  std::string text;
  std::vector<std::string> conditions;
  std::optional<Source> source;
};
void describe(FieldVisitor& v, Fix& f);

enum class Basket : std::uint8_t { Both, TrueCrank, BentCrank };

// Replaced while in there.
struct Part {
  std::string id;
  std::string name;
  std::vector<std::string> engines;
  Basket basket = Basket::Both;
  std::string when;  // empty: always
  std::string why;   // may be empty
  std::optional<Source> source;
};
void describe(FieldVisitor& v, Part& p);

struct Fact {
  std::string text;
  std::vector<std::string> engines;
  std::optional<Source> source;
};
void describe(FieldVisitor& v, Fact& f);

enum class FileKind : std::uint8_t { Knowledge };

struct Knowledge {
  int version = 0;  // of the file's form
  FileKind kind = FileKind::Knowledge;
  std::string title;
  look_over::Book book;  // engines, questions, risks
  std::vector<Item> items;
  std::vector<LengthLimit> limits;
  std::vector<Wait> waits;
  std::vector<Fix> fixes;
  std::vector<Part> parts;
  std::vector<Fact> facts;
};
void describe(FieldVisitor& v, Knowledge& k);

tl::expected<Knowledge, Findings> read_knowledge(std::string_view text);

// The files of assets/knowledge as they stand in the program.
std::string_view knowledge_file(std::string_view name);  // "air_cooled_v_twin"; empty when there is none
std::vector<std::string_view> knowledge_names();
std::string_view usual_knowledge_file();  // the one that goes for what everybody rides
const Knowledge& usual_knowledge();       // that one, read once; the tests check that it can be

// JSON Schema (2020-12) of such a file; assets/schema/knowledge.schema.json is what this writes.
std::string schema_of_knowledge();

// What of it is about a bike with this engine and drive; empty engine: not known.
std::vector<const Item*> items_of(const Knowledge& k, std::string_view engine, const std::vector<std::string>& drives);

// Everything that is known of a bike with this engine, in words: a page for whoever opens it. Empty engine: of all.
struct Page {
  struct Line {
    std::string text;
    std::string source;
  };
  std::string heading;
  std::vector<Line> lines;
};
std::vector<Page> known_of(const Knowledge& k, std::string_view engine);

template <class T>
bool concerns(const T& item, std::string_view engine) {
  for (const std::string& id : item.engines) {
    if (id == engine) return true;
  }
  return item.engines.empty();
}

}  // namespace camside::knowledge
