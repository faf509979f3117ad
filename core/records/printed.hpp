// Results as text for people and as JSON for programs.
#pragma once

#include <string>
#include <vector>

#include "records/measurement.hpp"
#include "units/unit.hpp"

namespace camside::records {

struct SolvedRecord {
  Record record;
  Findings around;  // of the record but for what was entered
  Solved solved;
};

struct SolvedFile {
  MeasurementFile file;
  Findings findings;  // of the file as a whole
  std::vector<SolvedRecord> records;
};

SolvedFile solve_file(Opened opened, std::span<const RecordKind> among = kinds());

struct Printing {
  System system = System::Inch;
  bool working = false;  // the steps too
};

// The answer first (verdict, value ± U, limit and who says so), then what to mind, the figures, the working. Several
// records begin with a summary. Refusals are not in here; refusals_of() has them.
std::string print_for_people(const SolvedFile& file, const Printing& printing = {},
                             std::span<const RecordKind> among = kinds());

// Every figure with its unit (the base unit of its kind), the shortest decimal that reads back as the same double, its
// uncertainty, verdict; the judgement, working and findings.
std::string print_for_programs(const SolvedFile& file);

// All findings with paths from the file's root, and those of them that keep a result from being given.
Findings findings_of(const SolvedFile& file);
Findings refusals_of(const SolvedFile& file);
// "records[0].entered.low: refusal 200: Lowest needle is … Correct …", one a line.
std::string print_findings(const Findings& findings);

// Any verdict other than Within.
bool any_not_within(const SolvedFile& file);

}  // namespace camside::records
