// How a report fills an Outcome: figures from quantities, steps of the working, and the one order of findings. A
// figure's base number is taken from the quantity here and nowhere else, so none is in the wrong unit.
#pragma once

#include <optional>
#include <string>
#include <utility>

#include "findings/outcome.hpp"
#include "units/quantity.hpp"

namespace camside::figures {

inline Figure number(std::string key, std::string label, double v, std::string text = "") {
  return {std::move(key), std::move(label), Kind::Number, v, {}, {}, std::move(text)};
}
inline Figure length(std::string key, std::string label, Length v, std::optional<double> plus_minus_mm = {}) {
  return {std::move(key), std::move(label), Kind::Length, v.in_mm(), plus_minus_mm, {}, {}};
}
inline Figure angle(std::string key, std::string label, Angle v, std::string text = "") {
  return {std::move(key), std::move(label), Kind::Angle, v.in_rad(), {}, {}, std::move(text)};
}
inline Figure distance(std::string key, std::string label, Distance v, std::string text = "") {
  return {std::move(key), std::move(label), Kind::Distance, v.in_km(), {}, {}, std::move(text)};
}
inline Figure money(std::string key, std::string label, Money v, std::string text = "") {
  return {std::move(key), std::move(label), Kind::Money, v.in_amount(), {}, {}, std::move(text)};
}
// A temperature at which something comes about; none: it never does.
inline Figure temperature_or_never(std::string key, std::string label, const std::optional<Temperature>& t) {
  return {std::move(key), std::move(label), Kind::Temperature, t ? t->in_celsius() : 0.0, {}, {}, t ? "" : "never"};
}
// One of some words; machines get its place among them.
inline Figure word(std::string key, std::string label, std::size_t index, std::string_view text) {
  return number(std::move(key), std::move(label), static_cast<double>(index), std::string(text));
}

inline void add(Outcome& out, Figure f) {
  out.figures.push_back(std::move(f));
}
inline void add_step(Outcome& out, std::string title, std::string formula, std::string numbers, std::string result) {
  out.working.push_back({std::move(title), std::move(formula), std::move(numbers), std::move(result)});
}

}  // namespace camside::figures
