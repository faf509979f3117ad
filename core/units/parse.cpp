#include "units/parse.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <optional>
#include <utility>
#include <vector>

#include "base/harmless.hpp"
#include "units/entry.hpp"
#include "units/exact.hpp"

namespace camside {

namespace {

using exact::Decimal;
using exact::Entry;
using exact::Ratio;
template <class T>
using Read = tl::expected<T, ParseRefusal>;

constexpr std::size_t longest_text = 200;
constexpr std::size_t most_digits = 40;
constexpr int largest_exponent = 300;

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}
bool is_mark(char c) {
  return c == '.' || c == ',';
}

// --- Words for people ------------------------------------------------------------------------------------------------

// What was typed, safe to show anywhere and short enough to repeat.
std::string quoted(std::string_view text) {
  return fmt::format("\"{}\"", harmless_start(text, 40));
}

std::string with_article(std::string_view noun) {
  const bool vowel = std::string_view("aeiou").find(noun.front()) != std::string_view::npos;
  return fmt::format("{} {}", vowel ? "an" : "a", noun);
}

std::string unit_list(Kind kind) {
  std::string list;
  for (const Unit& unit : units_of(kind)) list += (list.empty() ? "" : ", ") + std::string(unit.symbol);
  return list;
}

tl::unexpected<ParseRefusal> refuse(ParseFault fault, std::string reason, std::string remedy) {
  return tl::unexpected(ParseRefusal{fault, std::move(reason), std::move(remedy)});
}

tl::unexpected<ParseRefusal> not_a_number(std::string_view text) {
  return refuse(ParseFault::NotANumber, fmt::format("{} is not a number", quoted(text)),
                "Write digits with one decimal point or comma, such as 0.003");
}

// --- One alphabet ----------------------------------------------------------------------------------------------------

using Replacement = std::pair<std::string_view, std::string_view>;
constexpr std::array<Replacement, 26> replacements{{
    {"\u2212", "-"},       {"\u2010", "-"},    {"\u2011", "-"},    {"\u2013", "-"},    {"\u2044", "/"},
    {"\u2215", "/"},       {"\u00a0", " "},    {"\u2002", " "},    {"\u2003", " "},    {"\u2007", " "},
    {"\u2009", " "},       {"\u200a", " "},    {"\u202f", " "},    {"\t", " "},        {"\n", " "},
    {"\r", " "},           {"\u00bd", " 1/2"}, {"\u00bc", " 1/4"}, {"\u00be", " 3/4"}, {"\u215b", " 1/8"},
    {"\u215c", " 3/8"},    {"\u215d", " 5/8"}, {"\u215e", " 7/8"}, {"\u2153", " 1/3"}, {"\u2154", " 2/3"},
    {"\u00d7 ", "\u00d7"},
}};

// Minus signs, fraction slashes, blanks and the ready-made fractions in their plain form.
std::string in_one_alphabet(std::string_view text) {
  std::string plain;
  while (!text.empty()) {
    const auto r = std::find_if(replacements.begin(), replacements.end(),
                                [&](const Replacement& p) { return text.starts_with(p.first); });
    plain += r == replacements.end() ? text.substr(0, 1) : r->second;
    text.remove_prefix(r == replacements.end() ? 1 : r->first.size());
  }
  return plain;
}

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
  return text;
}

// As typed, without the blanks around it.
std::string_view trimmed_as_typed(std::string_view text) {
  const auto blank_at = [](std::string_view s, bool front) -> std::size_t {
    for (const auto& [from, to] : replacements)
      if (to == " " && (front ? s.starts_with(from) : s.ends_with(from))) return from.size();
    return (front ? s.starts_with(' ') : s.ends_with(' ')) ? 1 : 0;
  };
  while (const std::size_t n = blank_at(text, true)) text.remove_prefix(n);
  while (const std::size_t n = blank_at(text, false)) text.remove_suffix(n);
  return text;
}

// --- Numbers ---------------------------------------------------------------------------------------------------------

