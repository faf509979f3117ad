// What a calculator answered, for GoogleTest cases. solve() is found by the input's namespace.
#pragma once

#include <gtest/gtest.h>

#include <string>
#include <utility>

#include "findings/finding.hpp"

namespace camside {

template <class Input>
using ResultOf = typename decltype(solve(std::declval<const Input&>()))::value_type;

// The result; where it was refused, the test fails and says by what.
template <class Input>
ResultOf<Input> solved(const Input& in) {
  auto r = solve(in);
  for (const Finding& f : r ? Findings{} : r.error()) ADD_FAILURE() << f.number << " " << f.field << ": " << f.text;
  return r ? *r : ResultOf<Input>{};
}

// The refusals; where there is a result, the test fails.
template <class Input>
Findings refused(const Input& in) {
  const auto r = solve(in);
  EXPECT_FALSE(r.has_value()) << "was not refused";
  return r ? Findings{} : r.error();
}

// Refused by this number at this field.
template <class Input>
testing::AssertionResult refused(const Input& in, int number, const std::string& field) {
  const auto r = solve(in);
  if (r) return testing::AssertionFailure() << "was not refused";
  for (const Finding& f : r.error())
    if (f.number == number && f.field == field && f.severity == Severity::Refusal) return testing::AssertionSuccess();
  const Finding& first = r.error().front();
  return testing::AssertionFailure() << "refused by " << first.number << " at " << first.field << ": " << first.text;
}

template <class Result>
bool says(const Result& r, int number) {
  return has(r.outcome.findings, number);
}

inline std::string text_of(const Findings& findings, int number) {
  for (const Finding& f : findings)
    if (f.number == number) return f.text;
  return "";
}

}  // namespace camside
