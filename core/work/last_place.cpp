#include "work/last_place.hpp"

#include <utility>

namespace camside::work {

namespace {

constexpr const char* name = "last-place";

std::string lines_of(const Whereabouts& parts) {
  std::string text;
  for (const std::string& part : parts) text += part + "\n";
  return text;
}

Whereabouts parts_of(std::string_view text) {
  Whereabouts parts;
  while (!text.empty()) {
    const std::size_t end = text.find('\n');
    parts.emplace_back(text.substr(0, end));
    text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
  }
  return parts;
}

}  // namespace

LastPlace::LastPlace(storage::Store& store, std::function<void()> came_in) : keeper_(store, name) {
  store.load(
      name, [](std::string_view) { return true; },
      [found = found_, came_in = std::move(came_in)](tl::expected<storage::Loaded, Finding> loaded) {
        found->looked = true;
        if (loaded) found->kept = loaded->bytes;
        if (!found->kept.empty()) found->place = parts_of(found->kept);
        came_in();
      });
}

const Whereabouts* LastPlace::found() const {
  return found_->place ? &*found_->place : nullptr;
}

void LastPlace::put(const Whereabouts& now) {
  if (!found_->looked || found_->place) return;
  std::string text = lines_of(now);
  if (found_->kept.empty()) found_->kept = text;  // where everybody begins needs no keeping
  if (text == found_->kept) return;
  found_->kept = text;
  keeper_.put(std::move(text));
}

}  // namespace camside::work
