#include "screens/bikes/bike_page.hpp"

#include <algorithm>
#include <set>

#include "due/due_board.hpp"
#include "knowledge/knowledge.hpp"
#include "log/demo_bike.hpp"
#include "log/log_csv.hpp"
#include "screens/bikes/known_words.hpp"
#include "screens/widgets/cut.hpp"
#include "screens/words.hpp"

namespace camside::screens {

using records::Bike;
using records::Entry;
using records::Line;

namespace {

constexpr const char* deleted_ones = "deletion";

// What a line is about: of a deleted one, what stood there before.
const Entry& main_entry(const records::Log& log, const Line& line) {
  for (const std::size_t i : line.current)
    if (!log.entries()[i].is_deletion()) return log.entries()[i];
  const auto& replaced = line.replaced;
  for (auto it = replaced.rbegin(); it != replaced.rend(); ++it)
    if (!log.entries()[*it].is_deletion()) return log.entries()[*it];
  return log.entries()[line.current.front()];
}

std::string kind_of(const records::Log& log, const Line& line) {
  return line.deleted ? deleted_ones : main_entry(log, line).kind();
}

// What the line above (odometer and model year) leaves unsaid; as an entry says it, so that their words come from the
// fields' description.
Entry facts_entry(const Bike& bike) {
  Entry entry = records::make_entry("facts", bike.id, {});
  const std::pair<const char*, const std::string*> fields[]{
      {"engine", &bike.engine}, {"own_engine", &bike.own_engine}, {"drive", &bike.drive}};
  for (const auto& [name, text] : fields)
    if (!text->empty()) entry.record.enter(name, *text);
  return entry;
}

}  // namespace

std::string words_for(const Entry& entry) {
  const auto measured = entry.measurement();
  const RecordKind* const kind = measured ? records::find_kind(measured->kind()) : nullptr;
  const std::string label(kind ? std::string(kind->label) : records::label_of_entry(entry.kind()));
  const std::string what = kind ? measured->name() : records::what_of(entry);
  return what.empty() ? label : label + ": " + what;
}

void BikePage::open(std::string bike) {
  bike_ = std::move(bike);
  adding_ = known_ = false;
  filter_.clear();
  version_ = -1;
}

void BikePage::find_kinds(const BikeLog& log, const Bike& bike) {
  std::set<std::string> present;
  for (const Line& line : bike.lines) present.insert(kind_of(log.log(), line));
  kinds_ = {""};
  kind_labels_ = {words::all_kinds()};
  const bool some_deleted = present.erase(deleted_ones) > 0;
  for (const std::string& kind : present) {
    kinds_.push_back(kind);
    kind_labels_.push_back(records::label_of_entry(kind));
  }
  if (some_deleted) {
    kinds_.emplace_back(deleted_ones);
    kind_labels_.push_back(records::label_of_entry(deleted_ones));
  }
  if (std::find(kinds_.begin(), kinds_.end(), filter_) == kinds_.end()) filter_.clear();
}

bool BikePage::passes(const BikeLog& log, const Line& line) const {
  return filter_.empty() ? !line.deleted : kind_of(log.log(), line) == filter_;
}

void BikePage::refresh(const BikeLog& log, System system) {
  if (version_ == log.version() && system_ == system) return;
  version_ = log.version();
  system_ = system;
  shown_.clear();
  texts_.clear();
  const Bike* const bike = log.bike(*bike_);
  if (!bike) return;
  facts_ = entered_lines(facts_entry(*bike).record, records::entry_kinds(), system);
  find_kinds(log, *bike);
  for (std::size_t i = bike->lines.size(); i-- > 0;)
    if (passes(log, bike->lines[i])) shown_.push_back(i);
}

const BikePage::RowText& BikePage::text_of(const BikeLog& log, const Bike& bike, std::size_t at) {
  const auto known = texts_.find(at);
  if (known != texts_.end()) return known->second;
  const Line& line = bike.lines[at];
  const Entry& entry = main_entry(log.log(), line);
  RowText text;
  text.what = words_for(entry);
  text.about = line.day.substr(0, 10);
  text.apart = line.apart;
  if (line.deleted) text.about += std::string(" · ") + words::deleted_state();
  if (line.apart) text.about += std::string(" · ") + words::changed_apart();
  const std::string note = entry.note() == records::invented_mark ? words::invented_beside("") : entry.note();
  for (const std::string& more : {entry.entered_text("grade"), entry.entered_text("proof"), entry.by(), note})
    if (!more.empty()) text.about += " · " + more;
  return texts_.emplace(at, std::move(text)).first->second;
}

void BikePage::draw_adding(Ui& ui, Asked& asked) {
  if (ui.button("add an entry", words::add_an_entry())) adding_ = !adding_;
  if (!adding_) return;
  std::vector<std::string> labels;
  std::vector<std::string> kinds;
  for (const RecordKind& kind : records::entry_kinds()) {
    if (kind.name == "facts") continue;
    kinds.emplace_back(kind.name);
    labels.emplace_back(kind.label);
  }
  const int pressed = ui.segmented("kind to add", words::which_kind(), labels, -1);
  if (pressed < 0) return;
  adding_ = false;
  asked.what = Asked::What::Add;
  asked.kind = kinds[static_cast<std::size_t>(pressed)];
}

const BikeRow* BikePage::row_of(const BikeLog& log) const {
  const auto at = std::find_if(log.rows().begin(), log.rows().end(), [&](const BikeRow& r) { return r.id == *bike_; });
  return at == log.rows().end() ? nullptr : &*at;
}

bool BikePage::is_invented(const BikeLog& log) const {
  const BikeRow* const row = row_of(log);
  return row && row->invented && !row->removed;
}

void BikePage::draw_facts(Ui& ui, const BikeLog& log) {
  const BikeRow* const row = row_of(log);
  ui.begin_card();
  if (row && !row->about.empty()) ui.heading(row->about);
  for (const EnteredLine& fact : facts_) ui.quiet(fact.label + ": " + fact.text);
  if (is_invented(log)) ui.quiet(words::invented_bike());
  ui.end_card();
}

// All that the book holds of its engine, below the log's own: read once in a while.
void BikePage::draw_known(Ui& ui, const BikeLog& log) {
  const Bike* const bike = log.bike(*bike_);
  if (!bike || bike->engine.empty()) return;
  if (ui.button("known", known_ ? words::hide_known() : words::show_known(), Look::Quiet)) known_ = !known_;
  if (!known_) return;
  const std::string_view engine = due_board::engine_id(bike->engine);
  for (const knowledge::Page& page : knowledge::known_of(knowledge::usual_knowledge(), engine)) {
    ui.heading(page.heading);
    for (const knowledge::Page::Line& line : page.lines) {
      ui.text(line.text);
      if (!line.source.empty()) ui.quiet(line.source);
      ui.gap(6);
    }
  }
}

// Below what is due: that is what the page was opened for.
void BikePage::draw_changes(Ui& ui, const BikeLog& log, Asked& asked) {
  const bool can = log.takes_entries();
  if (can) draw_adding(ui, asked);
  if (can && ui.button("change facts", words::change_facts(), Look::Quiet)) asked.what = Asked::What::Facts;
  if (ui.button("show as code", words::show_as_code(), Look::Quiet)) asked.what = Asked::What::Code;
  if (can && is_invented(log) && ui.button("remove demo", words::remove_demo(), Look::Quiet))
    asked.what = Asked::What::Remove;
}

void BikePage::draw_filter(Ui& ui) {
  constexpr std::size_t few = 8;  // seen at a glance: the filter would be longer than the log
  const bool some_deleted = kinds_.back() == deleted_ones;
  if (!some_deleted && filter_.empty() && (kinds_.size() < 3 || shown_.size() <= few)) return;
  const auto now = std::find(kinds_.begin(), kinds_.end(), filter_) - kinds_.begin();
  const int pressed = ui.segmented("filter", words::show_kinds(), kind_labels_, static_cast<int>(now));
  if (pressed < 0) return;
  filter_ = kinds_[static_cast<std::size_t>(pressed)];
  version_ = -1;
}

bool BikePage::draw_row(Ui& ui, const RowText& text, std::size_t number, float height) {
  return ui.area("line " + std::to_string(number), Role::Row, text.what, {ui.width(), height},
                 [&](const Area& at, bool pressed) {
                   ImDrawList* const list = ImGui::GetWindowDrawList();
                   list->AddRectFilled(at.min, at.max, pressed ? ui.theme().pressed : ui.theme().card, 10);
                   if (text.apart) list->AddRectFilled(at.min, {at.min.x + 5, at.max.y}, ui.theme().not_proven, 2);
                   const Area in{{at.min.x + 12, at.min.y + 8}, {at.max.x - 12, at.max.y - 8}};
                   const float part = in.min.y + 0.54f * in.height();
                   const Pen pen = ui.pen(ui.theme().card);
                   const auto line = [&](ImVec2 from, const std::string& words, ImU32 ink, float size, ImFont* font) {
                     const std::string fitting = cut_to(font, size, words, in.width());
                     write(*pen.list, font, size, from, ink, fitting);
                   };
                   line(in.min, text.what, ui.theme().text, ui.px(18), ui.fonts().bold);
                   line({in.min.x, part}, text.about, ui.theme().quiet, ui.px(16), ui.fonts().words);
                 });
}

// Only the rows near the window are made; a window's height beyond both ends, so that the keyboard finds the next one.
void BikePage::draw_timeline(Ui& ui, BikeLog& log, Asked& asked) {
  const Bike* const bike = log.bike(*bike_);
  if (!bike) return;
  if (shown_.empty()) return ui.quiet(words::no_entries());
  const float gap = 8;
  const float height = std::max(ui.target(), ui.px(18) + ui.px(16) + 26);
  const float pitch = height + gap;
  const ImVec2 start = ImGui::GetCursorScreenPos();
  const float window_top = ImGui::GetWindowPos().y;
  const float window_height = ImGui::GetWindowSize().y;
  const auto count = static_cast<float>(shown_.size());
  const float first = std::clamp((window_top - window_height - start.y) / pitch, 0.0f, count);
  const float last = std::clamp((window_top + 2 * window_height - start.y) / pitch + 1, 0.0f, count);
  for (auto i = static_cast<std::size_t>(first); i < static_cast<std::size_t>(last); ++i) {
    ImGui::SetCursorScreenPos({start.x, start.y + static_cast<float>(i) * pitch});
    const std::size_t line = shown_[i];
    if (!draw_row(ui, text_of(log, *bike, line), line, height)) continue;
    asked.what = Asked::What::Open;
    asked.entry = bike->lines[line].current.front();
  }
  ImGui::SetCursorScreenPos({start.x, start.y + count * pitch});
  ImGui::Dummy({1, 24});
}

void BikePage::draw_due(Ui& ui, BikeLog& log, DueList& due, const std::string& said, System system, Asked& asked) {
  DueList::Asked now = due.draw(ui, log, *bike_, system);
  if (!said.empty()) ui.text(said);
  if (now.kind.empty()) return;
  asked.what = Asked::What::Add;
  asked.kind = std::move(now.kind);
  asked.about = std::move(now.about);
}

BikePage::Asked BikePage::draw(Ui& ui, BikeLog& log, DueList& due, const std::string& said, System system) {
  refresh(log, system);
  Asked asked;
  draw_facts(ui, log);
  ui.gap(12);
  draw_due(ui, log, due, said, system, asked);
  ui.gap(12);
  draw_changes(ui, log, asked);
  draw_known(ui, log);
  ui.gap(12);
  draw_filter(ui);
  ui.gap(8);
  draw_timeline(ui, log, asked);
  return asked;
}

}  // namespace camside::screens
