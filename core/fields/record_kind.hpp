// A kind of record: a set of described fields with a name, and what is made of them. A calculator's input is one, so is
// an entry of a bike's log. Reader, form, schema and printing know a kind by this alone; nothing here names a field.
#pragma once

#include <any>
#include <functional>
#include <memory>
#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <utility>
#include <vector>

#include "fields/field.hpp"
#include "findings/finding.hpp"
#include "findings/outcome.hpp"

namespace camside {

// A calculator's result behind its common part. The typed result is for drawings: result_as<runout::Result>().
struct Solved {
  bool solved = false;  // false: refused, the findings say why and outcome is empty
  Outcome outcome;
  Findings findings;  // all of them: of the file, of the fields and of the calculator
  std::any input;
  std::any result;

  template <class Input>
  const Input* input_as() const {
    return std::any_cast<Input>(&input);
  }
  template <class Result>
  const Result* result_as() const {
    return std::any_cast<Result>(&result);
  }
};

// A kind's input without its type.
class AnyInput {
 public:
  virtual ~AnyInput() = default;
  virtual void describe_fields(FieldVisitor& visitor) = 0;
  virtual Solved solve() const = 0;
};

struct RecordKind {
  std::string_view name;      // in the file: "runout"
  std::string_view label;     // for people: "Runout"
  std::string_view question;  // "How far does the pinion shaft run out, and is it within its limit?"
  std::function<std::unique_ptr<AnyInput>()> make;  // with the calculator's defaults
  std::string_view csv_list;                        // list filled from a CSV file; empty when there is none
  std::vector<std::pair<std::string_view, std::string_view>> csv_also;  // set with it: path, text
  std::vector<std::string_view> examples;  // files of examples/, without ".json"; shown first
  // What people read in place of the table of figures, in lines; empty function: the table.
  std::function<std::string(const Solved&)> summary_text{};
};

template <class Input, class Result>
using Solver = tl::expected<Result, Findings> (*)(const Input&);

template <class Input, class Result>
class TypedInput final : public AnyInput {
 public:
  explicit TypedInput(Solver<Input, Result> solver) : solver_(solver) {}

  void describe_fields(FieldVisitor& visitor) override { describe(visitor, input_); }
  Solved solve() const override {
    Solved s;
    s.input = input_;
    tl::expected<Result, Findings> result = solver_(input_);
    if (!result) {
      s.findings = std::move(result.error());
      return s;
    }
    s.solved = true;
    s.outcome = result->outcome;
    s.findings = result->outcome.findings;
    s.result = std::move(*result);
    return s;
  }

 private:
  Input input_{};
  Solver<Input, Result> solver_;
};

template <class Input, class Result>
std::function<std::unique_ptr<AnyInput>()> maker(Solver<Input, Result> solver) {
  return [solver] { return std::make_unique<TypedInput<Input, Result>>(solver); };
}

}  // namespace camside
