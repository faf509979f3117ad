// A look-over on one page of plain text: to be sent to a friend, kept, or printed by the command line. No percentages:
// they are in the working.
#pragma once

#include <string>

#include "calc/look_over.hpp"

namespace camside::look_over {

std::string money_text(Money m);         // "13,691": whole, no cents
std::string rough_text(Money m);         // "13,690": to the next ten from a hundred on, as nobody knows it better
std::string rough_range(const Span& s);  // "490 to 13,690"
std::string bike_text(const Input& in);  // "2004 · 38,200 mi (61,477 km) · asking 6,800"
bool walk_away_met(const Result& r);
std::string why_no_offer(const Input& in, const Result& r);  // empty where there is one

std::string summary(const Input& in, const Result& r);  // lines that end with '\n'

}  // namespace camside::look_over
