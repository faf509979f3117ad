#include "records/csv.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "records/file_remarks.hpp"
#include "records/form.hpp"
#include "records/json_path.hpp"
#include "records/nearest.hpp"
#include "units/parse.hpp"

namespace camside::records {

namespace {

constexpr std::string_view header_example = "Write a header such as: angle (deg), reading (in)";

struct Line {
  std::size_t number;  // from 1, as an editor shows it
  std::string_view text;
};

struct Column {
  FormField field;
  std::string unit;  // as written in the header; empty when the cells carry it
  const Unit* known_unit = nullptr;
};

using Cells = std::vector<std::string>;
using Columns = std::vector<Column>;

std::string_view trimmed(std::string_view text) {
  const std::size_t first = text.find_first_not_of(" \t\r");
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(" \t\r") - first + 1);
}

std::vector<Line> lines_of(std::string_view csv) {
  std::vector<Line> lines;
  for (std::size_t number = 1; !csv.empty(); ++number) {
    const std::size_t end = std::min(csv.find('\n'), csv.size());
    const std::string_view text = trimmed(csv.substr(0, end));
    if (!text.empty() && text.front() != '#') lines.push_back({number, csv.substr(0, end)});
    csv.remove_prefix(std::min(end + 1, csv.size()));
  }
  return lines;
}

char separator_of(std::string_view line) {
  if (line.find(';') != std::string_view::npos) return ';';
  return line.find('\t') != std::string_view::npos ? '\t' : ',';
}

// One cell off the front of a line, with its quotes taken off.
std::string take_cell(std::string_view& rest, char separator) {
  std::string cell;
  bool quoted = false;
  std::size_t i = 0;
  for (; i < rest.size() && (quoted || rest[i] != separator); ++i) {
    const bool doubled = quoted && rest[i] == '"' && i + 1 < rest.size() && rest[i + 1] == '"';
    if (rest[i] == '"' && !doubled && (quoted || trimmed(cell).empty())) {
      quoted = !quoted;
      continue;
    }
    if (doubled) ++i;
    cell += rest[i];
  }
  rest.remove_prefix(std::min(i + 1, rest.size()));
  return std::string(trimmed(cell));
}

Cells cells_of(std::string_view line, char separator) {
  Cells cells;
  const bool open_end = !line.empty() && trimmed(line).back() == separator;
  while (!line.empty()) cells.push_back(take_cell(line, separator));
  if (open_end && separator != '\t') cells.emplace_back();
  while (!cells.empty() && cells.back().empty()) cells.pop_back();
  return cells;
}

bool looks_like_header(const Cells& cells) {
  return std::none_of(cells.begin(), cells.end(), [](const std::string& cell) {
    return !cell.empty() && std::string_view("0123456789.,+-").find(cell.front()) != std::string_view::npos;
  });
}

// "reading (in)" or "reading [in]" to name and unit.
std::pair<std::string, std::string> name_and_unit(std::string_view cell) {
  const std::size_t open = cell.find_first_of("([");
  if (open == std::string_view::npos) return {std::string(trimmed(cell)), ""};
  const std::size_t close = cell.find_last_of(")]");
  const std::size_t end = close == std::string_view::npos || close < open ? cell.size() : close;
  return {std::string(trimmed(cell.substr(0, open))), std::string(trimmed(cell.substr(open + 1, end - open - 1)))};
}

// Fields of one item of the kind's list: asked of a record with a single empty item.
std::vector<FormField> item_fields(const RecordKind& kind, std::span<const RecordKind> among) {
  Record probe = make_record(kind, "", "");
  const std::string item = add_item(probe, kind.csv_list, among);
  std::vector<FormField> fields;
  for (FormField& field : form_of(probe, among)) {
    if (field.path == item + "." + std::string(field.field.name)) fields.push_back(std::move(field));
  }
  return fields;
}

std::string small(std::string_view text) {
  std::string out(text);
  std::transform(out.begin(), out.end(), out.begin(),
                 [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
  return out;
}

tl::expected<Column, Finding> column_of(std::string_view cell, std::size_t line, const std::vector<FormField>& known) {
  auto [name, unit] = name_and_unit(cell);
  std::vector<std::string_view> names;
  for (const FormField& field : known) {
    names.push_back(field.field.name);
    if (small(name) != small(field.field.name) && small(name) != small(field.field.label)) continue;
    if (!unit.empty() && find_unit(field.kind, unit) == nullptr)
      return tl::unexpected(
          remarks::csv_columns(line, fmt::format("“{}” is no unit of {}", unit, name_of(field.kind)), header_example));
    return Column{field, unit, find_unit(field.kind, unit)};
  }
  return tl::unexpected(remarks::csv_columns(line, fmt::format("“{}” is no column of this table", name),
                                             fmt::format("Columns are {}", joined_names(names))));
}

tl::expected<Columns, Finding> columns_of(const Cells& header, std::size_t line, const std::vector<FormField>& known) {
  Columns columns;
  for (const std::string& cell : header) {
    auto column = column_of(cell, line, known);
    if (!column) return tl::unexpected(column.error());
    const std::string_view name = column->field.field.name;
    if (std::any_of(columns.begin(), columns.end(), [&](const Column& c) { return c.field.field.name == name; }))
      return tl::unexpected(
          remarks::csv_columns(line, fmt::format("The column “{}” stands twice", name), "Keep one of the two"));
    columns.push_back(std::move(*column));
  }
  return columns;
}

bool plain_number(const FormField& field) {
  return field.sort == FieldSort::Number && (field.kind == Kind::Number || units_of(field.kind).front().symbol.empty());
}

tl::expected<Json, Finding> yes_or_no(const std::string& cell, const Column& column, std::size_t line) {
  const std::string word = small(cell);
  if (word == "yes" || word == "y" || word == "true" || word == "1") return Json(true);
  if (word == "no" || word == "n" || word == "false" || word == "0") return Json(false);
  return tl::unexpected(remarks::csv_row(
      line, fmt::format("{} is “{}”, neither yes nor no", column.field.field.name, cell), "Write yes or no"));
}

// "-0.0012": what nearly every cell is, and needs no reader that knows fractions, groups and units.
bool plain_decimal(std::string_view cell) {
  constexpr std::size_t most_digits = 15;
  if (!cell.empty() && cell.front() == '-') cell.remove_prefix(1);
  const std::size_t point = std::min(cell.find('.'), cell.size());
  const auto digits = [](std::string_view part) {
    return !part.empty() && part.find_first_not_of("0123456789") == std::string_view::npos;
  };
  if (cell.size() > most_digits || !digits(cell.substr(0, point))) return false;
  return point == cell.size() || digits(cell.substr(point + 1));
}

// The cell as it goes into the record: digits as written, with the unit of its column unless it has its own.
tl::expected<Json, Finding> value_of(const std::string& cell, const Column& column, std::size_t line) {
  if (column.field.sort == FieldSort::Flag) return yes_or_no(cell, column, line);
  if (column.field.sort != FieldSort::Number) return Json(cell);
  const bool plain = plain_number(column.field);
  if (!plain && column.known_unit != nullptr && plain_decimal(cell)) return Json(cell + " " + column.unit);
  ParseOptions options;
  options.default_unit = plain ? &units_of(column.field.kind).front() : column.known_unit;
  const auto read = parse(column.field.kind, cell, options);
  if (!read)
    return tl::unexpected(remarks::csv_row(
        line, fmt::format("{} is “{}”: {}", column.field.field.name, cell, read.error().reason),
        read.error().fault == ParseFault::NeedsUnit ? header_example : std::string_view(read.error().remedy)));
  if (plain) return number_from(cell);
  const bool own_unit = parse(column.field.kind, cell).has_value();
  return Json(own_unit ? cell : cell + " " + column.unit);
}

tl::expected<Json, Finding> item_of(const Cells& cells, const Columns& columns, std::size_t line) {
  if (cells.size() > columns.size())
    return tl::unexpected(
        remarks::csv_columns(line, fmt::format("{} columns where the header has {}", cells.size(), columns.size()),
                             "With decimal commas put semicolons between the columns"));
  Json item = Json::object();
  for (std::size_t i = 0; i < columns.size(); ++i) {
    const FormField& field = columns[i].field;
    if (i >= cells.size() || cells[i].empty()) {
      if (!field.field.required) continue;
      return tl::unexpected(
          remarks::csv_row(line, fmt::format("{} is missing", field.field.name), "Fill the cell or take the line out"));
    }
    auto value = value_of(cells[i], columns[i], line);
    if (!value) return tl::unexpected(value.error());
    item[std::string(field.field.name)] = std::move(*value);
  }
  return item;
}

std::optional<Finding> lacks_required(const Columns& columns, const std::vector<FormField>& known, std::size_t line) {
  for (const FormField& field : known) {
    const auto same = [&](const Column& c) { return c.field.field.name == field.field.name; };
    if (field.field.required && std::none_of(columns.begin(), columns.end(), same))
      return remarks::csv_columns(line, fmt::format("There is no column “{}”", field.field.name), header_example);
  }
  return std::nullopt;
}

}  // namespace

tl::expected<std::size_t, Finding> take_csv(Record& record, std::string_view csv, std::string_view columns_text,
                                            std::span<const RecordKind> among) {
  const RecordKind* kind = find_kind(record.kind(), among);
  if (kind == nullptr || kind->csv_list.empty()) return tl::unexpected(remarks::csv_not_for(record.kind()));
  if (auto finding = refused_bytes(csv)) return tl::unexpected(*finding);
  std::vector<Line> lines = lines_of(csv);
  if (lines.empty()) return tl::unexpected(remarks::csv_no_rows());

  const char separator = separator_of(lines.front().text);
  Cells header = cells_of(columns_text, separator_of(columns_text));
  const std::size_t header_line = lines.front().number;
  if (header.empty()) {
    header = cells_of(lines.front().text, separator);
    if (!looks_like_header(header))
      return tl::unexpected(remarks::csv_columns(header_line, "There is no header with the units", header_example));
    lines.erase(lines.begin());
  }
  const std::vector<FormField> known = item_fields(*kind, among);
  const auto columns = columns_of(header, header_line, known);
  if (!columns) return tl::unexpected(columns.error());
  if (auto finding = lacks_required(*columns, known, header_line)) return tl::unexpected(*finding);
  if (lines.empty()) return tl::unexpected(remarks::csv_no_rows());

  Json list = Json::array();
  for (const Line& line : lines) {
    auto item = item_of(cells_of(line.text, separator), *columns, line.number);
    if (!item) return tl::unexpected(item.error());
    list.push_back(std::move(*item));
  }
  const std::size_t count = list.size();
  Json* place = place_at(record.entered(), kind->csv_list);
  if (place == nullptr) return tl::unexpected(remarks::csv_not_for(record.kind()));
  *place = Json::array();
  // Before the rows are there: setting a text looks through all that is entered.
  for (const auto& [path, text] : kind->csv_also) set_text(record, path, text, nullptr, among);
  *place_at(record.entered(), kind->csv_list) = std::move(list);
  return count;
}

}  // namespace camside::records
