// One description of a calculator's input, used by everything that touches it: the file reader, the range check, the
// JSON Schema, the entry form on screen. A calculator writes
//
//   void describe(FieldVisitor& v, SwingInput& in) {
//     v.value({"low", "Lowest needle", "Smallest reading of the slow turn"}, in.low);
//     ...
//   }
//
// once, and each user is a FieldVisitor. So a range, a label or a unit stands in one place and cannot drift.
//
// A plain member with an initial value is optional and keeps that default; mark it .must() when there is no honest
// default. A std::optional member may be absent, which the calculator sees.
#pragma once

#include <concepts>
#include <initializer_list>
#include <limits>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <type_traits>
#include <vector>

#include "base/function_view.hpp"
#include "findings/finding.hpp"
#include "findings/source.hpp"
#include "units/quantity.hpp"
#include "units/unit.hpp"

namespace camside {

// Name, words and allowed range of one field. Bounds are in the base unit of the field's kind (mm, rad, km, °C …).
struct Field {
  std::string_view name;   // key in the measurement file
  std::string_view label;  // on screen, short
  std::string_view help;   // one or two sentences: meaning, how to read it
  double low = -std::numeric_limits<double>::infinity();
  double high = std::numeric_limits<double>::infinity();
  bool low_open = false;  // low itself not allowed
  bool high_open = false;
  bool required = false;
  int decimals = -1;  // resolution on screen, −1: the unit's own

  constexpr Field at_least(double v) const {
    Field f = *this;
    f.low = v;
    return f;
  }
  constexpr Field above(double v) const {
    Field f = *this;
    f.low = v;
    f.low_open = true;
    return f;
  }
  constexpr Field at_most(double v) const {
    Field f = *this;
    f.high = v;
    return f;
  }
  constexpr Field below(double v) const {
    Field f = *this;
    f.high = v;
    f.high_open = true;
    return f;
  }
  constexpr Field must() const {
    Field f = *this;
    f.required = true;
    return f;
  }

  template <class Q>
  constexpr Field at_least(Quantity<Q> q) const {
    return at_least(q.base());
  }
  template <class Q>
  constexpr Field above(Quantity<Q> q) const {
    return above(q.base());
  }
  template <class Q>
  constexpr Field at_most(Quantity<Q> q) const {
    return at_most(q.base());
  }
  template <class Q>
  constexpr Field below(Quantity<Q> q) const {
    return below(q.base());
  }
  constexpr Field at_least(Temperature t) const { return at_least(t.base()); }
  constexpr Field at_most(Temperature t) const { return at_most(t.base()); }
};

// The words of an enum in the order of its values: what stands in a file and what a person reads.
struct Choice {
  std::string_view name;   // in the file: "swing"
  std::string_view label;  // on screen: "Lowest and highest over a slow turn"
};
using Choices = std::span<const Choice>;

// Views of a member without its type. `has` is false only for an empty optional.
struct NumberRef {
  Kind kind = Kind::Number;
  bool whole = false;  // an int
  FunctionView<bool()> has;
  FunctionView<double()> get;  // base unit
  FunctionView<void(double)> set;
  FunctionView<void()> clear;
};
struct TextRef {
  FunctionView<bool()> has;
  FunctionView<std::string()> get;
  FunctionView<void(std::string)> set;
};
struct FlagRef {
  FunctionView<bool()> has;
  FunctionView<bool()> get;
  FunctionView<void(bool)> set;
};
struct DateRef {
  FunctionView<bool()> has;
  FunctionView<Date()> get;
  FunctionView<void(Date)> set;
};
struct ChoiceRef {
  Choices choices;
  FunctionView<int()> get;  // index, −1 when not said
  FunctionView<void(int)> set;
};

class FieldVisitor;
struct GroupRef {
  FunctionView<bool()> has;
  FunctionView<void()> make;
  FunctionView<void()> clear;
  FunctionView<void(FieldVisitor&)> describe;
  bool optional = false;  // may be absent altogether
};
struct ListRef {
  FunctionView<std::size_t()> size;
  FunctionView<void(std::size_t)> resize;
  FunctionView<void(FieldVisitor&, std::size_t)> describe_item;  // visits item i as one unnamed field or as its fields
  bool of_groups = false;                                        // items are groups (objects); else single values
};

template <class T>
struct KindOf;
template <>
struct KindOf<double> {
  static constexpr Kind kind = Kind::Number;
};
template <>
struct KindOf<int> {
  static constexpr Kind kind = Kind::Number;
};
template <>
struct KindOf<Length> {
  static constexpr Kind kind = Kind::Length;
};
template <>
struct KindOf<Angle> {
  static constexpr Kind kind = Kind::Angle;
};
template <>
struct KindOf<Distance> {
  static constexpr Kind kind = Kind::Distance;
};
template <>
struct KindOf<Temperature> {
  static constexpr Kind kind = Kind::Temperature;
};
template <>
struct KindOf<TemperatureDifference> {
  static constexpr Kind kind = Kind::TemperatureDifference;
};
template <>
struct KindOf<Expansion> {
  static constexpr Kind kind = Kind::Expansion;
};
template <>
struct KindOf<Force> {
  static constexpr Kind kind = Kind::Force;
};
template <>
struct KindOf<Torque> {
  static constexpr Kind kind = Kind::Torque;
};
template <>
struct KindOf<Pressure> {
  static constexpr Kind kind = Kind::Pressure;
};
template <>
struct KindOf<ThreadPitch> {
  static constexpr Kind kind = Kind::ThreadPitch;
};
template <>
struct KindOf<Module> {
  static constexpr Kind kind = Kind::Module;
};
template <>
struct KindOf<Duration> {
  static constexpr Kind kind = Kind::Duration;
};
template <>
struct KindOf<Money> {
  static constexpr Kind kind = Kind::Money;
};

template <class T>
concept NumberLike = requires {
  KindOf<T>::kind;
};

template <NumberLike T>
double base_of(const T& v) {
  if constexpr (std::is_arithmetic_v<T>)
    return static_cast<double>(v);
  else
    return v.base();
}
// A whole number too large for an int becomes the largest or least int, which no allowed range includes.
template <NumberLike T>
T from_base(double v) {
  if constexpr (std::is_same_v<T, int>) {
    constexpr double least = std::numeric_limits<int>::min();
    constexpr double most = std::numeric_limits<int>::max();
    if (v >= least && v <= most) return static_cast<int>(v);
    return v > 0.0 ? std::numeric_limits<int>::max() : std::numeric_limits<int>::min();
  } else if constexpr (std::is_arithmetic_v<T>) {
    return static_cast<T>(v);
  } else {
    return T::from_base(v);
  }
}

class FieldVisitor {
 public:
  virtual ~FieldVisitor() = default;
  const std::string& path() const { return path_; }  // of the group being visited: "" or "setup" or "stations[3]"
  std::string path_of(const Field& f) const;         // "stations[3].reading"

