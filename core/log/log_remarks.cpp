#include "log/log_remarks.hpp"

#include <fmt/format.h>

#include <utility>

#include "findings/remark.hpp"

namespace camside::remarks {

namespace {

std::string words(Lines lines) {
  if (lines.first == lines.last) return fmt::format("Line {} is", lines.first);
  return fmt::format("Lines {} to {} are", lines.first, lines.last);
}

std::string counted(std::uint64_t count, std::string_view one, std::string_view more) {
  return fmt::format("{} {}", count, count == 1 ? one : more);
}

constexpr const char* still_here = "What was entered is still here; make room or export it, then save again";

}  // namespace

Finding entry_without_id(std::string field) {
  return note(300, std::move(field), "This entry has no id; it is kept, but it can't be corrected",
              "Write it anew and delete nothing");
}

Finding unknown_entry_kind(std::string field, std::string_view kind) {
  return note(301, std::move(field),
              fmt::format("{} is an entry this Camside doesn't know; it is kept", repeated(kind)),
              "A newer Camside may show it");
}

Finding entry_not_an_object(std::string field, std::string_view found) {
  return note(302, std::move(field), fmt::format("Where an entry should stand is {}; it is kept, but not used", found),
              "");
}

Finding entry_time_needed(std::string field, std::string_view text) {
  return refusal(303, std::move(field), fmt::format("{} is not the time at which an entry was made", repeated(text)),
                 "Write it as 2024-05-14T10:20:00-05:00, with the offset from UTC");
}

Finding replaces_itself(std::string_view id) {
  return note(304, "replaces", fmt::format("Entry {} says that it replaces itself; it is shown as it is", repeated(id)),
              "");
}

Finding replaces_in_a_circle(std::string_view id) {
  return caution(305, "replaces", fmt::format("Entry {} and others replace each other in a circle", repeated(id)),
                 "All of them are shown; correct or delete what is wrong");
}

Finding replaces_unknown(std::string_view id) {
  return note(306, "replaces", fmt::format("Entry {}, which was corrected, is not in this log", repeated(id)),
              "Merging the device it was made on brings it");
}

Finding same_id_other_content(std::string_view id, std::size_t how_many) {
  return caution(307, "id", fmt::format("{} entries have the id {} and differ", how_many, repeated(id)),
                 "All are kept, side by side; pick the right one");
}

Finding corrected_apart(std::string_view id, std::size_t how_many) {
  return caution(308, "replaces", fmt::format("Entry {} has {} versions", repeated(id), how_many),
                 "All are kept, side by side; pick the right one");
}

Finding measurement_needed(std::string field) {
  return refusal(309, std::move(field), "An entry of a measurement holds none", "Put the measurement into “record”");
}

Finding rule_without_interval(std::string field) {
  return refusal(310, std::move(field), "The interval is missing", "Enter a distance, months, or that there is none");
}

Finding rule_and_none(std::string field) {
  return refusal(311, std::move(field), "An interval and that the bike has none can't both be",
                 "Take out the interval, or say that the bike has it");
}

Finding put_off_for_ever(std::string field) {
  return refusal(312, std::move(field), "Until when is missing", "Enter the day or the odometer to be reminded at");
}

Finding not_a_log_file(std::string field, std::string_view why) {
  return refusal(320, std::move(field), fmt::format("This is not the file of a log: {}", why),
                 "It begins {\"camside\": 1, \"kind\": \"log\", \"entries\": [ … ]}");
}

Finding log_damaged(std::size_t entries_read) {
  return caution(321, "",
                 fmt::format("The file is damaged; {} could be read", counted(entries_read, "entry", "entries")),
                 "It opens for reading only; open an older copy too, and merge both");
}

Finding lines_damaged(Lines lines, std::string_view why) {
  return caution(322, "", fmt::format("{} damaged: {}", words(lines), why), "What stands there is not taken");
}

Finding entries_missing(std::uint64_t said, std::size_t read) {
  return caution(323, "count",
                 fmt::format("The file says it holds {}, but {} {}", counted(said, "entry", "entries"), read,
                             read == 1 ? "is there" : "are there"),
                 "Look for an older or a whole copy, and merge it");
}

Finding more_lines_damaged(std::size_t how_many) {
  return caution(324, "", fmt::format("{} more damaged places are not listed", how_many), "Open an older copy");
}

Finding newer_log_not_merged(std::string_view version) {
  return refusal(325, "camside", fmt::format("The file was written by a newer Camside (version {})", version),
                 "Update Camside, then merge it; nothing was changed");
}

Finding no_such_bike(std::string_view name) {
  return refusal(326, "bike", fmt::format("No bike here is called {}", repeated(name)),
                 "`camside log` lists the bikes; a bike can be named by its id too");
}

Finding bike_not_clear(std::string_view name, std::size_t how_many) {
  return refusal(327, "bike", fmt::format("{} bikes are called {}", how_many, repeated(name)),
                 "Name the one you mean by its id; `camside log` lists them");
}

Finding no_entries() {
  return note(328, "entries", "There is no entry in it", "");
}

Finding no_such_entry(std::string_view id) {
  return refusal(329, "replaces", fmt::format("No entry has the id {}", repeated(id)),
                 "`camside log --bike NAME` shows the ids");
}

Finding entry_refused(std::string field, std::string_view why, std::string_view remedy) {
  return refusal(330, std::move(field), std::string(why), std::string(remedy));
}

Finding bike_code_damaged(std::string_view why) {
  return refusal(331, "", fmt::format("The bike in the QR code can't be read: {}", why),
                 "Point the camera at the code once more, straight and near; or send the bike as a file");
}

Finding bike_code_newer() {
  return refusal(332, "", "The QR code was made by a newer Camside",
                 "Load this page anew with signal, then read the code again; nothing was changed");
}

Finding output_not_written(std::string_view where, std::string_view why) {
  return refusal(333, "", fmt::format("{} could not be written whole: {}", where, why),
                 "Don't use what is there, it is cut off; make room and print it again");
}

Finding log_open_elsewhere(std::string_view where) {
  return refusal(350, "", fmt::format("{} is open in another Camside", where),
                 "Here it opens for reading only; close the other one to write");
}

Finding log_cannot_be_read(std::string_view where, std::string_view why, std::size_t shown) {
  std::string text = fmt::format("The log in {} can't be read: {}", where, why);
  const char* remedy = "Nothing is written there; mend the place and start again";
  if (shown > 0) {
    text += fmt::format(". Shown is its second copy, {}", counted(shown, "entry", "entries"));
    remedy = "Save a copy of the log outside this browser, then try again";
  }
  return refusal(351, "", text, remedy);
}

Finding log_not_saved(std::string_view where, std::string_view why) {
  return refusal(352, "", fmt::format("Not saved in {}: {}", where, why), still_here);
}

Finding torn_end(std::size_t bytes, std::string_view set_aside) {
  return caution(353, "",
                 fmt::format("The last save was cut off; {} of it can't be used", counted(bytes, "byte", "bytes")),
                 fmt::format("Nothing that was confirmed is missing; the piece is kept as {}", set_aside));
}

Finding records_damaged(Lines lines, std::string_view set_aside) {
  return caution(354, "", fmt::format("{} damaged in the stored log", words(lines)),
                 fmt::format("Merge an exported copy; the damaged piece is kept as {}", set_aside));
}

Finding records_missing(std::uint64_t first, std::uint64_t last) {
  std::string which =
      first == last ? fmt::format("Record {} is", first) : fmt::format("Records {} to {} are", first, last);
  return caution(355, "", which + " missing from the stored log", "Merge an exported copy, and check the disk");
}

Finding recovered_from_previous(std::size_t entries) {
  return note(356, "", fmt::format("{} came back from a file beside the log", counted(entries, "entry", "entries")),
              "");
}

Finding recovered_from_copy(std::size_t entries) {
  return caution(359, "",
                 fmt::format("The browser had lost {}; the second copy it keeps brought back {}",
                             counted(entries, "entry", "entries"), entries == 1 ? "it" : "them"),
                 "Save a copy of the log outside this browser");
}

Finding store_is_newer(std::string_view where) {
  return caution(357, "", fmt::format("The log in {} was written by a newer Camside", where),
                 "It opens for reading only; update Camside to add to it");
}

Finding not_set_aside(std::string_view where, std::string_view why) {
  return caution(358, "", fmt::format("The damaged piece could not be set aside in {}: {}", where, why),
                 "The stored log is left as it is; make room and start again");
}

void take_back_not_saved(Findings& findings) {
  std::erase_if(findings, [](const Finding& one) { return one.number == 352 || one.number == 361; });
}

Finding log_cannot_be_written(std::string_view where, std::string_view why) {
  return note(361, "", fmt::format("Nothing can be written in {}: {}", where, why),
              "What is there can be read; to add to it, mend the place");
}

Finding beside_log_unread(std::string_view name, std::string_view why) {
  return caution(362, "", fmt::format("{}, which stands beside the log, can't be read: {}", name, why),
                 "Mend it or take it away; until then it is kept as it is");
}

Finding log_is_empty(std::string_view where) {
  return caution(363, "", fmt::format("The log in {} is a file of 0 bytes", where),
                 "If bikes were in it, merge an exported copy, and check the disk");
}

Finding too_many_entries(std::size_t most) {
  return refusal(334, "entries", fmt::format("There are more than {} entries in it", most),
                 "Export single bikes with --bike, and take them in one after the other");
}

Finding more_findings(std::size_t how_many) {
  return note(335, "entries", fmt::format("{} more such remarks are not listed", how_many), "");
}

Finding log_lost(std::string_view where) {
  return caution(364, "", fmt::format("The log in {} was deleted while it was open", where),
                 "All that is shown here is saved anew; save a copy of the log outside this browser");
}

Finding log_read_only() {
  return refusal(360, "", "This log is open for reading only",
                 "Export it, or close what else has it open and start again");
}

}  // namespace camside::remarks
