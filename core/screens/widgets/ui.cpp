#include "screens/widgets/ui.hpp"

#include <algorithm>
#include <cmath>

#include "base/harmless.hpp"
#include "screens/words.hpp"

namespace camside::screens {

namespace {
constexpr float label_size = 16.0f;
constexpr float body_size = 18.0f;
constexpr float rounding = 10.0f;
constexpr float segment_gap = 8.0f;

std::string id_text(std::string_view id) {
  return "##" + std::string(id);
}
}  // namespace

ImVec2 size_of(ImFont* font, float size, const std::string& text) {
  return font->CalcTextSizeA(size, 1.0e9f, 0, text.data(), text.data() + text.size());
}

void write(ImDrawList& list, ImFont* font, float size, ImVec2 at, ImU32 colour, const std::string& text) {
  const std::string shown = harmless_lines(text);
  list.AddText(font, size, at, colour, shown.data(), shown.data() + shown.size());
}

std::string broken(ImFont* font, float size, const std::string& text, float room) {
  if (size_of(font, size, text).x <= room) return text;
  std::string out;
  float used = 0;
  const float blank = size_of(font, size, " ").x;
  for (std::size_t at = 0; at <= text.size();) {
    const std::size_t end = std::min(text.find_first_of(" \n", at), text.size());
    const std::string word = text.substr(at, end - at);
    const float width = size_of(font, size, word).x;
    if (used > 0 && used + blank + width > room) {
      out += '\n';
      used = 0;
    } else if (used > 0) {
      out += ' ';
      used += blank;
    }
    out += word;
    used += width;
    if (end < text.size() && text[end] == '\n') {
      out += '\n';
      used = 0;
    }
    at = end + 1;
  }
  return out;
}

const char* word_of(Role role) {
  switch (role) {
    case Role::Button:
      return "button";
    case Role::Row:
      return "row";
    case Role::Choice:
      return "choice";
    case Role::Field:
      return "field";
    case Role::Key:
      return "key";
    case Role::Place:
      return "place";
    case Role::Heading:
      return "heading";
    case Role::Text:
      return "text";
    case Role::Verdict:
      return "verdict";
    case Role::Drawing:
      return "drawing";
  }
  return "";
}

Ui::Ui(const Theme& theme, const Fonts& fonts, float text_scale, Items& items, Focus& focus, Gesture& gesture)
    : theme_(theme), fonts_(fonts), text_scale_(text_scale), items_(items), focus_(focus), gesture_(gesture) {}

float Ui::target() const {
  return std::max(48.0f, px(body_size) + 26.0f);
}
float Ui::width() const {
  return ImGui::GetContentRegionAvail().x - (in_card_ ? 16.0f : 0.0f);
}

Pen Ui::pen(ImU32 ground) const {
  Pen p;
  p.list = ImGui::GetWindowDrawList();
  p.ink = ink_of(theme_, ground);
  p.words = fonts_.words;
  p.bold = fonts_.bold;
  p.body = px(label_size);
  p.stroke = theme_.stroke;
  return p;
}

Item& Ui::publish(Role role, const std::string& label, ImVec2 min, ImVec2 max, ImGuiID id, const std::string& value) {
  Item item;
  item.id = id;
  item.role = role;
  item.label = label;
  item.value = value;
  item.min = min;
  item.max = max;
  item.clip_min = ImGui::GetWindowDrawList()->GetClipRectMin();
  item.clip_max = ImGui::GetWindowDrawList()->GetClipRectMax();
  items_.push_back(std::move(item));
  return items_.back();
}

void Ui::wrapped(const std::string& text, ImU32 colour, float size, ImFont* font, Role role) {
  const ImVec2 at = ImGui::GetCursorScreenPos();
  const float room = std::max(40.0f, width());
  const std::string lines = broken(font, size, text, room);
  const ImVec2 box = size_of(font, size, lines);
  screens::write(*ImGui::GetWindowDrawList(), font, size, at, colour, lines);
  publish(role, text, at, {at.x + box.x, at.y + box.y}).clipped_text = box.x > room + 1.0f;
  ImGui::Dummy({std::min(box.x, room), box.y});
}

void Ui::title(const std::string& t) {
  wrapped(t, theme_.text, px(24), fonts_.bold, Role::Heading);
}
void Ui::heading(const std::string& t) {
  wrapped(t, theme_.text, px(20), fonts_.bold, Role::Heading);
}
void Ui::text(const std::string& t) {
  wrapped(t, theme_.text, px(body_size), fonts_.words, Role::Text);
}
void Ui::quiet(const std::string& t) {
  wrapped(t, theme_.quiet, px(label_size), fonts_.words, Role::Text);
}
void Ui::coloured(const std::string& t, ImU32 colour, float size, ImFont* font) {
  wrapped(t, colour, size, font, Role::Text);
}

void Ui::gap(float height) {
  ImGui::Dummy({1, std::max(0.0f, height - ImGui::GetStyle().ItemSpacing.y)});
}

void Ui::separator() {
  const ImVec2 at = ImGui::GetCursorScreenPos();
  ImGui::GetWindowDrawList()->AddLine(at, {at.x + width(), at.y}, theme_.faint, 1.0f);
  ImGui::Dummy({1, 1});
}

void Ui::keep_in_view(const Area& where) {
  const ImVec2 low = ImGui::GetWindowDrawList()->GetClipRectMin();
  const ImVec2 high = ImGui::GetWindowDrawList()->GetClipRectMax();
  if (where.min.y >= low.y && where.max.y <= high.y) return;
  ImGui::SetScrollFromPosY(where.centre().y - ImGui::GetWindowPos().y, 0.5f);
}

// Shows the ring, brings it into view, and says whether the keyboard pressed this one.
bool Ui::by_keyboard(ImGuiID id, const Area& where) {
  if (!focus_.is_at(id)) return false;
  if (focus_.takes_scroll(id)) keep_in_view(where);
  const float width = theme_.stroke * 1.5f;
  ImGui::GetWindowDrawList()->AddRect(where.min, where.max, theme_.text, rounding, 0, width);
  return focus_.takes_press(id);
}

bool Ui::area(std::string_view id, Role role, const std::string& label, ImVec2 size,
              FunctionView<void(const Area&, bool)> draw, bool enabled) {
  const ImVec2 at = ImGui::GetCursorScreenPos();
  ImGui::BeginDisabled(!enabled);
  const bool fired = ImGui::InvisibleButton(id_text(id).c_str(), size);
  ImGui::EndDisabled();
  const bool pressed = enabled && ImGui::IsItemActive() && ImGui::IsItemHovered();
  const ImGuiID item_id = ImGui::GetItemID();
  Area where{at, {at.x + size.x, at.y + size.y}};
  Item& item = publish(role, label, where.min, where.max, item_id);
  item.enabled = enabled;
  item.focused = focus_.is_at(item_id);
  draw(where, pressed);
  const bool typed = by_keyboard(item_id, where);
  return (fired || typed) && enabled;
}

void Ui::fit(const Area& where, const std::string& words, ImU32 colour, float size, ImFont* font, Anchor anchor,
             float least) {
  float used = size;
  std::string lines = broken(font, used, words, where.width());
  ImVec2 box = size_of(font, used, lines);
  while (used > least * size && (box.y > where.height() + 1 || box.x > where.width() + 1)) {
    used *= 0.94f;
    lines = broken(font, used, words, where.width());
    box = size_of(font, used, lines);
  }
  if (!items_.empty() && (box.y > where.height() + 2 || box.x > where.width() + 2)) items_.back().clipped_text = true;
  const ImVec2 at{std::round(where.min.x + anchor.x * (where.width() - box.x)),
                  std::round(where.min.y + anchor.y * (where.height() - box.y))};
  screens::write(*ImGui::GetWindowDrawList(), font, used, at, colour, lines);
}

bool Ui::button(std::string_view id, const std::string& label, Look look, bool enabled, float wide) {
  const float w = wide > 0 ? wide : width();
  const ImVec2 words =
      fonts_.bold->CalcTextSizeA(px(body_size), 1.0e9f, w - 16, label.data(), label.data() + label.size());
  const float h = std::max(look == Look::Main ? std::max(64.0f, target()) : target(), words.y + 20);
  return area(
      id, Role::Button, label, {w, h},
      [&](const Area& at, bool pressed) {
        ImDrawList* const list = ImGui::GetWindowDrawList();
        const bool main = look == Look::Main && enabled;
        if (main)
          list->AddRectFilled(at.min, at.max, pressed ? theme_.text : theme_.accent, rounding);
        else if (pressed)
          list->AddRectFilled(at.min, at.max, theme_.pressed, rounding);
        if (look == Look::Plain) list->AddRect(at.min, at.max, theme_.line, rounding, 0, theme_.stroke * 0.7f);
        const ImU32 ink = main ? (pressed ? theme_.ground : theme_.on_accent) : enabled ? theme_.accent : theme_.quiet;
        fit(at.inset(8), label, ink, px(body_size), fonts_.bold);
      },
      enabled);
}

bool Ui::row(std::string_view id, const std::string& label, const std::string& value, bool enabled) {
  const float room = width() - 24;
  const float value_width = size_of(fonts_.bold, px(body_size), value).x;
  return value_width < 0.5f * room ? row_beside(id, label, value, value_width, enabled)
                                   : row_below(id, label, value, false, enabled);
}

bool Ui::named_row(std::string_view id, const std::string& name, const std::string& about) {
  return row_below(id, name, about, true, true);
}

bool Ui::row_beside(std::string_view id, const std::string& label, const std::string& value, float value_width,
                    bool enabled) {
  const float label_room = width() - 24 - (value.empty() ? 0 : value_width + 12);
  const ImVec2 box = size_of(fonts_.words, px(body_size), broken(fonts_.words, px(body_size), label, label_room));
  const bool fired = area(
      id, Role::Row, label, {width(), std::max(target(), box.y + 24)},
      [&](const Area& at, bool pressed) {
        ImGui::GetWindowDrawList()->AddRectFilled(at.min, at.max, pressed ? theme_.pressed : theme_.card, rounding);
        const ImU32 ink = enabled ? theme_.text : theme_.quiet;
        const Area inner{{at.min.x + 12, at.min.y + 8}, {at.max.x - 12, at.max.y - 8}};
        fit({inner.min, {inner.min.x + label_room, inner.max.y}}, label, ink, px(body_size), fonts_.words, {0, 0.5f});
        if (!value.empty())
          fit({{inner.max.x - value_width - 1, inner.min.y}, inner.max}, value, ink, px(body_size), fonts_.bold,
              {1, 0.5f});
      },
      enabled);
  items_.back().value = value;
  return fired;
}

// One above the other; the louder one is what the row is read for.
bool Ui::row_below(std::string_view id, const std::string& label, const std::string& value, bool label_loud,
                   bool enabled) {
  const float room = width() - 24;
  ImFont* const upper = label_loud ? fonts_.bold : fonts_.words;
  ImFont* const lower = label_loud ? fonts_.words : fonts_.bold;
  const float lower_size = px(label_loud ? label_size : body_size);
  const float above = size_of(upper, px(body_size), broken(upper, px(body_size), label, room)).y;
  const float below = value.empty() ? 0 : size_of(lower, lower_size, broken(lower, lower_size, value, room)).y + 4;
  const bool fired = area(
      id, Role::Row, label, {width(), std::max(target(), above + below + 24)},
      [&](const Area& at, bool pressed) {
        ImGui::GetWindowDrawList()->AddRectFilled(at.min, at.max, pressed ? theme_.pressed : theme_.card, rounding);
        const ImU32 ink = enabled ? theme_.text : theme_.quiet;
        const Area inner{{at.min.x + 12, at.min.y + 8}, {at.max.x - 12, at.max.y - 8}};
        const float part = value.empty() ? inner.max.y : inner.min.y + above;
        const float middle = value.empty() ? 0.5f : 0.0f;
        fit({inner.min, {inner.max.x, part}}, label, ink, px(body_size), upper, {0, middle});
        fit({{inner.min.x, part}, inner.max}, value, label_loud ? theme_.quiet : ink, lower_size, lower, {0, 1});
      },
      enabled);
  items_.back().value = value;
  return fired;
}

bool Ui::tappable(std::string_view id, const std::string& label, const Area& where, bool chosen) {
  const bool fired = area(id, Role::Choice, label, {where.width(), where.height()}, [&](const Area& at, bool pressed) {
    if (pressed) ImGui::GetWindowDrawList()->AddRect(at.min, at.max, theme_.accent, rounding, 0, theme_.stroke);
  });
  items_.back().chosen = chosen;
  return fired;
}

bool Ui::chip(std::string_view id, const std::string& label, ImVec2 size, bool on) {
  const bool fired = area(id, Role::Choice, label, size, [&](const Area& at, bool pressed) {
    ImDrawList* const list = ImGui::GetWindowDrawList();
    if (on || pressed) list->AddRectFilled(at.min, at.max, on ? theme_.accent : theme_.pressed, rounding);
    list->AddRect(at.min, at.max, on ? theme_.accent : theme_.line, rounding, 0, theme_.stroke * 0.7f);
    fit(at.inset(6), label, on ? theme_.on_accent : theme_.text, px(label_size), on ? fonts_.bold : fonts_.words, {},
        0.5f);
  });
  items_.back().chosen = on;
  return fired;
}

// As many beside each other as their words allow, no row much shorter than the others.
int Ui::columns_of(std::span<const std::string> words) const {
  float widest = 0;
  for (const std::string& w : words) widest = std::max(widest, size_of(fonts_.bold, px(label_size), w).x);
  const float fitting = (width() + segment_gap) / (widest + 20 + segment_gap);
  const int count = static_cast<int>(words.size());
  const int most = std::clamp(static_cast<int>(fitting), 1, count);
  const int rows = (count + most - 1) / most;
  return (count + rows - 1) / rows;
}

int Ui::segmented(std::string_view id, const std::string& label, std::span<const std::string> words, int chosen) {
  if (!label.empty()) quiet(label);
  const float all = width();
  const float gap_x = segment_gap;
  const int columns = columns_of(words);
  const float each = (all - gap_x * static_cast<float>(columns - 1)) / static_cast<float>(columns);
  int fired = -1;
  for (std::size_t i = 0; i < words.size(); ++i) {
    const bool on = static_cast<int>(i) == chosen;
    if (static_cast<int>(i) % columns != 0) ImGui::SameLine(0, gap_x);
    const ImVec2 box = size_of(fonts_.bold, px(label_size), broken(fonts_.bold, px(label_size), words[i], each - 20));
    const float h = std::max(target(), box.y + 20);
    if (area(std::string(id) + std::to_string(i), Role::Choice, words[i], {each, h}, [&](const Area& at, bool pressed) {
          ImDrawList* const list = ImGui::GetWindowDrawList();
          if (on || pressed) list->AddRectFilled(at.min, at.max, on ? theme_.accent : theme_.pressed, rounding);
          list->AddRect(at.min, at.max, on ? theme_.accent : theme_.line, rounding, 0, theme_.stroke * 0.7f);
          fit(at.inset(8), words[i], on ? theme_.on_accent : theme_.text, px(label_size),
              on ? fonts_.bold : fonts_.words, {columns > 1 ? 0.5f : 0.0f, 0.5f});
        }))
      fired = static_cast<int>(i);
    items_.back().chosen = on;
    items_.back().value = label;
  }
  return fired;
}

bool Ui::field(std::string_view id, const FieldLook& look) {
  const float w = look.width > 0 ? look.width : width();
  const float small = px(label_size);
  const std::string name = look.required && look.text.empty() ? words::needed(look.label) : look.label;
  const std::string label = look.bare ? std::string() : broken(fonts_.words, small, name, w);
  const std::string error = broken(fonts_.words, small, look.error, w);
  const float label_h = look.bare ? 0.0f : size_of(fonts_.words, small, label).y + 4;
  const float error_h = error.empty() ? 0.0f : size_of(fonts_.words, small, error).y + 4;
  const ImVec2 entry =
      fonts_.words->CalcTextSizeA(px(20), 1.0e9f, w - 24, look.text.data(), look.text.data() + look.text.size());
  const float box_h = std::max(target(), entry.y + 16);
  const ImVec2 top_left{ImGui::GetCursorScreenPos().x, ImGui::GetCursorScreenPos().y + label_h};
  const Area box{top_left, {top_left.x + w, top_left.y + box_h}};
  const bool fired =
      area(id, Role::Field, look.label, {w, label_h + box_h + error_h}, [&](const Area& at, bool pressed) {
        ImDrawList* const list = ImGui::GetWindowDrawList();
        screens::write(*list, fonts_.words, small, at.min, theme_.quiet, label);
        list->AddRectFilled(box.min, box.max, pressed ? theme_.pressed : theme_.card, rounding);
        const ImU32 edge = look.active ? theme_.accent : look.error.empty() ? theme_.line : theme_.outside;
        list->AddRect(box.min, box.max, edge, rounding, 0, look.active ? theme_.stroke * 1.4f : theme_.stroke * 0.7f);
        const bool empty = look.text.empty();
        fit({{box.min.x + 12, box.min.y + 4}, {box.max.x - 12, box.max.y - 4}}, empty ? look.preset : look.text,
            empty ? theme_.quiet : theme_.text, px(20), fonts_.words, {0, 0.5f}, 0.5f);
        screens::write(*list, fonts_.words, small, {at.min.x, box.max.y + 4}, theme_.outside, error);
      });
  Item& item = items_.back();
  item.value = look.text;
  item.field = id;
  item.box_min = box.min;
  item.box_max = box.max;
  if (focus_.types_in(id)) keep_in_view(box);
  return fired;
}

void Ui::mark_chosen(bool chosen) {
  items_.back().chosen = chosen;
}

void Ui::name_last(const std::string& label) {
  items_.back().label = label;
}

void Ui::begin_card() {
  card_min_ = ImGui::GetCursorScreenPos();
  card_width_ = ImGui::GetContentRegionAvail().x;
  ImDrawList* const list = ImGui::GetWindowDrawList();
  list->ChannelsSplit(2);
  list->ChannelsSetCurrent(1);
  in_card_ = true;
  ImGui::BeginGroup();
  ImGui::Dummy({1, 8});
  ImGui::Indent(16);
}

void Ui::end_card() {
  ImGui::Unindent(16);
  ImGui::Dummy({1, 8});
  ImGui::EndGroup();
  in_card_ = false;
  ImDrawList* const list = ImGui::GetWindowDrawList();
  list->ChannelsSetCurrent(0);
  list->AddRectFilled(card_min_, {card_min_.x + card_width_, ImGui::GetItemRectMax().y}, theme_.card, rounding + 4);
  list->ChannelsMerge();
}

void draw_verdict_mark(const Pen& pen, ImVec2 c, float r, Verdict verdict, ImU32 colour) {
  ImDrawList* const list = pen.list;
  const float w = pen.stroke * 1.5f;
  if (verdict == Verdict::Within) {
    list->AddCircle(c, r, colour, 0, w);
    const ImVec2 tick[3] = {
        {c.x - 0.45f * r, c.y}, {c.x - 0.1f * r, c.y + 0.38f * r}, {c.x + 0.5f * r, c.y - 0.35f * r}};
    list->AddPolyline(tick, 3, colour, 0, w);
  } else if (verdict == Verdict::Outside) {
    list->AddRect({c.x - r, c.y - r}, {c.x + r, c.y + r}, colour, 2, 0, w);
    list->AddLine({c.x - 0.45f * r, c.y - 0.45f * r}, {c.x + 0.45f * r, c.y + 0.45f * r}, colour, w);
    list->AddLine({c.x - 0.45f * r, c.y + 0.45f * r}, {c.x + 0.45f * r, c.y - 0.45f * r}, colour, w);
  } else {
    const float d = 1.15f * r;
    list->AddQuad({c.x, c.y - d}, {c.x + d, c.y}, {c.x, c.y + d}, {c.x - d, c.y}, colour, w);
  }
}

}  // namespace camside::screens