struct Number {
  Ratio value;
  bool whole = false;  // digits only
};

std::string_view take_digits(std::string_view& rest) {
  const auto end = std::find_if_not(rest.begin(), rest.end(), is_digit);
  const std::string_view digits = rest.substr(0, static_cast<std::size_t>(end - rest.begin()));
  rest.remove_prefix(digits.size());
  return digits;
}

bool take(std::string_view& rest, char c) {
  if (!rest.starts_with(c)) return false;
  rest.remove_prefix(1);
  return true;
}

Ratio whole_ratio(std::string_view digits) {
  return {false, Natural::from_digits(digits), Natural{1}};
}

tl::unexpected<ParseRefusal> too_many_digits() {
  return refuse(ParseFault::TooLong, fmt::format("The number has more than {} digits", most_digits),
                "Write as many digits as were read");
}

// "3/8", "1-3/8", "1 3/8": whole part (may be empty), top and bottom. Nothing when the text doesn't start so.
struct Fraction {
  std::string_view whole;
  std::string_view top;
  std::string_view bottom;
};

std::optional<Fraction> take_fraction(std::string_view& rest) {
  std::string_view at = rest;
  Fraction f;
  f.top = take_digits(at);
  if (!f.top.empty() && (at.starts_with(' ') || at.starts_with('-'))) {
    f.whole = std::exchange(f.top, {});
    while (take(at, ' ')) continue;
    if (take(at, '-'))
      while (take(at, ' ')) continue;
    f.top = take_digits(at);
  }
  if (f.top.empty() || !take(at, '/')) return std::nullopt;
  f.bottom = take_digits(at);
  if (f.bottom.empty()) return std::nullopt;
  rest = at;
  return f;
}

Read<Number> fraction_value(const Fraction& f) {
  if (std::max({f.whole.size(), f.top.size(), f.bottom.size()}) > most_digits) return too_many_digits();
  const Natural bottom = Natural::from_digits(f.bottom);
  const Natural top = Natural::from_digits(f.top);
  if (bottom.is_zero())
    return refuse(ParseFault::OutOfRange, fmt::format("{}/{} divides by zero", f.top, f.bottom),
                  "Write a fraction such as 1/16");
  if (!f.whole.empty() && top >= bottom)
    return refuse(ParseFault::NotANumber,
                  fmt::format("{}/{} behind a whole number is not less than one", f.top, f.bottom),
                  "Write a fraction such as 1-3/8");
  return Number{whole_ratio(f.whole) + Ratio{false, top, bottom}, false};
}

// The digits and marks of a decimal: "41,300" "1 234.5" ".003". A blank belongs to it where digits stand before it and
// exactly three behind.
std::string_view take_marked_digits(std::string_view& rest) {
  std::size_t n = 0;
  const auto digit_at = [&](std::size_t i) { return i < rest.size() && is_digit(rest[i]); };
  const auto group_at = [&](std::size_t i) {
    return digit_at(i) && digit_at(i + 1) && digit_at(i + 2) && !digit_at(i + 3) &&
           !(i + 3 < rest.size() && rest[i + 3] == '/');
  };
  while (digit_at(n) || (n < rest.size() && is_mark(rest[n])) ||
         (n > 0 && n < rest.size() && rest[n] == ' ' && digit_at(n - 1) && group_at(n + 1)))
    ++n;
  const std::string_view taken = rest.substr(0, n);
  rest.remove_prefix(n);
  return taken;
}

struct Marks {
  std::size_t decimal = std::string_view::npos;  // where the decimal mark stands
  char group = '\0';
};

// One comma that could be a decimal mark or a group mark.
bool ambiguous_comma(std::string_view text, std::size_t comma) {
  return comma >= 1 && comma <= 3 && text.front() != '0' && text.size() - comma - 1 == 3;
}

std::string without(std::string_view text, char c) {
  std::string kept(text);
  kept.erase(std::remove(kept.begin(), kept.end(), c), kept.end());
  return kept;
}

