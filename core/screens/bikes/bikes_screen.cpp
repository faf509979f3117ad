#include "screens/bikes/bikes_screen.hpp"

#include <algorithm>

#include "log/demo_bike.hpp"
#include "records/new_id.hpp"
#include "screens/widgets/answer.hpp"
#include "screens/words.hpp"

namespace camside::screens {

using records::Bike;
using records::Entry;
using records::Line;

void BikesScreen::open(const std::string& bike) {
  transfer_.leave();
  set_aside();
  code_.close();
  entry_.close();
  page_.open(bike);
}

// What was typed waits here until it is continued.
void BikesScreen::set_aside() {
  if (editor_.changed()) drafts_.aside().push_back(editor_.draft());
  editor_.close();
}

void BikesScreen::back() {
  if (transfer_.waiting()) return transfer_.leave();
  if (editor_.active()) return set_aside();
  if (code_.is_open()) return code_.close();
  if (entry_.is_open()) return entry_.close();
  page_.close();
}

std::string BikesScreen::title() const {
  if (transfer_.waiting()) return words::copy_to_take_in();
  if (editor_.active()) return editor_.title();
  if (entry_.is_open()) return entry_.title(log_);
  if (!page_.is_open()) return words::bikes();
  const Bike* const bike = log_.bike(page_.bike());
  const std::string name = !bike || bike->id.empty() ? words::no_bike_named() : bike->name();
  return code_.is_open() ? words::code_of(name) : name;
}

const char* BikesScreen::part() const {
  if (transfer_.waiting()) return "copy to take in";
  return editor_.active()   ? "bike editor"
         : code_.is_open()  ? "bike code"
         : entry_.is_open() ? "bike entry"
         : page_.is_open()  ? "bike page"
                            : "bikes";
}

// ---- changes

const Unit* BikesScreen::clock_unit() const {
  const Bike* const bike = page_.is_open() ? log_.bike(page_.bike()) : nullptr;
  return bike ? find_unit(Kind::Distance, bike->odometer_unit) : nullptr;
}

void BikesScreen::add_bike() {
  page_.close();
  entry_.close();
  editor_.begin(records::make_entry("facts", records::new_id(), log_.next_stamp()), nullptr);
}

void BikesScreen::add_demo() {
  std::vector<Entry> demo = records::demo_bike([this] { return log_.next_stamp(); });
  const std::string bike = demo.front().bike();
  if (log_.add(std::move(demo), words::demo_added())) open(bike);
}

void BikesScreen::write(const std::string& kind, const std::string& about) {
  Entry draft = records::make_entry(kind, page_.bike(), log_.next_stamp());
  if (!about.empty()) records::begin_about(draft, about);
  if (kind == "odometer")
    editor_.begin_at_once(std::move(draft), clock_unit());
  else
    editor_.begin(std::move(draft), clock_unit());
}

// The facts are corrected where they stand; a bike of which only other entries are there gets its first ones.
void BikesScreen::change_facts() {
  const Bike* const bike = log_.bike(page_.bike());
  if (!bike) return;
  const records::Log& log = log_.log();
  for (auto line = bike->lines.rbegin(); line != bike->lines.rend(); ++line) {
    if (line->deleted || log.entries()[line->current.front()].kind() != "facts") continue;
    // Both are looked at before something takes their place.
    if (line->apart) return entry_.open(page_.bike(), line->current.front());
    std::vector<Entry> old;
    for (const std::size_t i : line->current) old.push_back(log.entries()[i]);
    return editor_.begin(records::correction(log, old, log_.next_stamp()), clock_unit());
  }
  write("facts");
}

void BikesScreen::remove_bike() {
  const Bike* const bike = log_.bike(page_.bike());
  if (!bike) return;
  const std::string what = words::removed(bike->name());
  if (log_.add(records::removal_of(log_.log(), *bike, [this] { return log_.next_stamp(); }), what)) page_.close();
}

void BikesScreen::carry_out(const BikePage::Asked& asked) {
  switch (asked.what) {
    case BikePage::Asked::What::Open:
      return entry_.open(page_.bike(), asked.entry);
    case BikePage::Asked::What::Add:
      return write(asked.kind, asked.about);
    case BikePage::Asked::What::Facts:
      return change_facts();
    case BikePage::Asked::What::Remove:
      return remove_bike();
    case BikePage::Asked::What::Code:
      return code_.open(page_.bike());
    case BikePage::Asked::What::Nothing:
      break;
  }
}

void BikesScreen::carry_out(EntryPage::Asked asked) {
  const Entry* const entry = entry_.entry(log_);
  if (!entry || asked == EntryPage::Asked::Nothing) return;
  if (asked == EntryPage::Asked::Reopen) {
    reopened_ = entry->measurement();
    return;
  }
  const Entry old = *entry;
  editor_.begin(records::correction(log_.log(), std::span(&old, 1), log_.next_stamp()), clock_unit());
}

void BikesScreen::take_finished() {
  std::optional<Entry> entry = editor_.take_finished();
  if (!entry) return;
  const std::string bike = entry->bike();
  const std::string what = words_for(*entry);
  if (!log_.takes_entries()) return drafts_.aside().push_back(std::move(*entry));  // another tab writes now
  if (log_.add({std::move(*entry)}, what) && !page_.is_open()) open(bike);
}

// ---- the list

void BikesScreen::draw_empty(Ui& ui) {
  ui.heading(words::no_bikes_yet());
  ui.text(words::no_bikes_help());
  ui.gap(12);
  if (log_.takes_entries() && ui.button("demo bike", words::show_demo_bike())) add_demo();
}

void BikesScreen::draw_removed(Ui& ui) {
  const auto count = std::count_if(log_.rows().begin(), log_.rows().end(), [](const BikeRow& r) { return r.removed; });
  if (count == 0) return;
  ui.gap(16);
  if (ui.button("removed bikes", words::removed_bikes(static_cast<std::size_t>(count)), Look::Quiet))
    removed_shown_ = !removed_shown_;
  if (!removed_shown_) return;
  std::string chosen;
  for (const BikeRow& row : log_.rows())
    if (row.removed && ui.row("removed " + row.id, row.name, words::removed_state())) chosen = row.id;
  if (!chosen.empty()) open(chosen);
}

// Of opening all; of what the entries say about each other the first few, the lines themselves say it too.
void BikesScreen::draw_findings(Ui& ui) {
  constexpr std::size_t some = 5;
  draw_remarks(ui, log_.keeper().findings());
  const Findings& all = log_.view().findings;
  draw_remarks(ui, {all.begin(), all.begin() + static_cast<std::ptrdiff_t>(std::min(some, all.size()))});
  if (all.size() > some) ui.quiet(words::more_remarks(all.size() - some));
}

void BikesScreen::draw_list(Ui& ui, bool aside) {
  if (!log_.ready()) return;
  std::string chosen;
  bool any = false;
  for (const BikeRow& row : log_.rows()) {
    if (row.removed) continue;
    any = true;
    std::string about = row.invented ? words::invented_beside(row.about) : row.about;
    if (const std::string due = due_.first(row.id); !due.empty() && !aside) about += "\n" + due;
    if (ui.named_row("bike " + row.id, row.name, about)) chosen = row.id;
    ui.gap(4);
  }
  if (!any && !aside) draw_empty(ui);
  if (!aside) draw_removed(ui);
  if (!chosen.empty()) open(chosen);
}

// ---- the pages

void BikesScreen::draw_unfinished(Ui& ui) {
  std::vector<Entry>& unfinished = drafts_.aside();
  std::optional<std::size_t> chosen;
  for (std::size_t i = 0; i < unfinished.size(); ++i) {
    const std::string label = words::unfinished(records::label_of_entry(unfinished[i].kind()));
    if (ui.row("unfinished " + std::to_string(i), label, words::go_on())) chosen = i;
  }
  if (!chosen) return;
  Entry draft = std::move(unfinished[*chosen]);
  unfinished.erase(unfinished.begin() + static_cast<std::ptrdiff_t>(*chosen));
  if (log_.bike(draft.bike())) page_.open(draft.bike());
  editor_.begin(std::move(draft), clock_unit());
}

void BikesScreen::draw_page(Ui& ui, System system) {
  drafts_.keep(editor_.changed() ? &editor_.draft() : nullptr);
  due_.prepare(log_, system);
  if (transfer_.waiting()) return transfer_.draw_file(ui);
  if (editor_.active()) {
    editor_.draw(ui, platform_, system);
    return take_finished();
  }
  if (code_.is_open()) return code_.draw(ui, log_, transfer_.said(Left::Bike));
  const auto there = [this] {
    const Bike* const bike = page_.is_open() ? log_.bike(page_.bike()) : nullptr;
    return bike && !bike->removed;
  };
  const bool was_there = there();
  draw_last_change(ui, log_);
  if (was_there && !there()) page_.close();  // its making was undone
  draw_unfinished(ui);
  ui.gap(8);
  if (editor_.active()) return;
  if (entry_.is_open()) return carry_out(entry_.draw(ui, log_, system));
  if (page_.is_open()) return carry_out(page_.draw(ui, log_, due_, transfer_.said(Left::Reminders), system));
  draw_list(ui, false);
  ui.gap(12);
  draw_findings(ui);
  if (!page_.is_open()) transfer_.draw_copies(ui);
}

void BikesScreen::draw_middle(Ui& ui, System system) {
  draw_log_state(ui, log_);
  if (log_.ready()) return draw_page(ui, system);
  if (!platform_.all_here()) ui.quiet(words::rest_is_coming());
}

// ---- the thumb's place

float BikesScreen::bottom_height(const Ui& ui) const {
  if (editor_.active() && !transfer_.waiting()) return editor_.bottom_height(ui);
  const bool acts = log_.takes_entries() && (transfer_.waiting() || (!entry_.is_open() && !code_.is_open()));
  return acts ? std::max(64.0f, ui.target()) + 16 : 0;
}

void BikesScreen::draw_bottom(Ui& ui, System system, float height) {
  if (transfer_.waiting()) return transfer_.draw_take_in(ui);
  if (editor_.active()) {
    editor_.draw_bottom(ui, platform_, system, height);
    return take_finished();
  }
  if (page_.is_open()) {
    if (ui.button("log odometer", words::log_odometer(), Look::Main)) write("odometer");
  } else if (ui.button("add bike", words::add_bike(), Look::Main)) {
    add_bike();
  }
}

}  // namespace camside::screens
