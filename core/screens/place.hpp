// A place of the bar: Bikes, Bench, Look-over, Setup. The shell knows layout and no place by name; a place knows
// itself: what stands in the middle, beside and below it, where one is in it, and when it wants to be drawn again. A
// new place is a class that implements this and a line in the shell's make_places().
#pragma once

#include <imgui.h>

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "findings/outcome.hpp"
#include "screens/widgets/ui.hpp"
#include "units/unit.hpp"

namespace camside::screens {

enum class PlaceId : std::uint8_t { Bikes, Bench, LookOver, Setup };  // in the order of the bar

// To another place, or to a page of it: what its come_back() is handed.
struct Way {
  PlaceId place = PlaceId::Bench;
  std::vector<std::string> where;
};

enum class Shape : std::uint8_t {
  Portrait,  // one column, the action at the thumb
  Sideways,  // a phone held sideways: places at the left, action and keypad at the right
  Wide,      // list, middle and side beside each other
};

struct View {
  System system = System::Inch;
  Shape shape = Shape::Portrait;
  float height = 0.0f;  // of the part being drawn, where it has an end
};

// What the column at the right is wanted for. Narrow: for a button only.
enum class Column : std::uint8_t { None, Narrow, Full };

class Place {
 public:
  virtual ~Place() = default;

  virtual PlaceId id() const = 0;
  virtual std::string_view word() const = 0;  // permanent, in what is kept of where one was: "look-over"
  virtual const char* name() const = 0;       // on the bar
  virtual void draw_icon(ImDrawList* list, ImVec2 centre, float radius, ImU32 ink, float stroke) const = 0;

  // Once a frame, whether shown or not, before anything is drawn.
  virtual void refresh(bool /*shown*/) {}
  // The job was opened or replaced: look again.
  virtual void forget() {}

  // The header.
  virtual std::string title(const View&) { return name(); }
  virtual std::optional<Verdict> verdict() const { return std::nullopt; }
  virtual bool deep(const View&) const { return false; }  // there is a way back
  virtual void back() {}
  virtual void home() {}  // its own name was tapped in the bar while it was shown

  // The middle. Each page has a name of its own, so that each keeps its scrolling.
  virtual const char* part() const { return name(); }
  virtual void draw_middle(Ui& ui, const View& view) = 0;
  // Above the middle of whichever place is shown: what has to be seen wherever one is.
  virtual void draw_notice(Ui&) {}

  // Beside it: a list at the left of a wide window; at the right something to look at, and below that the action.
  virtual bool has_list() const { return false; }
  virtual void draw_list(Ui&, const View&) {}
  virtual Column column(const Ui&, const View&) { return Column::None; }
  virtual bool has_side(const View&) const { return false; }
  virtual void draw_side(Ui&, const View&) {}

  // Below it, at the thumb: the main action or the keypad. 0: nothing stands there.
  virtual float bottom_height(const Ui&, const View&) { return 0.0f; }
  virtual void draw_bottom(Ui&, const View&) {}
  virtual bool typing() const { return false; }

  // The next frame.
  virtual bool holding() const { return false; }                                          // a key is held down
  virtual bool wants_more() const { return false; }                                       // while shown
  virtual std::optional<double> next_wake(bool /*shown*/) const { return std::nullopt; }  // seconds from now
  virtual bool keeps_awake() const { return false; }                                      // while shown

  // Where one is in it, for the next start of the program, and back there.
  virtual std::vector<std::string> where() const { return {}; }
  virtual bool can_come_back(const std::vector<std::string>& /*where*/) const {
    return true;
  }  // false: not yet, ask again
  virtual void come_back(const std::vector<std::string>& /*where*/) {}
  // Somewhere else that was asked for, once.
  virtual std::optional<Way> take_way() { return std::nullopt; }
};

}  // namespace camside::screens