tl::unexpected<ParseRefusal> ambiguous(std::string_view text) {
  std::string with_point(text);
  std::replace(with_point.begin(), with_point.end(), ',', '.');
  const std::string without_mark = without(text, ',');
  return refuse(ParseFault::Ambiguous, fmt::format("{} can be read as {} or as {}", text, with_point, without_mark),
                fmt::format("Write {} or {}", with_point, without_mark));
}

Read<Marks> marks_of(std::string_view text, Kind kind) {
  const auto commas = std::count(text.begin(), text.end(), ',');
  const auto points = std::count(text.begin(), text.end(), '.');
  const bool blanks = text.find(' ') != std::string_view::npos;
  const std::size_t last = text.find_last_of(".,");
  if (commas + points == 0) return Marks{std::string_view::npos, blanks ? ' ' : '\0'};
  if (commas > 0 && points > 0) return Marks{last, text[last] == ',' ? '.' : ','};
  if (commas + points > 1) return Marks{std::string_view::npos, text[last]};
  if (commas == 1 && !blanks && ambiguous_comma(text, last)) {
    if (kind == Kind::Distance || kind == Kind::Money) return Marks{std::string_view::npos, ','};
    return ambiguous(text);
  }
  return Marks{last, blanks ? ' ' : '\0'};
}

// Groups must be of three, but for the first, which has one to three and doesn't start with 0.
bool well_grouped(std::string_view whole, char group) {
  if (group == '\0' || whole.find(group) == std::string_view::npos)
    return std::all_of(whole.begin(), whole.end(), is_digit);
  std::size_t size = whole.find(group);
  if (size < 1 || size > 3 || whole.front() == '0') return false;
  for (std::string_view rest = whole; !rest.empty(); size = 3) {
    if (rest.size() < size || !std::all_of(rest.begin(), rest.begin() + static_cast<std::ptrdiff_t>(size), is_digit))
      return false;
    rest.remove_prefix(size);
    if (rest.size() == 1 || (!rest.empty() && !take(rest, group))) return false;
  }
  return true;
}

Read<Decimal> decimal_value(std::string_view text, Kind kind) {
  const auto marks = marks_of(text, kind);
  if (!marks) return tl::unexpected(marks.error());
  const std::string_view whole = text.substr(0, marks->decimal);
  const std::string_view behind = marks->decimal < text.size() ? text.substr(marks->decimal + 1) : "";
  if (whole.size() + behind.size() == 0 || !well_grouped(whole, marks->group) ||
      !std::all_of(behind.begin(), behind.end(), is_digit))
    return not_a_number(text);
  Decimal d{false, without(whole, marks->group) + std::string(behind), -static_cast<int>(behind.size())};
  d.digits.erase(0, std::min(d.digits.find_first_not_of('0'), d.digits.size()));
  if (d.digits.size() > most_digits) return too_many_digits();
  return d;
}

tl::unexpected<ParseRefusal> out_of_range(std::string_view text) {
  return refuse(ParseFault::OutOfRange, fmt::format("{} is too large or too small to compute with", quoted(text)),
                "Write the value as it was read");
}

// "e-3": what the digits are shifted by, 0 when there is none. More than four digits are cut; out of range anyway.
int take_exponent(std::string_view& rest) {
  std::string_view at = rest;
  if (!take(at, 'e') && !take(at, 'E')) return 0;
  const bool negative = at.starts_with('-');
  if (negative || at.starts_with('+')) at.remove_prefix(1);
  const std::string_view digits = take_digits(at);
  if (digits.empty()) return 0;
  rest = at;
  const auto first = std::min(digits.find_first_not_of('0'), digits.size());
  int value = 0;
  for (const char c : digits.substr(first, 4)) value = value * 10 + (c - '0');
  return negative ? -value : value;
}

