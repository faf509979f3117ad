// From a question of the Bench into the log of a bike: one tap when there is one bike, else one more to say which.
#pragma once

#include <string>

#include "screens/bikes/bike_log.hpp"

namespace camside::screens {

class LogToBike {
 public:
  // True: there is no bike yet, go and add one. (noinline: a door of app-web/later.py)
  [[gnu::noinline]] bool draw(Ui& ui, BikeLog& log, const records::Record& measured);

 private:
  void log_it(BikeLog& log, const BikeRow& bike, const records::Record& measured);
  void draw_choice(Ui& ui, BikeLog& log, const records::Record& measured);

  std::string choosing_;  // for the record of this id
};

}  // namespace camside::screens
