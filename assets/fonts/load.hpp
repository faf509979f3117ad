// Hands the fonts to Dear ImGui, once, after its context was made.
#pragma once

#include <imgui.h>

#include "fonts.hpp"

namespace camside::fonts {

struct Loaded {
  ImFont* words = nullptr;
  ImFont* bold = nullptr;
};

inline ImFont* add(std::span<const unsigned char> bytes, bool merge = false) {
  ImFontConfig config;
  config.FontDataOwnedByAtlas = false;  // the bytes are part of the program
  config.MergeMode = merge;
  void* data = const_cast<unsigned char*>(bytes.data());  // only ever read
  return ImGui::GetIO().Fonts->AddFontFromMemoryTTF(data, static_cast<int>(bytes.size()), 18.0F, &config);
}

inline Loaded load() {
  Loaded loaded;
  loaded.words = add(regular());
  loaded.bold = add(bold());
  add(regular(), true);  // characters that bold lacks
  return loaded;
}

}  // namespace camside::fonts
