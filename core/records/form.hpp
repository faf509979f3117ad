// A record as a form: every field with its words, range and the text that stands in it; and the edits a screen makes.
// A text is kept as it was typed, also while it can't be read yet: nothing typed is lost, solve() says what is wrong.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "fields/field.hpp"
#include "records/measurement.hpp"

namespace camside::records {

enum class FieldSort : std::uint8_t { Number, Text, Flag, Date, Choice, Group, List };

struct FormField {
  std::string path;  // "stations[3].reading"
  Field field;       // name, label, help, range, required; the words live as long as the program
  FieldSort sort = FieldSort::Text;
  Kind kind = Kind::Number;     // of a number
  bool whole = false;           // a number without a fraction
  std::string range;            // "0 mm to 5 mm"; "any value" without bounds
  Choices choices;              // of a choice
  int depth = 0;                // 0: at the top; a group's fields are one deeper
  bool entered = false;         // stands in the record
  bool optional_group = false;  // a group that may be absent; its fields are listed all the same
  bool of_groups = false;       // a list whose items are groups; else of single values
  std::string text;             // what was entered, digit for digit; a choice by its name; "true", "false"
  std::string preset;           // what is taken while nothing is entered, in the base unit; empty: nothing is taken
  std::optional<double> preset_base;  // the same of a number, to show it in another unit
  std::size_t count = 0;              // items of a list
};

// All fields in the order of describe(): a group or list stands before its own fields.
std::vector<FormField> form_of(const Record& record, std::span<const RecordKind> among = kinds());

// Writes a text into a field, making the groups around it. An empty text takes the field out. A number without a unit
// gets `unit` when one is given. Returns what is wrong with the text now, or nothing. A path that isn't a field of this
// kind changes nothing and is said.
std::optional<Finding> set_text(Record& record, std::string_view path, std::string_view text,
                                const Unit* unit = nullptr, std::span<const RecordKind> among = kinds());

// Lists. add_item returns the path of the new item, empty when there is no such list.
std::string add_item(Record& record, std::string_view list_path, std::span<const RecordKind> among = kinds());
bool remove_item(Record& record, std::string_view list_path, std::size_t index);
bool remove_field(Record& record, std::string_view path);  // a value, an optional group or a whole list

}  // namespace camside::records
