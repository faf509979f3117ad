#include "records/printed.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <utility>

#include "base/harmless.hpp"
#include "base/stable_sort.hpp"
#include "fields/path.hpp"
#include "records/json_path.hpp"
#include "units/format.hpp"

namespace camside::records {

namespace {

constexpr int most_decimals = 9;

// ---- numbers

int decimals_showing(double value, int significant) {
  if (value == 0.0 || !std::isfinite(value)) return 0;
  return std::clamp(significant - 1 - static_cast<int>(std::floor(std::log10(std::abs(value)))), 0, most_decimals);
}

std::string without_end_zeros(std::string text) {
  if (text.find('.') == std::string::npos) return text;
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text;
}

// One reading in another unit is a difference for U: the offset of °F doesn't belong to it.
double difference_in(double base, const Unit& unit) {
  return std::abs(unit.from_base(base) - unit.from_base(0.0));
}

std::string with_symbol(const std::string& number, const Unit& unit) {
  return unit.symbol.empty() ? number : number + " " + std::string(unit.symbol);
}

// Two significant digits of U (JCGM 100:2008, 7.2.6), the value to the same decimals.
std::string with_uncertainty(double base, double uncertainty, const Unit& unit) {
  if (unit.reciprocal) return format(base, unit);
  const double u = difference_in(uncertainty, unit);
  const int decimals = std::max(decimals_showing(u, 2), 0);
  const std::string number = format_decimal(unit.from_base(base), decimals);
  return with_symbol(fmt::format("{} ± {}", number, format_decimal(u, decimals)), unit);
}

std::string plain_value(double base, const Unit& unit) {
  if (unit.kind == Kind::Number) return without_end_zeros(format_decimal(base, std::max(4, decimals_showing(base, 3))));
  const double shown = unit.from_base(base);
  const int decimals = std::max(unit.display_decimals, decimals_showing(shown, 2));
  const bool tiny_residue = shown != 0.0 && std::abs(shown) < std::pow(10.0, -most_decimals);
  return format(base, unit, tiny_residue ? unit.display_decimals : decimals);
}

std::string figure_text(const Figure& figure, System system) {
  if (!figure.text.empty()) return figure.text;
  const Unit& unit = preferred_unit(figure.kind, system);
  return figure.uncertainty ? with_uncertainty(figure.base, *figure.uncertainty, unit) : plain_value(figure.base, unit);
}

// A limit as it was given, unless it comes from another unit with no end of digits.
std::string limit_value(double base, const Unit& unit) {
  const std::string full = format_full(base, unit);
  constexpr std::size_t longest = 14;
  return full.size() <= longest ? full : format(base, unit, unit.display_decimals + 2);
}

std::string limit_text(const Judgement& judgement, const Unit& unit) {
  if (judgement.lower && judgement.upper)
    return fmt::format("{} to {}", limit_value(*judgement.lower, unit), limit_value(*judgement.upper, unit));
  if (judgement.upper) return "at most " + limit_value(*judgement.upper, unit);
  if (judgement.lower) return "at least " + limit_value(*judgement.lower, unit);
  return "";
}

// ---- lines

std::size_t width_of(std::string_view text) {
  return static_cast<std::size_t>(
      std::count_if(text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

std::string padded(std::string_view text, std::size_t width) {
  const std::size_t used = width_of(text);
  return std::string(text) + std::string(width > used ? width - used : 0, ' ');
}

std::string capital(std::string_view word) {
  std::string out(word);
  if (!out.empty() && out.front() >= 'a' && out.front() <= 'z') out.front() = static_cast<char>(out.front() - 32);
  return out;
}

std::string label_of(const Record& record, std::span<const RecordKind> among) {
  const RecordKind* kind = find_kind(record.kind(), among);
  return kind == nullptr ? record.kind() : std::string(kind->label);
}

std::string heading_of(const Record& record, std::span<const RecordKind> among) {
  std::string heading = label_of(record, among);
  for (const std::string& part : {record.name(), record.taken()}) {
    if (!part.empty()) heading += " · " + part;
  }
  return harmless(heading);
}

const Figure* answer_of(const Outcome& outcome) {
  if (outcome.judgement) {
    if (const Figure* judged = outcome.figure(outcome.judgement->figure)) return judged;
  }
  return outcome.figures.empty() ? nullptr : &outcome.figures.front();
}

std::string verdict_word(const Outcome& outcome) {
  return outcome.judgement ? std::string(word_of(outcome.judgement->verdict)) : "No verdict";
}

std::string joined_sentences(const std::string& text, const std::string& remedy) {
  return remedy.empty() ? text : text + ". " + remedy;
}

std::string named_value(const Figure& figure, System system) {
  return fmt::format("{} {}", figure.label, figure_text(figure, system));
}

// "Runout (TIR) 0.0018 ± 0.0004 in; limit at most 0.003 in (common practice, no published source)"
std::string judged_text(const Outcome& outcome, const Figure& judged, System system) {
  std::string text = harmless(named_value(judged, system));
  if (!outcome.judgement) return text;
  const std::string limit = limit_text(*outcome.judgement, preferred_unit(judged.kind, system));
  const std::string& source = outcome.judgement->source.text();
  if (!limit.empty()) text += fmt::format("; limit {}", limit);
  return source.empty() ? text : text + fmt::format(" ({})", harmless(source));
}

// The verdict with what was judged; before it the first figure, when that is another one (an order, a setting).
std::string answer_lines(const Outcome& outcome, System system) {
  const std::string verdict = verdict_word(outcome);
  const Figure* judged = answer_of(outcome);
  if (judged == nullptr) return fmt::format("  {}\n", verdict);
  const Figure& first = outcome.figures.front();
  if (&first == judged) return fmt::format("  {}: {}\n", verdict, judged_text(outcome, *judged, system));
  return fmt::format("  {}: {}\n  Judged: {}\n", verdict, harmless(named_value(first, system)),
                     judged_text(outcome, *judged, system));
}

// Why, unless a finding says the same.
std::string reason_line(const SolvedRecord& r) {
  if (!r.solved.outcome.judgement || r.solved.outcome.judgement->reason.empty()) return "";
  const std::string& reason = r.solved.outcome.judgement->reason;
  const auto says_it = [&](const Finding& f) { return reason.find(f.text) != std::string::npos; };
  if (std::any_of(r.solved.findings.begin(), r.solved.findings.end(), says_it)) return "";
  return "  " + harmless(reason) + "\n";
}

int rank_of(Severity severity) {
  switch (severity) {
    case Severity::Refusal:
      return 0;
    case Severity::Caution:
      return 1;
    case Severity::Doubt:
      return 2;
    case Severity::Note:
      break;
  }
  return 3;
}

Findings cautions_first(Findings findings) {
  sort_stably(findings.begin(), findings.end(),
              [](const Finding& a, const Finding& b) { return rank_of(a.severity) < rank_of(b.severity); });
  return findings;
}

std::string findings_block(const Findings& findings) {
  std::string out;
  for (const Finding& f : cautions_first(findings)) {
    if (f.severity == Severity::Refusal) continue;
    out += fmt::format("  {}: {}\n", capital(word_of(f.severity)), harmless(joined_sentences(f.text, f.remedy)));
  }
  return out;
}

std::string figures_block(const Outcome& outcome, System system) {
  std::size_t width = 0;
  for (const Figure& figure : outcome.figures) width = std::max(width, width_of(figure.label));
  std::string out;
  for (const Figure& figure : outcome.figures) {
    out += fmt::format("  {}  {}", padded(harmless(figure.label), width), harmless(figure_text(figure, system)));
    out += figure.verdict ? fmt::format("  {}\n", word_of(*figure.verdict)) : "\n";
  }
  return out;
}

std::string step_text(const Step& step) {
  std::string line = step.formula;
  for (const std::string& part : {step.numbers, step.result}) {
    if (!part.empty()) line += (line.empty() ? "" : " = ") + part;
  }
  return harmless(line);
}

std::string working_block(const Outcome& outcome) {
  std::string out = "  Working\n";
  int number = 1;
  for (const Step& step : outcome.working)
    out += fmt::format("  {:>3} {}\n      {}\n", number++, harmless(step.title), step_text(step));
  return out;
}

std::string indented(const std::string& lines) {
  std::string out;
  for (std::size_t at = 0; at < lines.size();) {
    const std::size_t end = std::min(lines.find('\n', at), lines.size());
    if (end > at) out += "  " + harmless(std::string_view(lines).substr(at, end - at));
    out += '\n';
    at = end + 1;
  }
  return out;
}

// What a kind tells in its own way: then the table of figures is for programs only.
std::string told_block(const SolvedRecord& r, const Printing& printing, const RecordKind& kind) {
  std::string out = indented(kind.summary_text(r.solved));
  const std::string findings = findings_block(r.solved.findings);
  if (!findings.empty()) out += "\n" + findings;
  if (printing.working) out += "\n" + working_block(r.solved.outcome);
  return out;
}

std::string record_block(const SolvedRecord& r, const Printing& printing, std::span<const RecordKind> among) {
  std::string out = heading_of(r.record, among) + "\n";
  if (!r.solved.solved) return out + "  Can't be solved: something entered can't be used\n";
  const RecordKind* const kind = find_kind(r.record.kind(), among);
  if (kind && kind->summary_text) return out + told_block(r, printing, *kind);
  const Outcome& outcome = r.solved.outcome;
  out += answer_lines(outcome, printing.system) + reason_line(r);
  out += findings_block(r.solved.findings);
  if (!outcome.figures.empty()) out += "\n" + figures_block(outcome, printing.system);
  if (printing.working && !outcome.working.empty()) out += "\n" + working_block(outcome);
  return out;
}

// ---- several records

std::string counted(std::size_t n, std::string_view one, std::string_view many) {
  return fmt::format("{} {}", n, n == 1 ? one : many);
}

std::string summary_word(const SolvedRecord& r) {
  return r.solved.solved ? verdict_word(r.solved.outcome) : "Not solved";
}

std::string counts_line(const SolvedFile& file) {
  constexpr std::array<std::string_view, 5> words{"Outside", "Not proven", "Within", "No verdict", "Not solved"};
  std::string line = counted(file.records.size(), "measurement", "measurements");
  for (const std::string_view word : words) {
    const auto n = std::count_if(file.records.begin(), file.records.end(),
                                 [&](const SolvedRecord& r) { return summary_word(r) == word; });
    if (n > 0) line += fmt::format(" · {} {}", n, word);
  }
  return line;
}

std::string summary_line(const SolvedRecord& r, System system, std::span<const RecordKind> among) {
  const auto& figures = r.solved.outcome.figures;
  const Figure* answer = figures.empty() ? nullptr : &figures.front();
  const std::string value = answer == nullptr ? "" : harmless(named_value(*answer, system));
  const std::string what = label_of(r.record, among) + (r.record.name().empty() ? "" : ": " + r.record.name());
  return fmt::format("  {}  {}\n              {}\n", padded(summary_word(r), 10), harmless(what), value);
}

std::string summary_block(const SolvedFile& file, const Printing& printing, std::span<const RecordKind> among) {
  std::string out = file.file.bike().empty() ? "" : harmless(file.file.bike()) + "\n";
  if (!file.file.note().empty()) out += harmless(file.file.note()) + "\n";
  if (file.records.size() < 2) return out.empty() ? out : out + "\n";
  out += counts_line(file) + "\n";
  for (const SolvedRecord& r : file.records) out += summary_line(r, printing.system, among);
  return out + "\n";
}

// ---- for programs

std::string unit_symbol(Kind kind) {
  return std::string(units_of(kind).front().symbol);
}

Json number_json(double value) {
  return std::isfinite(value) ? Json(value) : Json();
}

Json figure_json(const Figure& figure) {
  Json json{{"key", figure.key},
            {"label", figure.label},
            {"value", number_json(figure.base)},
            {"unit", unit_symbol(figure.kind)}};
  if (figure.uncertainty) json["uncertainty"] = number_json(*figure.uncertainty);
  if (figure.verdict) json["verdict"] = std::string(word_of(*figure.verdict));
  if (!figure.text.empty()) json["text"] = figure.text;
  return json;
}

Json judgement_json(const Outcome& outcome) {
  const Judgement& j = *outcome.judgement;
  Json json{{"verdict", std::string(word_of(j.verdict))}, {"figure", j.figure}};
  if (j.lower) json["lower"] = number_json(*j.lower);
  if (j.upper) json["upper"] = number_json(*j.upper);
  if (const Figure* figure = outcome.figure(j.figure)) json["unit"] = unit_symbol(figure->kind);
  json["source"] = Json{{"basis", std::string(name_of(j.source.basis()))}, {"title", j.source.text()}};
  json["reason"] = j.reason;
  return json;
}

Json finding_json(const Finding& f) {
  return Json{{"number", f.number},
              {"severity", std::string(word_of(f.severity))},
              {"path", f.field},
              {"text", f.text},
              {"remedy", f.remedy}};
}

Json findings_json(const Findings& findings) {
  Json list = Json::array();
  for (const Finding& f : findings) list.push_back(finding_json(f));
  return list;
}

Findings below(Findings findings, const std::string& where) {
  for (Finding& f : findings) f.field = joined_path(where, f.field);
  return findings;
}

Findings findings_of_record(const SolvedRecord& r, std::size_t index) {
  const std::string where = item_path("records", index);
  Findings findings = below(r.around, where);
  for (Finding& f : below(r.solved.findings, where + ".entered")) findings.push_back(std::move(f));
  return findings;
}

Json record_json(const SolvedRecord& r, std::size_t index) {
  Json json;
  json["id"] = r.record.id();
  json["kind"] = r.record.kind();
  json["name"] = r.record.name();
  json["solved"] = r.solved.solved;
  const Outcome& outcome = r.solved.outcome;
  json["verdict"] = outcome.judgement ? Json(std::string(word_of(outcome.judgement->verdict))) : Json();
  if (outcome.judgement) json["judgement"] = judgement_json(outcome);
  json["figures"] = Json::array();
  for (const Figure& figure : outcome.figures) json["figures"].push_back(figure_json(figure));
  json["working"] = Json::array();
  for (const Step& s : outcome.working)
    json["working"].push_back(
        {{"title", s.title}, {"formula", s.formula}, {"numbers", s.numbers}, {"result", s.result}});
  json["findings"] = findings_json(findings_of_record(r, index));
  return json;
}

}  // namespace

SolvedFile solve_file(Opened opened, std::span<const RecordKind> among) {
  SolvedFile file;
  file.findings = std::move(opened.findings);
  file.file = std::move(opened.file);
  for (const Record& record : file.file.records) {
    SolvedRecord r{record, check_record(record, among), {}};
    if (find_kind(record.kind(), among) != nullptr) r.solved = solve(record, among);
    file.records.push_back(std::move(r));
  }
  return file;
}

std::string print_for_people(const SolvedFile& file, const Printing& printing, std::span<const RecordKind> among) {
  std::string out = summary_block(file, printing, among);
  for (const Finding& f : cautions_first(file.findings)) {
    if (f.severity != Severity::Refusal)
      out += fmt::format("{}: {}\n", capital(word_of(f.severity)), harmless(joined_sentences(f.text, f.remedy)));
  }
  bool first = true;
  for (const SolvedRecord& r : file.records) {
    if (!first) out += "\n";
    first = false;
    out += record_block(r, printing, among);
  }
  return out;
}

std::string print_for_programs(const SolvedFile& file) {
  Json json;
  json["camside"] = file_version;
  json["kind"] = "results";
  json["bike"] = file.file.bike();
  json["records"] = Json::array();
  for (std::size_t i = 0; i < file.records.size(); ++i) json["records"].push_back(record_json(file.records[i], i));
  json["findings"] = findings_json(file.findings);
  return write_json(json);
}

Findings findings_of(const SolvedFile& file) {
  Findings findings = file.findings;
  for (std::size_t i = 0; i < file.records.size(); ++i) {
    for (Finding& f : findings_of_record(file.records[i], i)) findings.push_back(std::move(f));
  }
  return findings;
}

Findings refusals_of(const SolvedFile& file) {
  Findings findings = findings_of(file);
  std::erase_if(findings, [](const Finding& f) { return f.severity != Severity::Refusal; });
  return findings;
}

std::string print_findings(const Findings& findings) {
  std::string out;
  for (const Finding& f : findings) {
    const std::string where = f.field.empty() ? "" : f.field + ": ";
    out +=
        harmless(fmt::format("{}{} {}: {}", where, word_of(f.severity), f.number, joined_sentences(f.text, f.remedy)));
    out += '\n';
  }
  return out;
}

bool any_not_within(const SolvedFile& file) {
  return std::any_of(file.records.begin(), file.records.end(), [](const SolvedRecord& r) {
    return r.solved.outcome.judgement && r.solved.outcome.judgement->verdict != Verdict::Within;
  });
}

}  // namespace camside::records
