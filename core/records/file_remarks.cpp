#include "records/file_remarks.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "findings/remark.hpp"

namespace camside::remarks {

namespace {

std::string at(Place place) {
  return fmt::format("line {}, column {}", place.line, place.column);
}

Finding refusal(int number, std::string text, std::string remedy) {
  return {number, Severity::Refusal, "", std::move(text), std::move(remedy)};
}

std::string did_you_mean(std::string_view nearest) {
  return nearest.empty() ? "" : fmt::format("Did you mean {}?", repeated(nearest));
}

}  // namespace

Finding file_too_large(std::size_t most_bytes) {
  return refusal(100, fmt::format("The file is larger than {} MiB", most_bytes >> 20U),
                 "Split it into several files with fewer records");
}

Finding too_many_values(Place place, std::size_t most) {
  return refusal(125, fmt::format("Up to {} stand more than {} values", at(place), most),
                 "Split it into several files with fewer records");
}

Finding no_memory() {
  return refusal(126, "There is not enough memory for it", "Close other programs, or give it in smaller parts");
}

Finding not_utf8(Place place) {
  return refusal(101, fmt::format("At {} stands a byte that is not UTF-8 text", at(place)),
                 "Save the file as UTF-8; it may be in an older encoding, or no text at all");
}

Finding nul_byte(Place place) {
  return refusal(102, fmt::format("At {} stands a NUL character", at(place)),
                 "The file was damaged or is no text; open an older copy");
}

Finding cannot_be_read(Place place, std::string_view what) {
  return refusal(103, fmt::format("At {} {}", at(place), what),
                 "Mend it there; `camside example` prints a file to compare with");
}

Finding ends_too_early(Place place) {
  return refusal(104, fmt::format("The file ends too early, at {}", at(place)),
                 "It was cut off; open an older copy, or close the open brackets and quotes");
}

Finding name_twice(Place place, std::string_view name) {
  return refusal(105,
                 fmt::format("At {} the name {} stands a second time in the same object", at(place), repeated(name)),
                 "Keep the right one of the two");
}

Finding too_deep(Place place, std::size_t most_levels) {
  return refusal(106, fmt::format("At {} lists and objects are nested deeper than {} levels", at(place), most_levels),
                 "No measurement file is as deep as that; check where it comes from");
}

Finding too_many_names(Place place, std::size_t most_names) {
  return refusal(107, fmt::format("At {} one object has more than {} names", at(place), most_names),
                 "No measurement file is as wide as that; check where it comes from");
}

Finding number_too_large(Place place) {
  return refusal(108, fmt::format("At {} stands a number too large to compute with", at(place)),
                 "Enter the value as it was read");
}

Finding empty_text() {
  return refusal(109, "There is nothing in it", "Open another file; `camside example` prints one to start from");
}

Finding not_a_measurement_file(std::string field, std::string_view why) {
  return {110, Severity::Refusal, std::move(field), fmt::format("This is not a measurement file: {}", why),
          "It begins {\"camside\": 1, \"kind\": \"measurements\", \"records\": [ … ]}"};
}

Finding from_a_newer_version(std::string_view version) {
  return {111, Severity::Note, "camside",
          fmt::format("The file was written by a newer Camside (version {} of the file)", version),
          "It opens for reading only, so that nothing of it is lost; update Camside to change it"};
}

Finding unknown_kind(std::string field, std::string_view kind, std::string_view known) {
  return {112, Severity::Refusal, std::move(field), fmt::format("{} is no kind of measurement", repeated(kind)),
          fmt::format("Kinds are {}", known)};
}

Finding unknown_field(std::string field, std::string_view nearest) {
  std::string text = fmt::format("{} is not a known field; it is kept, but not used", repeated(field));
  return {113, Severity::Note, std::move(field), std::move(text), did_you_mean(nearest)};
}

Finding wrong_type(std::string field, std::string_view label, std::string_view found, std::string_view wanted) {
  return {114, Severity::Refusal, std::move(field), fmt::format("{} is {}; it must be {}", label, found, wanted),
          fmt::format("Write {}", wanted)};
}

Finding unreadable(std::string field, std::string_view label, std::string_view text, std::string_view reason,
                   std::string_view remedy) {
  return {115, Severity::Refusal, std::move(field), fmt::format("{} is {}: {}", label, repeated(text), reason),
          std::string(remedy)};
}

Finding not_a_choice(std::string field, std::string_view label, std::string_view text, std::string_view choices) {
  return {116, Severity::Refusal, std::move(field),
          fmt::format("{} is {}, which is none of its words", label, repeated(text)),
          fmt::format("Write one of: {}", choices)};
}

Finding same_id(std::string field, std::string_view other) {
  return {117, Severity::Note, std::move(field), fmt::format("The same id as {}", other),
          "Give each record its own id"};
}

Finding not_a_time(std::string field, std::string_view text) {
  return {118, Severity::Refusal, std::move(field), fmt::format("{} is not a date and time", repeated(text)),
          "Write it as 2024-05-14T10:20:00-05:00 (with the offset from UTC, or Z), or 2024-05-14 for the day alone"};
}

Finding needs_a_unit(std::string field, std::string_view label, std::string_view text, std::string_view example) {
  return {119, Severity::Refusal, std::move(field), fmt::format("{} is {} without a unit", label, text),
          fmt::format("Write it as a text with its unit, such as {}", repeated(example))};
}

Finding no_such_field(std::string field, std::string_view nearest) {
  std::string text = fmt::format("{} is not a field of this kind of measurement", repeated(field));
  return {120, Severity::Refusal, std::move(field), std::move(text), did_you_mean(nearest)};
}

Finding no_records() {
  return {121, Severity::Note, "records", "There is no measurement in it", "Add records"};
}

Finding csv_row(std::size_t line, std::string_view what, std::string_view remedy) {
  return refusal(130, fmt::format("Line {}: {}", line, what), std::string(remedy));
}

Finding csv_columns(std::size_t line, std::string_view what, std::string_view remedy) {
  return refusal(131, fmt::format("Line {}: {}", line, what), std::string(remedy));
}

Finding csv_no_rows() {
  return refusal(132, "The table holds no readings", "Write one line for each reading: angle, reading");
}

Finding csv_not_for(std::string_view kind) {
  return refusal(133, fmt::format("A table of readings can't be taken into {}", kind),
                 "Tables are for measurements with readings at several angles: runout and backlash");
}

Finding cannot_save(std::string_view where, std::string_view why) {
  return refusal(150, fmt::format("Not saved in {}: {}", where, why),
                 "What was entered is still here; make room or pick another place, then save again");
}

Finding cannot_load(std::string_view where, std::string_view why) {
  return refusal(151, fmt::format("What was saved in {} can't be read: {}", where, why),
                 "Nothing is saved over it; mend the place and start again");
}

Finding newest_missing() {
  return {156, Severity::Caution, "", "The newest version is missing, so the one before it was opened",
          "Check what was entered last"};
}

Finding opened_previous(std::string_view set_aside) {
  return {152, Severity::Caution, "", "The newest version was damaged, so the one before it was opened",
          fmt::format("Check what is missing; the damaged one is kept as {}", set_aside)};
}

Finding opened_nothing(std::string_view set_aside) {
  return {153, Severity::Caution, "", "What was saved is damaged and there is no good version before it",
          fmt::format("Start anew or open a copy; the damaged one is kept as {}", set_aside)};
}

Finding open_elsewhere(std::string_view where) {
  return refusal(154, fmt::format("{} is open in another Camside", where),
                 "Close the other one first, so that the two don't save over each other");
}

Finding cannot_open(std::string_view where, std::string_view why) {
  return refusal(155, fmt::format("{} can't be opened: {}", where, why), "Check the name and the place");
}

}  // namespace camside::remarks