Read<Number> take_decimal(std::string_view& rest, Kind kind) {
  const std::string_view all = rest;
  const std::string_view marked = take_marked_digits(rest);
  if (marked.empty()) return not_a_number(all);
  auto d = decimal_value(marked, kind);
  if (!d) return tl::unexpected(d.error());
  const std::size_t before_exponent = rest.size();
  const int exponent = take_exponent(rest);
  d->exponent += exponent;
  const int magnitude = static_cast<int>(d->digits.size()) + d->exponent;
  if (d->digits.empty())
    d->exponent = 0;
  else if (magnitude > largest_exponent || magnitude < -largest_exponent)
    return out_of_range(all);
  return Number{ratio_of(*d), rest.size() == before_exponent && std::all_of(marked.begin(), marked.end(), is_digit)};
}

Read<Number> take_number(std::string_view& rest, Kind kind) {
  if (const auto fraction = take_fraction(rest)) return fraction_value(*fraction);
  return take_decimal(rest, kind);
}

bool take_minus(std::string_view& rest) {
  const bool minus = take(rest, '-');
  if (!minus) take(rest, '+');
  rest = trimmed(rest);
  return minus;
}

bool says_not_finite(std::string_view text) {
  std::string word(text.substr(0, 3));
  std::transform(word.begin(), word.end(), word.begin(),
                 [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c; });
  return word == "inf" || word == "nan" || text.starts_with("∞");
}

// --- Units -----------------------------------------------------------------------------------------------------------

constexpr std::array all_kinds{
    Kind::Length,    Kind::Angle,   Kind::Distance, Kind::Temperature, Kind::TemperatureDifference,
    Kind::Expansion, Kind::Force,   Kind::Torque,   Kind::Pressure,    Kind::ThreadPitch,
    Kind::Module,    Kind::Duration};

bool has_parts(Kind kind) {
  return kind == Kind::Angle || kind == Kind::Duration;
}
bool needs_no_unit(Kind kind) {
  return units_of(kind).front().symbol.empty();
}

const Unit* find_in_any_kind(std::string_view spelling) {
  for (const Kind kind : all_kinds)
    if (const Unit* unit = find_unit(kind, spelling)) return unit;
  return nullptr;
}

tl::unexpected<ParseRefusal> trailing(std::string_view text) {
  return refuse(ParseFault::TrailingText,
                fmt::format("{} stands behind the value and means nothing there", quoted(text)),
                "Write one value with its unit");
}

tl::unexpected<ParseRefusal> unknown_unit(Kind kind, std::string_view spelling) {
  const std::string remedy =
      needs_no_unit(kind) ? "Write the number alone" : fmt::format("Use one of: {}", unit_list(kind));
  if (const Unit* other = find_in_any_kind(spelling))
    return refuse(
        ParseFault::WrongKind,
        fmt::format("{} is a unit of {}; {} is wanted", spelling, name_of(other->kind), with_article(name_of(kind))),
        remedy);
  // "3 in 4": a unit, and something behind it.
  for (std::size_t n = spelling.size(); n-- > 1;)
    if (!is_digit(spelling[n]) && find_unit(kind, spelling.substr(0, n)) && spelling[n] == ' ')
      return trailing(spelling.substr(n + 1));
  if (needs_no_unit(kind)) return trailing(spelling);
  return refuse(ParseFault::UnknownUnit, fmt::format("{} is not a unit of {}", quoted(spelling), name_of(kind)),
                remedy);
}

tl::unexpected<ParseRefusal> needs_unit(Kind kind, std::string_view number) {
  const std::string_view in_inches = preferred_unit(kind, System::Inch).symbol;
  const std::string_view metric = preferred_unit(kind, System::Metric).symbol;
  const std::string other = in_inches == metric ? "" : fmt::format(" or {} {}", number, metric);
  return refuse(ParseFault::NeedsUnit, fmt::format("{} has no unit", quoted(number)),
                fmt::format("Add one, such as {} {}{}", number, in_inches, other));
}

