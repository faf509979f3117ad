// Figures, working and remarks of the due list; for inspection_due.cpp and boards.
#pragma once

#include "calc/function_view.hpp"
#include "calc/inspection_due.hpp"

namespace camside::inspection_due {

std::string why_text(const Item& item);  // the rule in words, with its source
std::string by_how_much(const ItemResult& item, FunctionView<std::string(Distance)> show);
std::string by_how_much(const ItemResult& item);                      // "11,300 mi (18,186 km)", "12 days"
void add_report(const Input& in, const Result& r, Outcome& outcome);  // figures and working

}  // namespace camside::inspection_due
