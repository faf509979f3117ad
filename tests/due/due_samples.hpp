// Invented logs for the due board's tests: the bike "Brindle" of the demo scenario.
#pragma once

#include <string>
#include <utility>

#include "due/due_board.hpp"
#include "log/log_samples.hpp"
#include "units/format.hpp"

namespace camside::due_board {

using records::Entry;
using records::Json;
using records::Log;

inline Date day(int y, int m, int d) {
  return Date{std::chrono::year{y}, std::chrono::month{static_cast<unsigned>(m)},
              std::chrono::day{static_cast<unsigned>(d)}};
}

inline const knowledge::Knowledge& known() {
  static const knowledge::Knowledge k = *knowledge::read_knowledge(knowledge::knowledge_file("air_cooled_v_twin"));
  return k;
}

// A log that grows entry by entry, each made a minute after the one before and about the day given.
class Bike {
 public:
  explicit Bike(const char* engine = "two cams, sprung chains") {
    add(day(2020, 1, 1), "facts", {{"nickname", "Brindle"}, {"engine", engine}, {"odometer_unit", "mi"}});
  }
  std::string add(Date about, const char* kind, Json entered) {
    const std::string id = "e" + std::to_string(++count_);
    Entry entry = records::make_entry(kind, records::samples::brindle, records::samples::stamp(id, count_));
    entry.record.set("day", format_date(about));
    entry.record.entered() = std::move(entered);
    log.add(std::move(entry));
    return id;
  }
  void odometer(Date about, int miles) { add(about, "odometer", {{"reading", std::to_string(miles) + " mi"}}); }
  void service(Date about, const char* item, int miles, const char* proof = "paper") {
    add(about, "service",
        {{"items", Json::array({item})}, {"odometer", std::to_string(miles) + " mi"}, {"proof", proof}});
  }
  void finding(Date about, const char* part, const char* grade, int miles, const char* proof = "photo") {
    add(about, "finding",
        {{"part", part}, {"grade", grade}, {"odometer", std::to_string(miles) + " mi"}, {"proof", proof}});
  }
  History history(Date today) const {
    const records::View view = records::view(log);
    return history_of(log, *records::find_bike(view, records::samples::brindle), known(), today);
  }
  Board board(Date today) const { return board_of(history(today)); }

  Log log;

 private:
  int count_ = 0;
};

inline std::optional<Row> row_of(const Board& board, std::string_view item) {
  for (const Row& row : board.rows)
    if (row.result.name == item) return row;
  return {};
}

}  // namespace camside::due_board
