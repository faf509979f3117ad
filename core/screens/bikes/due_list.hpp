// What is due on each bike, from its log: the first thing of each for the list of the bikes, all of it for a bike's
// page.
//
// Reading a bike's history takes some ten milliseconds for a log of years (due/due_board.hpp), so it is kept
// until that bike's log has grown or the day has changed, and of many bikes one is read a frame.
#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <vector>

#include "due/due_board.hpp"
#include "due/due_words.hpp"
#include "screens/bikes/bike_log.hpp"

namespace camside::screens {

class DueList {
 public:
  // An entry to begin: of this kind, about this item.
  struct Asked {
    std::string kind;  // empty: nothing was asked
    std::string about;
  };

  void prepare(const BikeLog& log, System system);  // once a frame while bikes are shown
  bool wants_more() const { return more_; }
  std::string first(const std::string& bike) const;  // "Overdue: Tensioner shoes"; empty: nothing due, or not read yet
  Asked draw(Ui& ui, BikeLog& log, const std::string& bike, System system);

 private:
  struct Kept {
    std::size_t entries = 0;  // how many of the log are this bike's
    std::string day;
    System system = System::Inch;
    due_board::History history;
    due_board::Board board;
    std::vector<due_board::RowWords> words;
  };

  bool up_to_date(const BikeLog& log, const records::Bike& bike, System system) const;
  const Kept& read(const BikeLog& log, const records::Bike& bike, System system);
  bool draw_row(Ui& ui, const Kept& kept, std::size_t row);
  Asked draw_open(Ui& ui, const BikeLog& log, const Kept& kept, std::size_t row, System system);
  Asked draw_faults(Ui& ui, const BikeLog& log, const Kept& kept);
  Asked draw_rows(Ui& ui, const BikeLog& log, const Kept& kept, System system);

  std::map<std::string, Kept, std::less<> > kept_;  // by the bike's id
  std::string open_;                                // the item shown with all that is known of it
  std::string open_of_;
  bool all_ = false;
  bool more_ = false;
  int seen_ = -1;  // version of the log at which nothing was left to read
  std::string seen_day_;
  System seen_system_ = System::Inch;
};

}  // namespace camside::screens
