// What every fuzzer insists on: a broken promise ends the run, and every finding has its words.
#pragma once

#include <cstdio>
#include <cstdlib>

#include "findings/finding.hpp"

inline void insist(bool holds, const char* what) {
  if (holds) return;
  std::fprintf(stderr, "broken promise: %s\n", what);
  std::abort();
}

inline void check_words(const camside::Findings& findings) {
  for (const camside::Finding& f : findings) {
    insist(f.number > 0, "a finding has a number");
    insist(!f.text.empty(), "a finding says what is so");
    insist(f.severity != camside::Severity::Refusal || !f.remedy.empty(), "a refusal says what to do");
  }
}
