#include "fields/field.hpp"

#include <array>
#include <cmath>
#include <limits>

#include "fields/field_remarks.hpp"
#include "fields/path.hpp"
#include "units/format.hpp"

namespace camside {

namespace {

constexpr std::array<Choice, 6> basis_words{{
    {"standard", "A standard"},
    {"handbook", "A handbook"},
    {"makers sheet", "The part maker's sheet"},
    {"owner", "The owner's own figure"},
    {"common practice", "Common practice, no published source"},
    {"memory", "From memory"},
}};

// The same but for the last bits: 360 ° typed and 360 ° from the code's own arithmetic may differ there.
bool same(double a, double b) {
  return std::isfinite(b) && std::fabs(a - b) <= 4.0 * std::numeric_limits<double>::epsilon() * std::fabs(b);
}
bool below_range(const Field& f, double v) {
  return same(v, f.low) ? f.low_open : v < f.low;
}
bool above_range(const Field& f, double v) {
  return same(v, f.high) ? f.high_open : v > f.high;
}

// The name may be empty for the items of a list of plain values: their path is the list's own with the index.
std::string joined(const std::string& path, std::string_view name) {
  if (path.empty() || name.empty()) return path + std::string(name);
  return path + "." + std::string(name);
}

// In the metric unit, and in the inch system's where that differs: the reader knows one of them. "81.28 mm (3.2 in)"
std::string in_both(const std::string& metric, const std::string& in_inches) {
  return metric == in_inches ? metric : metric + " (" + in_inches + ")";
}

// Threads per inch and diametral pitch turn a range upside down, and nothing has none of them; both stay in mm.
const Unit& unit_shown(Kind kind, System system) {
  const Unit& unit = preferred_unit(kind, system);
  return unit.reciprocal ? preferred_unit(kind, System::Metric) : unit;
}

std::string value_text(double v, Kind kind) {
  return in_both(format_full(v, unit_shown(kind, System::Metric)), format_full(v, unit_shown(kind, System::Inch)));
}

// Bounds are round in metric units; in the inch system a few digits say enough: "0.19685 in", "0 in".
std::string bound_text(double v, Kind kind, System system) {
  const Unit& unit = unit_shown(kind, system);
  if (system == System::Metric) return format_full(v, unit);
  std::string text = format(v, unit, unit.display_decimals + 1);
  const std::size_t end = text.find(' ');
  const std::size_t last = text.find_last_not_of('0', end - 1);
  text.erase(text[last] == '.' ? last : last + 1, end - (text[last] == '.' ? last : last + 1));
  return text;
}

class RangeCheck final : public FieldVisitor {
 public:
  Findings findings;

 private:
  static constexpr std::size_t most_findings = 50;

  void on_number(const Field& f, const NumberRef& n) override {
    if (!n.has()) return missing(f, path_of(f));
    const double v = n.get();
    if (findings.size() > most_findings) return;  // words cost time; a list may have a million items
    if (!std::isfinite(v))
      add(remarks::not_finite(path_of(f), f.label));
    else if (below_range(f, v) || above_range(f, v))
      add(remarks::out_of_range(path_of(f), f.label, value_text(v, n.kind),
                                in_both(range_text(f, n.kind), range_text(f, n.kind, System::Inch)),
                                units_of(n.kind).size() > 1));
  }
  void on_text(const Field& f, const TextRef& t) override {
    if (t.get().empty()) missing(f, path_of(f));
  }
  void on_flag(const Field& f, const FlagRef& r) override {
    if (!r.has()) missing(f, path_of(f));
  }
  void on_date(const Field& f, const DateRef& r) override {
    if (!r.has()) return missing(f, path_of(f));
    if (!r.get().ok()) add(remarks::no_such_date(path_of(f), f.label));
  }
  void on_choice(const Field& f, const ChoiceRef& c) override {
    if (c.get() < 0) missing(f, path_of(f));
  }
  void on_group(const Field& f, const GroupRef& g) override {
    if (g.has()) return g.describe(*this);
    missing(f, path());
  }

