// What every calculator returns beside its own typed values: figures, a judgement, the working, the findings. Screens,
// the command line and the report print an Outcome without knowing which calculator made it, so none can show a number
// and forget its doubt.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "findings/finding.hpp"
#include "findings/source.hpp"
#include "units/unit.hpp"

namespace camside {

enum class Verdict : std::uint8_t { Within, Outside, NotProven };
std::string_view word_of(Verdict verdict);  // "Within", "Outside", "Not proven"

// One value of a result. `base` is in the base unit of `kind` (mm, rad, km, °C …), full precision.
struct Figure {
  std::string key;    // permanent, for machines: "tir", "eccentricity"
  std::string label;  // for people: "Runout (TIR)"
  Kind kind = Kind::Number;
  double base = 0.0;
  std::optional<double> uncertainty;  // expanded uncertainty U, same unit; none where it has no meaning
  std::optional<Verdict> verdict;     // only when this figure itself was judged
  std::string text;                   // when set, shown to people instead of the formatted number: "2 turns 3 flats"
};

// What was judged against what. `limit_text` is ready to read: "0.003 in", "0.0005 to 0.0015 in".
struct Judgement {
  Verdict verdict = Verdict::NotProven;
  std::string figure;           // key of the figure judged
  std::optional<double> lower;  // limits in the figure's base unit
  std::optional<double> upper;
  Source source;
  std::string reason;  // one sentence: why this verdict, and for Not proven what would settle it
};

// One step of the working: T* + U = 0.0028 + 0.0004 = 0.0032 in
struct Step {
  std::string title;    // "Expanded uncertainty"
  std::string formula;  // "U = k · u"
  std::string numbers;  // "2.00 · 0.00021 in"
  std::string result;   // "0.00042 in"
};

struct Outcome {
  std::vector<Figure> figures;  // the answer first
  std::optional<Judgement> judgement;
  std::vector<Step> working;
  Findings findings;

  const Figure* figure(std::string_view key) const;  // nullptr when there is none
};

}  // namespace camside
