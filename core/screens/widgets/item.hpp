// What stands on screen, said in words: each of our widgets publishes itself every frame. Tests tap by label, the
// browser's accessibility mirror and the browser tests read the same list.
#pragma once

#include <imgui.h>

#include <cstdint>
#include <string>
#include <vector>

namespace camside::screens {

enum class Role : std::uint8_t { Button, Row, Choice, Field, Key, Place, Heading, Text, Verdict, Drawing };
const char* word_of(Role role);

struct Item {
  ImGuiID id = 0;  // 0: nothing to press
  Role role = Role::Text;
  std::string label;
  std::string value;
  bool chosen = false;
  bool enabled = true;
  bool focused = false;  // the keyboard is at it
  ImVec2 min, max;
  ImVec2 clip_min, clip_max;  // what of it can be seen
  std::string field;          // what a field is called in its form; its box, without label and error
  ImVec2 box_min, box_max;
  bool clipped_text = false;  // its words did not fit: a defect the tests look for

  bool pressable() const { return id != 0; }
  bool visible() const { return max.x > clip_min.x && min.x < clip_max.x && max.y > clip_min.y && min.y < clip_max.y; }
};

using Items = std::vector<Item>;

std::string items_as_json(const Items& items);

}  // namespace camside::screens
