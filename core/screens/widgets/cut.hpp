// Text that has to stay on one line: what doesn't fit ends in "…".
#pragma once

#include <imgui.h>

#include <string>

namespace camside::screens {

std::string cut_to(ImFont* font, float size, const std::string& text, float room);

}  // namespace camside::screens