  template <NumberLike T>
  void value(const Field& f, T& v) {
    on_number(f, {KindOf<T>::kind, std::is_same_v<T, int>, [] { return true; }, [&v] { return base_of(v); },
                  [&v](double b) { v = camside::from_base<T>(b); }, [] {}});
  }
  template <NumberLike T>
  void value(const Field& f, std::optional<T>& v) {
    on_number(f, {KindOf<T>::kind, std::is_same_v<T, int>, [&v] { return v.has_value(); },
                  [&v] { return v ? base_of(*v) : 0.0; }, [&v](double b) { v = camside::from_base<T>(b); },
                  [&v] { v.reset(); }});
  }
  void value(const Field& f, std::string& v);
  void value(const Field& f, bool& v);
  void value(const Field& f, std::optional<bool>& v);
  void value(const Field& f, Date& v);
  void value(const Field& f, std::optional<Date>& v);

  // An enum whose values count up from 0 in the order of `choices`.
  template <class E>
  requires std::is_enum_v<E>
  void choice(const Field& f, E& v, Choices choices) {
    on_choice(f, {choices, [&v] { return static_cast<int>(v); }, [&v](int i) { v = static_cast<E>(i); }});
  }
  template <class E>
  requires std::is_enum_v<E>
  void choice(const Field& f, std::optional<E>& v, Choices choices) {
    on_choice(f, {choices, [&v] { return v ? static_cast<int>(*v) : -1; },
                  [&v](int i) { i < 0 ? v.reset() : void(v = static_cast<E>(i)); }});
  }

