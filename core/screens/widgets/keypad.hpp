// Our keypad, docked at the bottom (beside the screen on a phone held sideways): digits, decimal mark, sign, the two or
// three units that fit, erase, Next. It shows what the entry means in the other system while it is typed and says why a
// text can't be read. Physical keyboards and gauges that type like one work too: Enter is Next, Escape closes.
#pragma once

#include <functional>
#include <span>
#include <string>
#include <vector>

#include "screens/widgets/ui.hpp"
#include "units/parse.hpp"

namespace camside::screens {

enum class KeypadEvent : std::uint8_t { None, Changed, Next, Close };

enum class Typing : std::uint8_t { Number, Date, Words };  // Words: where there is no other keyboard than a real one

class Keypad {
 public:
  void open(std::string path, std::string label, Kind kind, std::string text, const Unit* unit, std::string range,
            Typing typing);
  void close() { path_.clear(); }
  bool is_open() const { return !path_.empty(); }
  const std::string& path() const { return path_; }

  // What the field holds now: the digits with the chosen unit.
  std::string text() const;
  const Unit* unit() const { return unit_; }

  float height(const Ui& ui) const;
  bool holding() const { return holding_; }  // erase is held: frames are wanted until it clears
  KeypadEvent draw(Ui& ui, float height);

 private:
  KeypadEvent keys(Ui& ui, float key_height);
  KeypadEvent physical_keys();
  // How the height given is shared out; the keys never fall below a target.
  struct Heights {
    float preview = 0, units = 0, key = 0;
  };
  Heights share_out(const Ui& ui, float height) const;
  bool top_row(Ui& ui, float height);
  void preview(Ui& ui, ImVec2 size);
  void units(Ui& ui, float height);
  void flip_sign();
  void erase();
  void type(const std::string& typed);
  std::string meaning(bool& bad) const;

  std::string path_;
  std::string label_;
  std::string range_;
  std::string digits_;  // as typed, without the chip's unit
  Kind kind_ = Kind::Number;
  Typing typing_ = Typing::Number;
  bool fresh_ = false;  // the first key replaces what stood there
  bool holding_ = false;
  const Unit* unit_ = nullptr;
};

}  // namespace camside::screens
