// A remark or a refusal, in plain words that say what to change. Every finding has a permanent number and names the
// field it is about by its path in the measurement ("stations[4].reading"), so that a screen, a command line and a test
// all speak of the same thing. The texts stand in core/findings/<topic>_remarks.cpp and nowhere else.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace camside {

enum class Severity : std::uint8_t {
  Note,     // good to know
  Caution,  // can mislead or hurt; stands at its step
  Doubt,    // stops a verdict of Within: the result becomes Not proven
  Refusal,  // no result can be given until the field is mended
};

// Which way a doubt can make a reading wrong; what that leaves of a verdict says findings/decision.hpp.
enum class Misleads : std::uint8_t {
  Flatters,   // things look better than they are, or no worse
  TooLarge,   // it shows more than there is
  EitherWay,  // it is no reading of what was meant: it proves nothing
};

// Number ranges: 1-99 text and units · 100-199 measurement file · 200-299 fields common to all · 300-399 bikes and
// their log, its file and its store · 1000 runout · 1100 gear pair · 1200 backlash · 1300 gears to order · 1400
// pushrods · 1500 due · 1600 wear · 1700 life · 1800 look-over · 1900 safety cautions · 1930 knowledge · 2000 torque. A
// number is never used twice.
struct Finding {
  int number = 0;
  Severity severity = Severity::Note;
  std::string field;   // path of the field, empty when it is about the whole
  std::string text;    // what is so: "Reading 5 is 3.2 in; the indicator's range is 0.2 in"
  std::string remedy;  // what to do: "Typed in thou? Pick the unit or correct it" (may be empty for a note)
  Misleads misleads = Misleads::Flatters;  // of a doubt
};

using Findings = std::vector<Finding>;

bool has(const Findings& findings, int number);
bool any_refusal(const Findings& findings);
Findings only_refusals(const Findings& findings);
std::string_view word_of(Severity severity);  // "note", "caution", "doubt", "refusal"

}  // namespace camside
