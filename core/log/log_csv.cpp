#include "log/log_csv.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <span>
#include <utility>
#include <vector>

#include "base/harmless.hpp"
#include "records/strict_json.hpp"
#include "units/format.hpp"
#include "units/parse.hpp"

namespace camside::records {

namespace {

constexpr int distance_decimals = 3;
constexpr int wear_decimals = 5;

std::string quoted(const std::string& cell) {
  if (cell.find_first_of(",\"\r\n") == std::string::npos) return cell;
  std::string out = "\"";
  for (const char c : cell) out += c == '"' ? std::string("\"\"") : std::string(1, c);
  return out + '"';
}

// Blanks that some spreadsheet takes off before it looks for a formula, and what then begins one; wide forms too.
constexpr std::string_view blanks[] = {" ",      "\n",     "\r",     "\u00A0", "\u1680", "\u2000", "\u2001",
                                       "\u2002", "\u2003", "\u2004", "\u2005", "\u2006", "\u2007", "\u2008",
                                       "\u2009", "\u200A", "\u200B", "\u202F", "\u205F", "\u3000", "?"};
constexpr std::string_view begins_formula[] = {"=", "+", "-", "@", "\uFF1D", "\uFF0B", "\uFF0D", "\uFF20"};

std::size_t begins_with_one_of(std::string_view text, std::span<const std::string_view> these) {
  for (const std::string_view one : these)
    if (text.substr(0, one.size()) == one) return one.size();
  return 0;
}

std::string no_formula(const std::string& text) {
  const std::string shown = harmless_lines(text);
  std::string_view rest = shown;
  while (const std::size_t blank = begins_with_one_of(rest, blanks)) rest.remove_prefix(blank);
  return begins_with_one_of(rest, begins_formula) > 0 ? "'" + shown : shown;
}

std::string without_end_zeros(std::string number) {
  if (number.find('.') == std::string::npos) return number;
  number.erase(number.find_last_not_of('0') + 1);
  if (number.back() == '.') number.pop_back();
  return number;
}

// "41,300 mi" to "41300" in miles.
std::string number_in(const std::string& text, const Unit& unit, int decimals) {
  if (text.empty()) return "";
  const auto entered = parse(unit.kind, text);
  if (!entered) return no_formula(text);
  std::string number = convert(*entered, unit, decimals);
  number.resize(number.size() - unit.symbol.size());
  while (!number.empty() && number.back() == ' ') number.pop_back();
  const std::size_t minus = number.find("−");
  if (minus != std::string::npos) number.replace(minus, std::string_view("−").size(), "-");
  number.erase(std::remove(number.begin(), number.end(), ','), number.end());  // a spreadsheet wants no groups
  return without_end_zeros(std::move(number));
}

std::string joined(const Json& list) {
  std::string out;
  for (const Json& item : list) {
    const std::string text = text_of(item);
    if (!text.empty()) out += (out.empty() ? "" : "; ") + text;
  }
  return out;
}

std::string first_of(const Entry& entry, std::initializer_list<const char*> fields) {
  for (const char* field : fields) {
    std::string text = entry.entered_text(field);
    if (!text.empty()) return text;
  }
  return "";
}

class Table {
 public:
  Table(const Log& log, const Bike& bike, const LogTable& options)
      : log_(log),
        clock_(bike.odometer_unit.empty() ? &preferred_unit(Kind::Distance, options.system)
                                          : find_unit(Kind::Distance, bike.odometer_unit)),
        wear_(&preferred_unit(Kind::Length, options.system)) {
    if (clock_ == nullptr) clock_ = &preferred_unit(Kind::Distance, options.system);
    out_ = fmt::format("day,kind,what,odometer ({}),wear ({}),grade,proof,by,note,state,made,id\r\n", clock_->symbol,
                       wear_->symbol);
  }

  void add(std::size_t index, const std::string& state) {
    const Entry& entry = log_.entries()[index];
    const auto it = entry.record.entered().find("wear");
    if (it == entry.record.entered().end() || !it->is_array() || it->empty())
      return add_row(entry, what_of(entry), "", state);
    for (const Json& wear : *it) {
      const std::string what = wear.is_object() && wear.contains("what") ? text_of(wear["what"]) : "";
      const std::string measured = wear.is_object() && wear.contains("measured") ? text_of(wear["measured"]) : "";
      add_row(entry, what_of(entry) + (what.empty() ? "" : ": " + what), measured, state);
    }
  }

  std::string done() { return std::move(out_); }

 private:
  void add_row(const Entry& entry, const std::string& what, const std::string& wear, const std::string& state) {
    const std::string by = first_of(entry, {"done_by"}).empty() ? entry.by() : first_of(entry, {"done_by"});
    const std::array<std::string, 12> cells{
        no_formula(entry.day()),
        no_formula(label_of_entry(entry.kind())),
        no_formula(what),
        number_in(first_of(entry, {"reading", "odometer", "new_reading"}), *clock_, distance_decimals),
        number_in(wear, *wear_, wear_decimals),
        no_formula(first_of(entry, {"grade"})),
        no_formula(first_of(entry, {"proof"})),
        no_formula(by),
        no_formula(entry.note()),
        state,
        no_formula(entry.made()),
        no_formula(entry.id()),
    };
    for (std::size_t i = 0; i < cells.size(); ++i) out_ += (i == 0 ? "" : ",") + quoted(cells[i]);
    out_ += "\r\n";
  }

  const Log& log_;
  const Unit* clock_;
  const Unit* wear_;
  std::string out_;
};

}  // namespace

std::string what_of(const Entry& entry) {
  if (const auto measured = entry.measurement())
    return measured->name().empty() ? measured->kind() : measured->kind() + ": " + measured->name();
  const auto items = entry.record.entered().find("items");
  if (items != entry.record.entered().end() && items->is_array()) return joined(*items);
  return first_of(entry, {"part", "item", "text", "nickname", "reading", "new_reading"});
}

std::string csv_of(const Log& log, const Bike& bike, const LogTable& options) {
  Table table(log, bike, options);
  for (const Line& line : bike.lines) {
    if (options.everything)
      for (const std::size_t i : line.replaced) table.add(i, "replaced");
    for (const std::size_t i : line.current) {
      const bool gone = log.entries()[i].is_deletion();
      if (!gone || line.apart || options.everything) table.add(i, gone ? "deleted" : line.apart ? "apart" : "");
    }
  }
  return table.done();
}

}  // namespace camside::records
