// A bike as a QR code that another phone's camera opens (log/bike_code.hpp): for a log small enough; else what to
// do instead. Black on white in both themes, as wide as the window is, each module a whole number of the screen's
// pixels.
#pragma once

#include <memory>
#include <optional>
#include <string>

#include "exchange/qr_code.hpp"
#include "screens/bikes/bike_log.hpp"
#include "screens/widgets/ui.hpp"
#include "screens/platform.hpp"
#include "storage/keeper.hpp"
#include "storage/store.hpp"

namespace camside::screens {

class BikeCodePage {
 public:
  BikeCodePage(Platform& platform, storage::Store& store);

  void open(std::string bike);
  void close() { bike_.reset(); }
  bool is_open() const { return bike_.has_value(); }

  void draw(Ui& ui, BikeLog& log, const std::string& said);  // `said`: of a file that left

 private:
  const std::string& address() const;  // of the page that opens it; empty: not known here
  void refresh(const BikeLog& log);
  void draw_code(Ui& ui, const std::string& name) const;
  void draw_too_big(Ui& ui, BikeLog& log, const std::string& name, const std::string& said) const;
  void draw_address(Ui& ui);

  Platform& platform_;
  storage::Keeper keeper_;                                               // of the address
  std::shared_ptr<std::string> kept_ = std::make_shared<std::string>();  // where no page runs
  bool no_address_found_ = false;
  std::optional<std::string> bike_;
  std::string drawn_for_;  // address
  int version_ = -1;       // of the log
  std::optional<exchange::QrCode> code_;
  std::size_t entries_ = 0;
  std::size_t size_ = 0;  // bytes, packed; of one that wasn't tried as it is
  std::size_t room_ = 0;  // bytes, packed
};

}  // namespace camside::screens
