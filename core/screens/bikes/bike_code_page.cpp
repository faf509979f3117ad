#include "screens/bikes/bike_code_page.hpp"

#include <algorithm>
#include <cmath>

#include "log/bike_code.hpp"
#include "log/log_file.hpp"
#include "screens/widgets/cut.hpp"
#include "screens/words.hpp"

namespace camside::screens {

namespace {

constexpr const char* address_name = "page-address";
constexpr float widest = 640.0f;

// Digits carry 7 bytes in 17.
std::size_t bytes_in(std::size_t digits) {
  return digits * 7 / 17;
}

// A web address without what stands behind '?' or '#'; empty: it is none.
std::string web_address(std::string text) {
  constexpr std::size_t longest = 300;
  const std::size_t begin = text.find_first_not_of(" \t\r\n");
  if (begin == std::string::npos) return "";
  text = text.substr(begin, text.find_first_of("?# \t\r\n", begin) - begin);
  const bool web = text.rfind("https://", 0) == 0 || text.rfind("http://", 0) == 0;
  return web && text.size() > 10 && text.size() <= longest ? text : "";
}

bool this_device_only(const std::string& address) {
  const std::size_t host = address.find("://") + 3;
  for (const char* own : {"localhost", "127.", "[::1]"})
    if (address.compare(host, std::char_traits<char>::length(own), own) == 0) return true;
  return false;
}

// As wide as the window, margins too, and no higher than what is seen of it at once.
float room_for_code(const Area& window) {
  return std::min({window.width(), window.height() - 24, widest});
}

void draw_modules(ImDrawList* list, const exchange::QrCode& code, ImVec2 corner, float module) {
  for (int y = 0; y < code.side(); ++y) {
    for (int x = 0; x < code.side(); ++x) {
      if (!code.dark(x, y)) continue;
      const int from = x;
      while (x + 1 < code.side() && code.dark(x + 1, y)) ++x;
      const auto at = [&](int mx, int my) {
        return ImVec2(corner.x + module * static_cast<float>(mx), corner.y + module * static_cast<float>(my));
      };
      list->AddRectFilled(at(from, y), at(x + 1, y + 1), IM_COL32_BLACK);
    }
  }
}

}  // namespace

BikeCodePage::BikeCodePage(Platform& platform, storage::Store& store)
    : platform_(platform), keeper_(store, address_name) {
  if (!platform.page_address().empty()) return;
  store.load(
      address_name, [](std::string_view) { return true; },
      [kept = std::weak_ptr(kept_)](const tl::expected<storage::Loaded, Finding>& loaded) {
        const auto address = kept.lock();
        if (address && loaded && address->empty()) *address = web_address(loaded->bytes);
      });
}

void BikeCodePage::open(std::string bike) {
  bike_ = std::move(bike);
  version_ = -1;
  no_address_found_ = false;
}

const std::string& BikeCodePage::address() const {
  const std::string& own = platform_.page_address();
  return own.empty() ? *kept_ : own;
}

void BikeCodePage::refresh(const BikeLog& log) {
  if (version_ == log.version() && drawn_for_ == address()) return;
  version_ = log.version();
  drawn_for_ = address();
  code_.reset();
  const records::Log bike = records::log_of_bike(log.log(), *bike_);
  const std::string exported = records::export_log(bike);
  const std::string before = drawn_for_ + std::string(records::code_mark);
  const auto digits = records::code_of_bike(exported);
  entries_ = bike.size();
  size_ = digits ? bytes_in(digits->size()) : exported.size();
  room_ = bytes_in(exchange::most_digits(before.size()));
  if (digits) code_ = exchange::qr_code(before, *digits);
}

void BikeCodePage::draw_code(Ui& ui, const std::string& name) const {
  const ImVec2 window = ImGui::GetWindowPos();
  const Area all{window, {window.x + ImGui::GetWindowWidth(), window.y + ImGui::GetWindowHeight()}};
  const float density = std::max(1.0f, ImGui::GetIO().DisplayFramebufferScale.x);
  const auto modules = static_cast<float>(code_->side() + 2 * exchange::quiet_zone);
  const float module = std::max(1.0f, std::floor(room_for_code(all) * density / modules)) / density;
  const float side = module * modules;
  const auto whole = [&](float at) { return std::round(at * density) / density; };
  const ImVec2 corner{whole(all.centre().x - side / 2), whole(ImGui::GetCursorScreenPos().y)};
  ImDrawList* const list = ImGui::GetWindowDrawList();
  list->PushClipRect(all.min, all.max);
  list->AddRectFilled(corner, {corner.x + side, corner.y + side}, IM_COL32_WHITE);
  const float zone = module * static_cast<float>(exchange::quiet_zone);
  draw_modules(list, *code_, {corner.x + zone, corner.y + zone}, module);
  list->PopClipRect();
  ui.publish(Role::Drawing, words::code_of(name), corner, {corner.x + side, corner.y + side});
  ImGui::Dummy({1, side});
}

void BikeCodePage::draw_too_big(Ui& ui, BikeLog& log, const std::string& name, const std::string& said) const {
  ui.text(words::code_too_big(name, size_, room_));
  ui.text(words::code_too_big_help());
  if (!said.empty()) ui.text(said);
  ui.gap(8);
  const FileWays ways = platform_.file_ways();
  if (ways.share && ui.button("send bike", words::send_bike())) log.give_bike(*bike_, true);
  if (ways.save && ui.button("save bike", words::save_bike())) log.give_bike(*bike_, false);
}

// Where no page runs, its address is needed: the code is opened there.
void BikeCodePage::draw_address(Ui& ui) {
  if (!platform_.page_address().empty()) {
    if (this_device_only(address())) ui.text(words::only_this_device());
    return;
  }
  ui.gap(8);
  if (no_address_found_) ui.text(words::no_address_found());
  const std::string label = kept_->empty() ? words::take_address() : words::take_other_address();
  if (!ui.button("take address", label, kept_->empty() ? Look::Plain : Look::Quiet)) return;
  const char* const copied = ImGui::GetClipboardText();
  const std::string found = web_address(copied ? copied : "");
  no_address_found_ = found.empty();
  if (found.empty()) return;
  *kept_ = found;
  keeper_.put(found);
}

void BikeCodePage::draw(Ui& ui, BikeLog& log, const std::string& said) {
  const records::Bike* const bike = log.bike(*bike_);
  if (!bike) return close();
  const std::string name = bike->name();
  refresh(log);
  if (address().empty()) {
    ui.text(words::needs_address());
    return draw_address(ui);
  }
  if (!code_) return draw_too_big(ui, log, name, said);
  draw_code(ui, name);
  ui.gap(8);
  ui.text(words::code_help());
  ui.quiet(words::code_holds(entries_, size_, room_));
  // An address has no blank to break at.
  ui.quiet(cut_to(ui.fonts().words, ui.px(16), words::code_opens(address()), ui.width()));
  draw_address(ui);
}

}  // namespace camside::screens
