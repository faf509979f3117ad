// The place "Bikes": the list of bikes, one bike, one entry of its log, and the entry being written, each on its own
// page with the way back in the header.
#pragma once

#include <optional>
#include <string>

#include "screens/bikes/bike_code_page.hpp"
#include "screens/bikes/bike_log.hpp"
#include "screens/bikes/bike_page.hpp"
#include "screens/bikes/due_list.hpp"
#include "screens/bikes/entry_editor.hpp"
#include "screens/bikes/entry_page.hpp"
#include "screens/bikes/log_transfer.hpp"
#include "work/drafts.hpp"

namespace camside::screens {

// What is noinline here is a door of app-web/later.py.
class BikesScreen {
 public:
  BikesScreen(BikeLog& log, Platform& platform, storage::Store& store)
      : log_(log), platform_(platform), transfer_(log, platform, store), code_(platform, store), drafts_(store) {}

  bool file_came() { return transfer_.look(); }  // once a frame; true: it is to be shown

  void draw_middle(Ui& ui, System system);
  [[gnu::noinline]] void draw_list(Ui& ui, bool aside);
  float bottom_height(const Ui& ui) const;  // 0: nothing stands there
  [[gnu::noinline]] void draw_bottom(Ui& ui, System system, float height);

  bool keypad_open() const { return !transfer_.waiting() && editor_.keypad_open(); }
  bool shows_code() const { return code_.is_open() && !transfer_.waiting(); }
  bool holding() const { return editor_.holding(); }
  bool wants_more() const { return due_.wants_more() || transfer_.reading(); }
  bool deep() const { return transfer_.waiting() || editor_.active() || entry_.is_open() || page_.is_open(); }
  void back();
  std::string title() const;
  const char* part() const;  // a name for each page, so that each keeps its own scrolling
  void show(const std::string& bike) { open(bike); }
  std::string shown() const { return page_.is_open() ? page_.bike() : std::string(); }  // id
  std::string said_of_summary() const { return transfer_.said(Left::Summary); }
  std::optional<records::Record> take_reopened() { return std::exchange(reopened_, std::nullopt); }

 private:
  void open(const std::string& bike);
  void set_aside();
  void draw_unfinished(Ui& ui);
  void add_bike();
  void add_demo();
  void write(const std::string& kind, const std::string& about = "");
  void change_facts();
  void remove_bike();
  void carry_out(const BikePage::Asked& asked);
  void carry_out(EntryPage::Asked asked);
  void take_finished();
  const Unit* clock_unit() const;
  void draw_empty(Ui& ui);
  void draw_removed(Ui& ui);
  void draw_findings(Ui& ui);
  [[gnu::noinline]] void draw_page(Ui& ui, System system);

  BikeLog& log_;
  Platform& platform_;
  BikePage page_;
  EntryPage entry_;
  EntryEditor editor_;
  DueList due_;
  LogTransfer transfer_;
  BikeCodePage code_;
  work::Drafts drafts_;
  bool removed_shown_ = false;
  std::optional<records::Record> reopened_;
};

}  // namespace camside::screens
