// What a question's screen needs beyond entries and drawing: something to tap while working (turns counted off,
// clocks).
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "records/form.hpp"
#include "records/kinds.hpp"
#include "screens/widgets/ui.hpp"

namespace camside::screens {

// Edits of the record shown; each is saved at once.
struct Edits {
  std::function<void(std::string_view path, std::string_view text)> set;
  std::function<std::string(std::string_view list)> add_item;  // path of the new item
  double now_s = 0.0;                                          // on the clock of Platform::seconds()
  System system = System::Inch;
  int version = 0;  // of what was solved: another one, look again
};

class ExtraPart {
 public:
  virtual ~ExtraPart() = default;
  virtual void draw(Ui& ui, const Solved& solved, const std::vector<records::FormField>& form, const Edits& edits) = 0;
  virtual std::optional<double> next_wake_s() const { return std::nullopt; }  // from now, while it is on screen
  // When its next clock runs out, on Edits::now_s's clock, whatever is on screen; and: has one, since this was last
  // asked?
  virtual std::optional<double> next_alarm_s() const { return std::nullopt; }
  virtual bool ran_out(double /*now_s*/) { return false; }
};

}  // namespace camside::screens
