// A question that Camside answers, said once. Its folder calc/NAME holds everything about it, NAME_question.cpp among
// it, which fills in this descriptor; questions.def lists them. What goes through all questions reads it from here: the
// kinds of record, the tiles of the Bench, the page's second part, the rules and tests that want an example and a
// picture of each.
#pragma once

#include <cstdint>
#include <string_view>

#include "fields/record_kind.hpp"
#include "findings/finding.hpp"

namespace camside {

// Where one comes to it: a tile of the Bench, a tile below under Desk (the long arithmetic), or a place of its own.
enum class Where : std::uint8_t { Bench, Desk, OwnPlace };
// In which part of the page's program it comes: with the first, or behind it. (app-web/later.py reads it from the
// list.)
enum class Part : std::uint8_t { First, Later };

struct FindingNumbers {  // those its own remarks may have; safety cautions (1900-1929) stand with any question
  int first = 0;
  int last = 0;
};

struct Tile {
  std::string_view name;      // "Gear lash (backlash)"
  std::string_view question;  // in a mechanic's words: "How much play, and where is it tight?"
};

struct Question {
  RecordKind kind;  // name, title, question, fields, example
  Tile tile;        // empty in a place of its own
  FindingNumbers numbers;
  Findings (*before)() = nullptr;  // cautions that stand on screen until there is an answer; none: nothing can hurt
  Where where = Where::Bench;      // these two as the list says
  Part part = Part::First;
};

// The kind of record that solve() answers, with examples/NAME.json.
template <class Input, class Result>
RecordKind kind_of(std::string_view name, std::string_view label, std::string_view question,
                   Solver<Input, Result> solve) {
  RecordKind kind;
  kind.name = name;
  kind.label = label;
  kind.question = question;
  kind.make = maker<Input, Result>(solve);
  kind.examples = {name};
  return kind;
}

}  // namespace camside
