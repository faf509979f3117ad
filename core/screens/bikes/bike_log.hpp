// The log of the bikes as the screens see it: the keeper, what the log says now, and the last change made here. The
// view is made anew only when the log has grown.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "log/log_view.hpp"
#include "screens/widgets/ui.hpp"
#include "screens/platform.hpp"
#include "storage/log_keeper.hpp"

namespace camside::screens {

struct BikeRow {
  std::string id;
  std::string name;
  std::string about;  // "41,300 mi · 2003"
  bool invented = false;
  bool removed = false;
};

enum class Left : std::uint8_t { Nothing, Copy, Bike, Reminders, Summary };

class BikeLog {
 public:
  BikeLog(storage::LogKeeper* keeper, Platform& platform) : keeper_(keeper), platform_(platform) {}

  bool present() const { return keeper_ != nullptr; }
  void open(std::function<void()> changed);
  void refresh();  // once a frame, before anything is drawn
  bool changed() const;

  bool ready() const { return present() && keeper_->ready(); }
  bool takes_entries() const { return ready() && !keeper_->read_only(); }
  storage::LogKeeper& keeper() { return *keeper_; }
  const records::Log& log() const { return keeper_->log(); }
  const records::View& view() const { return view_; }
  const records::Bike* bike(std::string_view id) const { return records::find_bike(view_, id); }
  const std::vector<BikeRow>& rows() const { return rows_; }
  std::vector<const BikeRow*> standing() const;  // the bikes that weren't removed
  int version() const { return version_; }       // another one: look again

  std::string now() const { return platform_.local_time(); }
  records::Stamp next_stamp();
  // Changes are remembered, the last one to be undone; `what` says in a few words what it was.
  bool add(std::vector<records::Entry> entries, std::string what);
  // Another device's entries, likewise; taken back, they can be brought again.
  bool take_in(const std::vector<records::Entry>& entries);
  void give_copy(bool share);                           // the whole log as a file, what isn't saved yet too
  void give_bike(const std::string& bike, bool share);  // its log alone, which is no copy of all
  void give_reminders(const std::string& calendar);
  void give_summary(const std::string& name, const std::string& text, bool share);
  Left left() const { return left_; }  // what the last file given was
  FileWays ways() const { return platform_.file_ways(); }
  const std::string& last_change() const { return last_what_; }
  void undo_last();
  // Names of the bikes in whose log this measurement stands just as it is.
  std::string logged_to(const records::Record& measured) const;

 private:
  // noinline: a door of app-web/later.py
  [[gnu::noinline]] void look_again();

  storage::LogKeeper* keeper_;
  Platform& platform_;
  records::View view_;
  std::vector<BikeRow> rows_;
  std::unordered_map<std::string, std::vector<std::size_t>> measured_;  // by the record's id: current entries
  std::size_t seen_ = 0;
  bool seen_ready_ = false;
  bool seen_read_only_ = false;
  storage::SaveState seen_state_ = storage::SaveState::Idle;
  int version_ = 0;
  std::int64_t last_made_ = 0;
  std::vector<records::Entry> last_;
  std::string last_what_;
  std::size_t last_taken_in_ = 0;  // entries of another device, when that was the last change
  Left left_ = Left::Nothing;
};

const char* word_of_state(BikeLog& log);  // "Saved", "Saving …", "Not saved"

// What went wrong with saving or opening, that it is read-only, and the last change with its undo.
void draw_log_state(Ui& ui, BikeLog& log);
void draw_last_change(Ui& ui, BikeLog& log);

}  // namespace camside::screens
