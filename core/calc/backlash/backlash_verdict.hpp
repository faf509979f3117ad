// Inside of backlash.hpp: what the lash proves against the windows.
#pragma once

#include <optional>
#include <vector>

#include "calc/backlash/backlash.hpp"
#include "findings/decision.hpp"

namespace camside::backlash {

// One limit against one end of the lash.
struct Gate {
  lash_temperature::State state = lash_temperature::State::AsMeasured;
  bool low = true;
  double lash_mm = 0.0;
  double guarded_mm = 0.0;  // g · U
  double limit_mm = 0.0;
  std::optional<Length> min;
  std::optional<Length> max;
  Source source = Source::memory();
  Verdict verdict = Verdict::NotProven;
  std::optional<Finding> doubt;  // why the numbers don't count; none: they decide

  // How far the lash stands inside the limit, negative when outside.
  double margin_mm() const { return low ? lash_mm - limit_mm : limit_mm - lash_mm; }
};

// Every limit that was given, judged; `findings` are those that can cast doubt on it.
std::vector<Gate> gates_of(const Input& in, const Result& r, const Findings& findings);

// The one that decides; none: nothing was given to judge by.
const Gate* deciding(const std::vector<Gate>& gates);

}  // namespace camside::backlash