  void missing(const Field& f, std::string where) {
    if (f.required) add(remarks::missing(std::move(where), f.label));
  }
  void add(Finding finding) {
    if (findings.size() == most_findings) findings.push_back(remarks::more_not_listed());
    if (findings.size() < most_findings) findings.push_back(std::move(finding));
  }
};

}  // namespace

const Choices basis_choices{basis_words};

std::string_view name_of(Basis basis) {
  return basis_choices[static_cast<std::size_t>(basis)].name;
}

Source build_source(Basis basis, std::string title) {
  switch (basis) {
    case Basis::Standard:
      return Source::standard(std::move(title));
    case Basis::Handbook:
      return Source::handbook(std::move(title));
    case Basis::MakersSheet:
      return Source::makers_sheet(title.empty() ? "the part maker's sheet" : std::move(title));
    case Basis::Owner:
      return Source::owner(title.empty() ? "the owner" : std::move(title));
    case Basis::CommonPractice:
      return Source::common_practice();
    case Basis::Memory:
      break;
  }
  return Source::memory();
}

void describe(FieldVisitor& v, SourceParts& parts) {
  v.choice(Field{"basis", "Who says so", "Where the figure comes from"}.must(), parts.basis, basis_choices);
  v.value(title_field(parts.basis), parts.title);
}

Field title_field(Basis basis) {
  const Field title{"title", "Title", "Which sheet, standard or handbook: title, edition, page"};
  return basis == Basis::Standard || basis == Basis::Handbook ? title.must() : title;
}

std::string FieldVisitor::path_of(const Field& f) const {
  return joined(path_, f.name);
}

void FieldVisitor::value(const Field& f, std::string& v) {
  on_text(f, {[&v] { return !v.empty(); }, [&v] { return v; }, [&v](std::string s) { v = std::move(s); }});
}
void FieldVisitor::value(const Field& f, bool& v) {
  on_flag(f, {[] { return true; }, [&v] { return v; }, [&v](bool b) { v = b; }});
}
void FieldVisitor::value(const Field& f, std::optional<bool>& v) {
  on_flag(f, {[&v] { return v.has_value(); }, [&v] { return v.value_or(false); }, [&v](bool b) { v = b; }});
}
void FieldVisitor::value(const Field& f, Date& v) {
  on_date(f, {[] { return true; }, [&v] { return v; }, [&v](Date d) { v = d; }});
}
void FieldVisitor::value(const Field& f, std::optional<Date>& v) {
  on_date(f, {[&v] { return v.has_value(); }, [&v] { return v.value_or(Date{}); }, [&v](Date d) { v = d; }});
}

void FieldVisitor::source(const Field& f, std::optional<Source>& v) {
  std::optional<SourceParts> parts;
  if (v) parts = SourceParts{v->basis(), v->text()};
  group(f, parts);
  v.reset();
  if (parts) v.emplace(build_source(parts->basis, std::move(parts->title)));
}

void FieldVisitor::enter_group(const Field& f, const GroupRef& g) {
  const std::string outside = path_;
  path_ = path_of(f);
  on_group(f, g);
  path_ = outside;
}

void FieldVisitor::enter_list(const Field& f, const ListRef& l) {
  const std::string outside = path_;
  path_ = path_of(f);
  on_list(f, l);
  path_ = outside;
}

void FieldVisitor::visit_item(const ListRef& l, std::size_t i) {
  const std::string outside = path_;
  path_ = item_path(path_, i);
  l.describe_item(*this, i);
  path_ = outside;
}

Findings check_fields(FunctionView<void(FieldVisitor&)> describe_input) {
  RangeCheck check;
  describe_input(check);
  return std::move(check.findings);
}

std::string range_text(const Field& f, Kind kind, System system) {
  const auto shown = [&](double bound) { return bound_text(bound, kind, system); };
  const bool has_low = std::isfinite(f.low);
  const bool has_high = std::isfinite(f.high);
  const std::string low = has_low ? (f.low_open ? "above " : "") + shown(f.low) : "";
  const std::string high = has_high ? (f.high_open ? "below " : "") + shown(f.high) : "";
  if (has_low && has_high) return low + " to " + high;
  if (has_low) return f.low_open ? low : "at least " + low;
  if (has_high) return f.high_open ? high : "at most " + high;
  return "any value";
}

}  // namespace camside
