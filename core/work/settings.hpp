// How the owner wants to see things. Kept by the same store as the job, as a small JSON object; what can't be read
// falls back to the defaults, and unknown members are left alone by not being written over until something is changed.
#pragma once

#include <string>
#include <string_view>

#include "units/unit.hpp"

namespace camside::work {

enum class ThemeChoice { System, Shop, Sun };

struct Settings {
  System system = System::Inch;
  ThemeChoice theme = ThemeChoice::System;
  float text_scale = 1.0f;  // 0.9 to 2.0
  bool left_hand = false;
  bool keep_awake = true;  // the screen, while on the Bench

  friend bool operator==(const Settings&, const Settings&) = default;
};

Settings read_settings(std::string_view bytes);
std::string write_settings(const Settings& settings);

}  // namespace camside::work