  // A struct with its own describe(FieldVisitor&, T&), found by its namespace.
  template <class T>
  void group(const Field& f, T& v) {
    enter_group(f, {[] { return true; }, [] {}, [] {}, [&v](FieldVisitor& to) { describe(to, v); }});
  }
  template <class T>
  void group(const Field& f, std::optional<T>& v) {
    enter_group(f, {[&v] { return v.has_value(); }, [&v] { v.emplace(); }, [&v] { v.reset(); },
                    [&v](FieldVisitor& to) {
                      if (v) describe(to, *v);
                    },
                    true});
  }
  template <class T>
  void list(const Field& f, std::vector<T>& v) {
    if constexpr (NumberLike<T> || std::is_same_v<T, std::string>)
      enter_list(f, {[&v] { return v.size(); }, [&v](std::size_t n) { v.resize(n); },
                     [&v, f](FieldVisitor& to, std::size_t i) {
                       Field item = f;
                       item.name = "";
                       item.required = true;
                       to.value(item, v[i]);
                     },
                     false});
    else
      enter_list(f, {[&v] { return v.size(); }, [&v](std::size_t n) { v.resize(n); },
                     [&v](FieldVisitor& to, std::size_t i) { describe(to, v[i]); }, true});
  }

  // A limit with its source: {"value": …, "basis": …, "title": …}.
  template <class Q>
  void limit(const Field& f, std::optional<Limit<Q>>& v);
  // A source alone: {"basis": …, "title": …}.
  void source(const Field& f, std::optional<Source>& v);

 protected:
  virtual void on_number(const Field&, const NumberRef&) = 0;
  virtual void on_text(const Field&, const TextRef&) = 0;
  virtual void on_flag(const Field&, const FlagRef&) = 0;
  virtual void on_date(const Field&, const DateRef&) = 0;
  virtual void on_choice(const Field&, const ChoiceRef&) = 0;
  // Called with path() already inside the group; the default visits a group that is present.
  virtual void on_group(const Field&, const GroupRef& g) {
    if (g.has()) g.describe(*this);
  }
  // path() is the list's own; call visit_item for each item wanted.
  virtual void on_list(const Field&, const ListRef& l) {
    for (std::size_t i = 0; i < l.size(); ++i) visit_item(l, i);
  }
  void visit_item(const ListRef& l, std::size_t i);

 private:
  void enter_group(const Field& f, const GroupRef& g);
  void enter_list(const Field& f, const ListRef& l);
  std::string path_;
};

// The parts of a limit as they stand in a file.
template <class Q>
struct LimitParts {
  Q value;
  Basis basis = Basis::CommonPractice;
  std::string title;
};
struct SourceParts {
  Basis basis = Basis::CommonPractice;
  std::string title;
};
extern const Choices basis_choices;
std::string_view name_of(Basis basis);  // "makers sheet", as files have it
Source build_source(Basis basis, std::string title);
Field title_field(Basis basis);  // a standard or a handbook must be named
void describe(FieldVisitor& v, SourceParts& parts);

// The limit's own value keeps the range of the field it limits.
template <class Q>
void describe_limit(FieldVisitor& v, const Field& f, LimitParts<Q>& parts) {
  Field value = Field{"value", "Limit", "The figure itself"}.must();
  value.low = f.low;
  value.high = f.high;
  value.low_open = f.low_open;
  value.high_open = f.high_open;
  value.decimals = f.decimals;
  v.value(value, parts.value);
  v.choice(Field{"basis", "Who says so", "Where the limit comes from"}.must(), parts.basis, basis_choices);
  v.value(title_field(parts.basis), parts.title);
}

template <class Q>
void FieldVisitor::limit(const Field& f, std::optional<Limit<Q>>& v) {
  std::optional<LimitParts<Q>> parts;
  if (v) parts = LimitParts<Q>{v->value, v->source.basis(), v->source.text()};
  enter_group(f, {[&parts] { return parts.has_value(); }, [&parts] { parts.emplace(); }, [&parts] { parts.reset(); },
                  [&parts, &f](FieldVisitor& to) {
                    if (parts) describe_limit(to, f, *parts);
                  },
                  true});
  v.reset();
  if (parts) v.emplace(Limit<Q>{parts->value, build_source(parts->basis, std::move(parts->title))});
}

// Every field of an input against its allowed range: numbers 200 (out of range), 201 (missing), 202 (not a finite
// number), 204 (no such date), 205 (the rest is not listed; at most 50 are). A calculator calls this first. Whole
// numbers are the reader's business: an int has lost its fraction already.
Findings check_fields(FunctionView<void(FieldVisitor&)> describe_input);
template <class Input>
requires(!std::invocable<const Input&, FieldVisitor&>) Findings check_fields(const Input& input) {
  Input copy = input;
  return check_fields([&copy](FieldVisitor& v) { describe(v, copy); });
}

// "0 mm to 5 mm", "above 0 °": the allowed range of a number field, in words.
std::string range_text(const Field& f, Kind kind, System system = System::Metric);

}  // namespace camside