// The spelling of a unit: to the end of the text, or for kinds with parts to the next digit.
std::string_view take_spelling(std::string_view& rest, Kind kind) {
  std::size_t n = rest.size();
  if (has_parts(kind)) {
    const auto next = std::find_if(rest.begin(), rest.end(), [](char c) { return is_digit(c); });
    n = static_cast<std::size_t>(next - rest.begin());
    if (n < rest.size() && n > 0 && is_mark(rest[n - 1]) && n > 1 && rest[n - 2] == ' ') --n;
  }
  const std::string_view spelling = trimmed(rest.substr(0, n));
  rest.remove_prefix(n);
  return spelling;
}

Read<const Unit*> unit_spelled(Kind kind, std::string_view spelling, std::string_view number,
                               const ParseOptions& options) {
  if (spelling.empty()) {
    if (needs_no_unit(kind)) return &units_of(kind).front();
    if (options.default_unit != nullptr) return options.default_unit;
    return needs_unit(kind, number);
  }
  if (const Unit* unit = find_unit(kind, spelling)) return unit;
  return unknown_unit(kind, spelling);
}

// A flat is a sixth of a turn on a hexagon; the table's factor is made for that.
Unit with_flats(const Unit& unit, int flats_per_turn) {
  Unit own = unit;
  if (unit.symbol == "flat") {
    own.numerator = 2;
    own.denominator = flats_per_turn;
  }
  return own;
}

// --- Values ----------------------------------------------------------------------------------------------------------

struct Part {
  Number number;
  const Unit* unit = nullptr;
  bool unit_typed = false;
};

Read<Part> take_part(std::string_view& rest, Kind kind, const ParseOptions& options) {
  const std::string_view before = rest;
  const auto number = take_number(rest, kind);
  if (!number) return tl::unexpected(number.error());
  const std::string_view number_text = before.substr(0, before.size() - rest.size());
  rest = trimmed(rest);
  const std::string_view spelling = take_spelling(rest, kind);
  const auto unit = unit_spelled(kind, spelling, number_text, options);
  if (!unit) return tl::unexpected(unit.error());
  return Part{*number, *unit, !spelling.empty()};
}

double size_of(const Unit& unit) {
  return unit.to_base(1.0);
}

Read<std::vector<Part>> take_parts(std::string_view rest, Kind kind, const ParseOptions& options) {
  std::vector<Part> parts;
  do {
    const std::string_view here = rest;
    auto part = take_part(rest, kind, options);
    if (!part) return tl::unexpected(part.error());
    if (!parts.empty()) {
      const Part& before = parts.back();
      if (!before.number.whole || !before.unit_typed || !part->unit_typed ||
          before.unit->times_pi != part->unit->times_pi || size_of(*part->unit) >= size_of(*before.unit))
        return trailing(here);
    }
    parts.push_back(std::move(*part));
  } while (!rest.empty());
  return parts;
}

Read<Ratio> part_in_base(const Part& part, bool negative, const ParseOptions& options) {
  Ratio value = part.number.value;
  value.negative = negative;
  if (part.unit->reciprocal && value.is_zero())
    return refuse(ParseFault::OutOfRange, fmt::format("0 {} has no meaning", part.unit->symbol),
                  "Write a number above 0");
  Unit unit = with_flats(*part.unit, options.flats_per_turn);
  unit.times_pi = false;
  return exact::to_base(value, unit);
}

Read<Entry> sum_of(const std::vector<Part>& parts, bool negative, const ParseOptions& options) {
  Entry entry;
  for (const Part& part : parts) {
    const auto base = part_in_base(part, negative, options);
    if (!base) return tl::unexpected(base.error());
    entry.base = entry.base + *base;
  }
  entry.unit = parts.front().unit;
  entry.unit_typed = parts.front().unit_typed;
  entry.times_pi = entry.unit->times_pi;
  return entry;
}

}  // namespace

