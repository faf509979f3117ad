// The adjuster from above with its flats numbered and the way it turns, and the four rods as this engine shows them,
// each with the state of its lifter as a shape and a word, under the lock that says whether the engine may be turned.
#pragma once

#include <array>
#include <optional>
#include <string>

#include "screens/widgets/pen.hpp"

namespace camside::screens {

enum class RodMark : std::uint8_t { Idle, Waiting, CheckNow, Trouble, Free };

struct PushrodPlot {
  struct Rod {
    std::string name;  // "Front exhaust"
    std::string word;  // "bleeding down"
    RodMark mark = RodMark::Idle;
  };
  bool adjustable = true;
  int flats_per_turn = 6;
  int end_flat = 0;               // flats beyond whole turns: where the mark on flat 1 ends up
  std::optional<bool> clockwise;  // the way it is turned, seen from above; none: not known
  std::string turn_words;         // "clockwise, seen from above: longer"
  std::array<Rod, 4> rods;
  bool locked = false;
  std::string lock_words;  // "Do not turn the engine"
};

float pushrod_height(const Pen& pen, const PushrodPlot& plot, float width);
void draw_pushrods(const Pen& pen, const Area& area, const PushrodPlot& plot);

}  // namespace camside::screens
