#include "screens/bikes/log_to_bike.hpp"

#include "records/kinds.hpp"
#include "screens/words.hpp"

namespace camside::screens {

void LogToBike::log_it(BikeLog& log, const BikeRow& bike, const records::Record& measured) {
  const RecordKind* const kind = records::find_kind(measured.kind());
  const std::string what = kind ? std::string(kind->label) : measured.kind();
  log.add({records::make_measurement_entry(measured, bike.id, log.next_stamp())}, what);
  choosing_.clear();
}

void LogToBike::draw_choice(Ui& ui, BikeLog& log, const records::Record& measured) {
  const auto bikes = log.standing();
  std::vector<std::string> names;
  names.reserve(bikes.size());
  for (const BikeRow* bike : bikes) names.push_back(bike->name);
  const int pressed = ui.segmented("bike to log to", words::which_bike(), names, -1);
  if (pressed >= 0) log_it(log, *bikes[static_cast<std::size_t>(pressed)], measured);
}

bool LogToBike::draw(Ui& ui, BikeLog& log, const records::Record& measured) {
  if (!log.takes_entries()) return false;
  const std::string there = log.logged_to(measured);
  if (!there.empty()) {
    if (log.keeper().all_safe())
      ui.text(words::saved_in_log_of(there));
    else if (log.keeper().state() == storage::SaveState::Saving)
      ui.text(words::saving());
    return false;
  }
  const auto bikes = log.standing();
  if (bikes.empty()) return ui.button("log to a bike", words::add_bike_to_log_this());
  if (choosing_ == measured.id()) {
    draw_choice(ui, log, measured);
    return false;
  }
  const bool one = bikes.size() == 1;
  if (ui.button("log to a bike", one ? words::log_to(bikes.front()->name) : words::log_to_a_bike())) {
    if (one)
      log_it(log, *bikes.front(), measured);
    else
      choosing_ = measured.id();
  }
  return false;
}

}  // namespace camside::screens
