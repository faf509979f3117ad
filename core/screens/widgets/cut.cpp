#include "screens/widgets/cut.hpp"

#include "screens/widgets/ui.hpp"

namespace camside::screens {

namespace {

void drop_last_letter(std::string& text) {
  while (!text.empty() && (static_cast<unsigned char>(text.back()) & 0xC0) == 0x80) text.pop_back();
  if (!text.empty()) text.pop_back();
}

}  // namespace

std::string cut_to(ImFont* font, float size, const std::string& text, float room) {
  constexpr std::size_t most = 160;  // bytes; no row is wider
  std::string line = text.substr(0, text.find('\n'));
  if (line.size() > most) {
    line.resize(most);
    drop_last_letter(line);
  }
  if (line.size() == text.size() && size_of(font, size, line).x <= room) return line;
  while (!line.empty() && size_of(font, size, line + "…").x > room) drop_last_letter(line);
  return line + "…";
}

}  // namespace camside::screens
