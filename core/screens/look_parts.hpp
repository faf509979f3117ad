// Small things that several questions' looks share.
#pragma once

#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "records/form.hpp"
#include "screens/parts/shown.hpp"
#include "units/quantity.hpp"
#include "units/unit.hpp"

namespace camside::screens {

// The choice or value that stands in a field, or what is taken while it is empty.
std::string stands_in(const std::vector<records::FormField>& form, std::string_view path);

// Writes a length as people read it in the user's system.
inline std::function<std::string(Length)> shown_in(System system) {
  return [system](Length v) { return shown(Kind::Length, v.base(), system); };
}

}  // namespace camside::screens
