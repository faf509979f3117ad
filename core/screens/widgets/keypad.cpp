#include "screens/widgets/keypad.hpp"

#include <algorithm>
#include <array>
#include <cctype>

#include "screens/words.hpp"
#include "units/format.hpp"
#include "work/day_as_written.hpp"

namespace camside::screens {

namespace {

constexpr float gap = 8.0f;
constexpr float least_key = 48.0f;

// The units offered as chips: what the trade writes for this kind, nothing exotic.
std::vector<const Unit*> chips_of(Kind kind) {
  const auto pick = [kind](std::initializer_list<const char*> symbols) {
    std::vector<const Unit*> units;
    for (const char* s : symbols)
      if (const Unit* u = find_unit(kind, s)) units.push_back(u);
    return units;
  };
  switch (kind) {
    case Kind::Length:
      return pick({"in", "thou", "mm"});
    case Kind::Angle:
      return pick({"°", "turn", "flat"});
    case Kind::Distance:
      return pick({"mi", "km"});
    case Kind::Temperature:
      return pick({"°C", "°F"});
    case Kind::TemperatureDifference:
      return pick({"K", "F°"});
    case Kind::Expansion:
      return pick({"ppm/K"});
    case Kind::Force:
      return pick({"N", "lbf"});
    case Kind::Torque:
      return pick({"lbf·ft", "lbf·in", "N·m"});
    case Kind::Pressure:
      return pick({"psi", "bar", "kPa"});
    case Kind::ThreadPitch:
      return pick({"tpi", "mm", "in"});
    case Kind::Module:
      return pick({"DP", "mm"});
    case Kind::Duration:
      return pick({"min", "s", "h"});
    case Kind::Number:
    case Kind::Money:
      break;
  }
  return {};
}

// An arrow to the left; drawn, because the trimmed font has none.
void draw_erase(const Ui& ui, const Area& at, ImU32 ink) {
  const Pen pen = ui.pen(ui.theme().card);
  const ImVec2 c = at.centre();
  const float r = std::min(ui.px(11), 0.3f * at.height());
  pen.line({c.x - r, c.y}, {c.x + r, c.y}, ink);
  pen.line({c.x - 0.4f * r, c.y - 0.6f * r}, {c.x - r, c.y}, ink);
  pen.line({c.x - r, c.y}, {c.x - 0.4f * r, c.y + 0.6f * r}, ink);
}

// A text as it stands in a record, parted into digits and the unit it ends with.
const Unit* split_unit(Kind kind, std::string& text) {
  for (const Unit* unit : chips_of(kind)) {
    const std::string tail = " " + std::string(unit->symbol);
    if (text.size() > tail.size() && text.ends_with(tail)) {
      text.resize(text.size() - tail.size());
      return unit;
    }
  }
  return nullptr;
}

void drop_last_letter(std::string& text) {
  while (!text.empty() && (static_cast<unsigned char>(text.back()) & 0xC0) == 0x80) text.pop_back();
  if (!text.empty()) text.pop_back();
}

bool is_plain_number(const std::string& digits) {
  return std::none_of(digits.begin(), digits.end(), [](char c) {
    return std::isalpha(static_cast<unsigned char>(c)) || c == '"' || static_cast<unsigned char>(c) > 0x7F;
  });
}

}  // namespace

void Keypad::open(std::string path, std::string label, Kind kind, std::string text, const Unit* unit, std::string range,
                  Typing typing) {
  path_ = std::move(path);
  label_ = std::move(label);
  range_ = std::move(range);
  kind_ = kind;
  typing_ = typing;
  digits_ = std::move(text);
  const Unit* const written = typing == Typing::Number ? split_unit(kind, digits_) : nullptr;
  unit_ = written ? written : unit;
  fresh_ = !digits_.empty();
  holding_ = false;
}

// A day as it is written on a bill is taken.
std::string Keypad::text() const {
  if (typing_ == Typing::Date) return work::day_as_written(digits_);
  if (digits_.empty() || typing_ != Typing::Number || !unit_ || !is_plain_number(digits_)) return digits_;
  return digits_ + " " + std::string(unit_->symbol);
}

float Keypad::height(const Ui& ui) const {
  const float preview = std::min(ui.px(72), 120.0f);
  if (typing_ == Typing::Words) return preview + 2 * gap;
  return preview + std::min(ui.target(), 60.0f) + 4 * 60 + 7 * gap;
}

Keypad::Heights Keypad::share_out(const Ui& ui, float height) const {
  Heights h;
  if (typing_ == Typing::Words) return {height - 2 * gap, 0, 0};
  h.units = std::min(ui.target(), 60.0f);
  const float rest = height - h.units - 7 * gap;
  h.preview = std::clamp(rest - 4 * least_key, 52.0f, std::min(ui.px(72), 120.0f));
  h.key = std::clamp((rest - h.preview) / 4, least_key, 68.0f);
  if (h.key == least_key && rest - h.preview < 4 * least_key) h.units = least_key;
  return h;
}

void Keypad::type(const std::string& typed) {
  if (fresh_) digits_.clear();
  fresh_ = false;
  if (digits_.size() + typed.size() <= 48) digits_ += typed;
}

void Keypad::erase() {
  if (fresh_)
    digits_.clear();
  else
    drop_last_letter(digits_);
  fresh_ = false;
}

void Keypad::flip_sign() {
  fresh_ = false;
  if (digits_.starts_with("-"))
    digits_.erase(0, 1);
  else
    digits_.insert(0, "-");
}

std::string Keypad::meaning(bool& bad) const {
  bad = false;
  if (typing_ == Typing::Words) return words::type_words();
  if (digits_.empty()) return range_.empty() ? "" : words::allowed(range_);
  if (typing_ == Typing::Date) {
    const auto day = parse_date(text());
    bad = !day && digits_.size() >= 10;
    return day ? format_date(*day) : bad ? day.error().reason : words::date_form();
  }
  const auto entered = parse(kind_, text());
  if (!entered) {
    bad = true;
    return entered.error().reason;
  }
  if (!entered->unit || kind_ == Kind::Number || kind_ == Kind::Money) return "";
  const Unit& inch = preferred_unit(kind_, System::Inch);
  const Unit& metric = preferred_unit(kind_, System::Metric);
  if (inch.symbol == metric.symbol) return text();
  const bool typed_inch = entered->unit->symbol == inch.symbol || entered->unit->symbol == "thou";
  return text() + " = " + convert(*entered, typed_inch ? metric : inch);
}

// What was typed and what it means, and the way out. True: close.
bool Keypad::top_row(Ui& ui, float height) {
  const float done = std::clamp(ui.px(64), 64.0f, 96.0f);
  preview(ui, {ui.width() - done - gap, height});
  ImGui::SameLine(0, gap);
  return ui.area("keypad done", Role::Button, words::done(), {done, height}, [&](const Area& at, bool pressed) {
    if (pressed) ImGui::GetWindowDrawList()->AddRectFilled(at.min, at.max, ui.theme().pressed, 10.0f);
    const Area level{{at.min.x, at.min.y + 0.34f * at.height()}, at.max};  // with what is typed, not with its label
    ui.fit(level.inset(4), words::done(), ui.theme().accent, ui.px(18), ui.fonts().bold);
  });
}

// The label, below it what is typed beside what that means; where there is little width, one below the other.
void Keypad::preview(Ui& ui, ImVec2 size) {
  bool bad = false;
  const std::string means = meaning(bad);
  const std::string shown = digits_.empty() ? "–" : text();
  const ImU32 ink = fresh_ ? ui.theme().accent : ui.theme().text;
  const ImU32 aside = bad ? ui.theme().outside : ui.theme().quiet;
  ui.area("keypad preview", Role::Text, label_, size, [&](const Area& at, bool) {
    const auto part = [&](float x0, float y0, float x1, float y1) {
      return Area{{at.min.x + x0 * at.width(), at.min.y + y0 * at.height()},
                  {at.min.x + x1 * at.width(), at.min.y + y1 * at.height()}};
    };
    const bool stacked =
        size_of(ui.fonts().words, ui.px(26), shown).x + 12 + size_of(ui.fonts().words, ui.px(16), means).x > at.width();
    ui.fit(part(0, 0, 1, 0.34f), label_, ui.theme().quiet, ui.px(16), ui.fonts().words, {0, 0.5f}, 0.4f);
    ui.fit(part(0, 0.34f, 1, stacked ? 0.68f : 1), shown, ink, ui.px(26), ui.fonts().words, {0, 0.5f}, 0.4f);
    ui.fit(part(0, stacked ? 0.68f : 0.34f, 1, 1), means, aside, ui.px(16), ui.fonts().words,
           {stacked ? 0.0f : 1.0f, 0.5f}, 0.4f);
  });
}

void Keypad::units(Ui& ui, float height) {
  const auto chips = chips_of(kind_);
  if (chips.empty() || typing_ != Typing::Number) {
    ui.gap(height);
    return;
  }
  std::vector<std::string> symbols;
  int chosen = -1;
  for (std::size_t i = 0; i < chips.size(); ++i) {
    symbols.emplace_back(chips[i]->symbol);
    if (chips[i] == unit_) chosen = static_cast<int>(i);
  }
  const float each = (ui.width() - gap * static_cast<float>(chips.size() - 1)) / static_cast<float>(chips.size());
  for (std::size_t i = 0; i < chips.size(); ++i) {
    if (i > 0) ImGui::SameLine(0, gap);
    if (ui.chip("unit " + symbols[i], symbols[i], {each, height}, static_cast<int>(i) == chosen)) unit_ = chips[i];
  }
}

KeypadEvent Keypad::physical_keys() {
  KeypadEvent event = KeypadEvent::None;
  ImGuiIO& io = ImGui::GetIO();
  for (const ImWchar c : io.InputQueueCharacters) {
    if (c < 32 || c == 127) continue;
    char utf8[5] = {};
    if (c < 0x80)
      utf8[0] = static_cast<char>(c);
    else if (c < 0x800) {
      utf8[0] = static_cast<char>(0xC0 | (c >> 6));
      utf8[1] = static_cast<char>(0x80 | (c & 0x3F));
    } else {
      utf8[0] = static_cast<char>(0xE0 | (c >> 12));
      utf8[1] = static_cast<char>(0x80 | ((c >> 6) & 0x3F));
      utf8[2] = static_cast<char>(0x80 | (c & 0x3F));
    }
    type(utf8);
    event = KeypadEvent::Changed;
  }
  if (event != KeypadEvent::None) io.InputQueueCharacters.clear();
  if (ImGui::IsKeyPressed(ImGuiKey_Backspace)) {
    erase();
    event = KeypadEvent::Changed;
  }
  if (ImGui::IsKeyChordPressed(ImGuiMod_Ctrl | ImGuiKey_V)) {
    const char* const pasted = ImGui::GetClipboardText();
    digits_.clear();
    fresh_ = false;
    type(pasted ? std::string(pasted).substr(0, 48) : "");
    event = KeypadEvent::Changed;
  }
  if (ImGui::IsKeyPressed(ImGuiKey_Enter, false) || ImGui::IsKeyPressed(ImGuiKey_KeypadEnter, false) ||
      ImGui::IsKeyPressed(ImGuiKey_Tab, false))
    return KeypadEvent::Next;
  if (ImGui::IsKeyPressed(ImGuiKey_Escape, false)) return KeypadEvent::Close;
  return event;
}

KeypadEvent Keypad::keys(Ui& ui, float key_height) {
  const float w = (ui.width() - 3 * gap) / 4;
  KeypadEvent event = KeypadEvent::None;
  holding_ = false;
  const auto key = [&](const char* label, float wide, const char* spoken, const auto& act) {
    const bool fired = ui.area(spoken, Role::Key, spoken, {wide, key_height}, [&](const Area& at, bool pressed) {
      const bool next = std::string_view(spoken) == words::next();
      const ImU32 face = pressed ? ui.theme().text : next ? ui.theme().accent : ui.theme().card;
      ImGui::GetWindowDrawList()->AddRectFilled(at.min, at.max, face, 10.0f);
      const ImU32 ink = pressed ? ui.theme().ground : next ? ui.theme().on_accent : ui.theme().text;
      if (std::string_view(spoken) == words::erase()) {
        holding_ = pressed && !digits_.empty();
        return draw_erase(ui, at, ink);
      }
      ui.fit(at.inset(4), label, ink, next ? ui.px(20) : ui.px(28), next ? ui.fonts().bold : ui.fonts().words, {},
             0.5f);
    });
    if (fired) {
      act();
      event = KeypadEvent::Changed;
    }
  };
  const auto digit = [&](const char* d) { key(d, w, d, [&] { type(d); }); };
  const auto beside = [] { ImGui::SameLine(0, gap); };
  const auto three = [&](const char* a, const char* b, const char* c) {
    digit(a), beside(), digit(b), beside(), digit(c), beside();
  };
  three("7", "8", "9");
  key("", w, words::erase(), [&] { erase(); });
  three("4", "5", "6");
  key("±", w, words::sign(), [&] { flip_sign(); });
  three("1", "2", "3");
  if (typing_ == Typing::Date)
    key("-", w, "-", [&] { type("-"); });
  else
    key("/", w, "/", [&] { type("/"); });
  digit("0"), beside();
  key(".", w, words::decimal_mark(), [&] { type("."); });
  beside();
  bool next = false;
  key(words::next(), 2 * w + gap, words::next(), [&] { next = true; });
  if (holding_ && ImGui::GetIO().MouseDownDuration[0] > 0.6f) {
    digits_.clear();
    fresh_ = false;
    event = KeypadEvent::Changed;
  }
  return next ? KeypadEvent::Next : event;
}

KeypadEvent Keypad::draw(Ui& ui, float height) {
  const std::string before = text();
  const Heights h = share_out(ui, height);
  KeypadEvent event = physical_keys();
  if (top_row(ui, h.preview)) return KeypadEvent::Close;
  if (typing_ == Typing::Words) return event;
  units(ui, h.units);
  const float key_height = h.key;
  const KeypadEvent pressed = keys(ui, key_height);
  if (pressed != KeypadEvent::None && event != KeypadEvent::Next) event = pressed;
  if (event == KeypadEvent::None && text() != before) event = KeypadEvent::Changed;
  return event;
}

}  // namespace camside::screens
