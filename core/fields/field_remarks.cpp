#include "fields/field_remarks.hpp"

#include <fmt/format.h>

namespace camside::remarks {

Finding out_of_range(std::string field, std::string_view label, const std::string& value, const std::string& range,
                     bool has_unit) {
  return {200, Severity::Refusal, std::move(field), fmt::format("{} is {}; allowed is {}", label, value, range),
          has_unit ? "Correct the value, or pick the unit it was read in" : "Correct the value"};
}

Finding missing(std::string field, std::string_view label) {
  return {201, Severity::Refusal, std::move(field), fmt::format("{} is missing", label), "Enter it"};
}

Finding not_finite(std::string field, std::string_view label) {
  return {202, Severity::Refusal, std::move(field), fmt::format("{} is not a finite number", label),
          "Enter the value as it was read"};
}

Finding not_whole(std::string field, std::string_view label, const std::string& value) {
  return {203, Severity::Refusal, std::move(field), fmt::format("{} is {}; it must be a whole number", label, value),
          "Enter a whole number"};
}

Finding no_such_date(std::string field, std::string_view label) {
  return {204, Severity::Refusal, std::move(field), fmt::format("{} is not a day of the calendar", label),
          "Write it as year-month-day, such as 2003-05-14"};
}

Finding more_not_listed() {
  return {205, Severity::Refusal, "", "More fields have errors than are listed here", "Correct these first"};
}

}  // namespace camside::remarks