Read<Entry> exact::read_entry(Kind kind, std::string_view text, const ParseOptions& options) {
  if (text.size() > longest_text)
    return refuse(ParseFault::TooLong, fmt::format("The text has more than {} characters", longest_text),
                  "Write one value with its unit");
  const std::string plain = in_one_alphabet(text);
  std::string_view rest = trimmed(plain);
  if (rest.empty())
    return refuse(ParseFault::Empty, "Nothing was entered", fmt::format("Enter {}", with_article(name_of(kind))));
  if (options.flats_per_turn < 1)
    return refuse(ParseFault::OutOfRange, fmt::format("{} flats to a turn make no sense", options.flats_per_turn),
                  "Give 1 flat or more to a turn");
  const bool negative = take_minus(rest);
  if (says_not_finite(rest))
    return refuse(ParseFault::OutOfRange, fmt::format("{} is not a finite number", quoted(rest)),
                  "Write the value as it was read");
  const auto parts = take_parts(rest, kind, options);
  if (!parts) return tl::unexpected(parts.error());
  return sum_of(*parts, negative, options);
}

Read<Entered> parse(Kind kind, std::string_view text, const ParseOptions& options) {
  const auto entry = exact::read_entry(kind, text, options);
  if (!entry) return tl::unexpected(entry.error());
  Entered entered;
  entered.kind = kind;
  entered.base = exact::nearest_double(entry->times_pi ? entry->base * exact::pi() : entry->base);
  entered.unit = entry->unit;
  entered.text = trimmed_as_typed(text);
  if (!entry->unit_typed && !entry->unit->symbol.empty()) entered.text += " " + std::string(entry->unit->symbol);
  entered.flats_per_turn = options.flats_per_turn;
  return entered;
}

namespace {

constexpr auto date_remedy = "Write it as year-month-day, such as 2003-05-14";

// A number of so many digits, or -1.
int take_date_part(std::string_view& rest, std::size_t least, std::size_t most) {
  const std::string_view digits = take_digits(rest);
  if (digits.size() < least || digits.size() > most) return -1;
  int value = 0;
  for (const char c : digits) value = value * 10 + (c - '0');
  return value;
}

// "4/5/2003", "14.05.2003", "03-05-14": three numbers, the year not first or not written out.
bool three_numbers_year_not_first(std::string_view rest) {
  const bool day_or_month = take_date_part(rest, 1, 2) >= 0 && !rest.empty();
  const char mark = day_or_month ? rest.front() : '\0';
  if (mark != '-' && mark != '/' && mark != '.') return false;
  return take(rest, mark) && take_date_part(rest, 1, 2) >= 0 && take(rest, mark) && take_date_part(rest, 1, 4) >= 0 &&
         rest.empty();
}

}  // namespace

Read<Date> parse_date(std::string_view text) {
  if (text.size() > longest_text) return refuse(ParseFault::TooLong, "The text is too long for a date", date_remedy);
  const std::string plain = in_one_alphabet(text);
  std::string_view rest = trimmed(plain);
  const std::string shown = quoted(rest);
  if (rest.empty()) return refuse(ParseFault::Empty, "No date was entered", date_remedy);
  if (three_numbers_year_not_first(rest))
    return refuse(ParseFault::Ambiguous, fmt::format("{} leaves open which is the day and which the month", shown),
                  date_remedy);
  const int y = take_date_part(rest, 4, 4);
  const bool first = take(rest, '-');
  const int m = take_date_part(rest, 1, 2);
  const bool second = take(rest, '-');
  const int d = take_date_part(rest, 1, 2);
  if (y < 0 || m < 0 || d < 0 || !first || !second || !rest.empty())
    return refuse(ParseFault::NotANumber, fmt::format("{} is not a date in the order year, month, day", shown),
                  date_remedy);
  const Date date{std::chrono::year{y}, std::chrono::month{static_cast<unsigned>(m)},
                  std::chrono::day{static_cast<unsigned>(d)}};
  if (!date.ok())
    return refuse(ParseFault::OutOfRange, fmt::format("{} is not a day of the calendar", shown), date_remedy);
  return date;
}

}  // namespace camside
