// Any bytes given to the readers of a log: the exported file, the stored lines and the address out of a QR code. What
// opens is shown, checked, merged and written so that reading again gives the same; what is damaged loses nothing that
// was whole.
#include <cstdint>
#include <string>
#include <string_view>

#include "promises.hpp"
#include "log/bike_code.hpp"
#include "log/log_csv.hpp"
#include "log/log_file.hpp"
#include "log/log_merge.hpp"
#include "storage/log_lines.hpp"

namespace {

using namespace camside;
using records::Log;

void check_view(const Log& log) {
  std::size_t shown = 0;
  const records::View seen = records::view(log);
  check_words(seen.findings);
  for (const records::Bike& bike : seen.bikes) {
    insist(!records::csv_of(log, bike, {System::Metric, true}).empty(), "a bike has a table");
    for (const records::Line& line : bike.lines) {
      insist(!line.current.empty(), "a line has a current entry");
      shown += line.current.size() + line.replaced.size();
    }
  }
  insist(shown >= log.size(), "every entry is somewhere");
}

void check_log(const Log& log) {
  check_view(log);
  const std::string written = records::export_log(log);
  const auto again = records::read_log_file(written);
  insist(again.has_value(), "what was written can be read");
  insist(records::export_log(again->file.log) == written, "and is written the same again");
  insist(again->file.log.size() == log.size(), "with every entry");
  Log twice = log;
  records::merge(twice, again->file.log);
  insist(records::export_log(twice) == written, "merging it changes nothing");
}

void check_file(std::string_view bytes) {
  const auto opened = records::read_log_file(bytes);
  if (!opened) {
    insist(any_refusal(opened.error()), "a refusal has a finding");
    check_words(opened.error());
    return;
  }
  check_words(records::check_log_file(*opened));
  insist(!opened->file.damaged || has(opened->findings, 321), "damage is said");
  check_log(opened->file.log);
}

void check_lines(std::string_view bytes) {
  const storage::ReadLines read = storage::read_lines(bytes);
  std::size_t damaged = read.torn.size;
  for (const storage::Piece& piece : read.damaged) {
    insist(piece.offset + piece.size <= bytes.size() && piece.first_line <= piece.last_line, "damage lies in the file");
    damaged += piece.size;
  }
  insist(damaged <= bytes.size(), "no byte is damaged twice");
  std::string written = storage::log_header();
  Log log;
  std::uint64_t number = 0;
  for (const records::Entry& entry : read.entries) {
    written += storage::log_line(++number, entry);
    log.add(entry);
  }
  const storage::ReadLines again = storage::read_lines(written);
  insist(again.entries.size() == read.entries.size() && again.damaged.empty() && again.torn.size == 0 &&
             again.gaps.empty(),
         "whole lines are read back whole");
  if (log.size() > 0) check_log(log);
}

void check_code(std::string_view bytes) {
  if (!records::is_bike_code(bytes)) return;
  const auto text = records::text_of_bike_code(bytes);
  if (!text) return check_words({text.error()});
  insist(text->size() <= records::most_code_text, "no more comes out than may");
  const auto code = records::code_of_bike(*text);
  insist(code && records::text_of_bike_code(std::string(records::code_mark) + *code) == *text, "it goes in again");
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view bytes(reinterpret_cast<const char*>(data), size);
  check_code(bytes);
  if (bytes.substr(0, 8) == "camside-")
    check_lines(bytes);
  else
    check_file(bytes);
  return 0;
}
