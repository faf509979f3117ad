#include "screens/look_parts.hpp"

namespace camside::screens {

std::string stands_in(const std::vector<records::FormField>& form, std::string_view path) {
  for (const records::FormField& f : form)
    if (f.path == path) return f.text.empty() ? f.preset : f.text;
  return {};
}

}  // namespace camside::screens
