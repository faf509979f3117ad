#include "fields/data_remarks.hpp"

#include <fmt/format.h>

#include <utility>

#include "findings/remark.hpp"

namespace camside::remarks {

Finding id_twice(std::string field, std::string_view id) {
  return refusal(1930, std::move(field), fmt::format("\"{}\" stands here twice", id), "Give each its own name");
}

Finding names_nothing(std::string field, std::string_view what, std::string_view name) {
  return refusal(1931, std::move(field), fmt::format("There is no {} \"{}\"", what, name),
                 fmt::format("Write the id of one of the {}s", what));
}

Finding costs_out_of_order(std::string field) {
  return refusal(1932, std::move(field), "The likely cost must lie between best and worst",
                 "Enter best, likely and worst in rising order");
}

Finding no_chances(std::string field) {
  return refusal(1933, std::move(field), "There is no chance at any distance",
                 "Enter at least one distance with its chance");
}

Finding distances_not_rising(std::string field) {
  return refusal(1934, std::move(field), "The distances must rise from one to the next", "Put them in order");
}

Finding chances_falling(std::string field) {
  return refusal(1935, std::move(field), "A chance by a distance cannot fall as the distance grows",
                 "Correct the chance or the distance");
}

Finding years_backwards(std::string field, int first, int last) {
  return refusal(1936, std::move(field), fmt::format("The last year, {}, is before the first, {}", last, first),
                 "Correct one of them");
}

}  // namespace camside::remarks
