// Copies of the log: out to another device or to a safe place, and in again. What a copy would bring is shown before
// anything is taken in; what can't be read of it is said.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "log/log.hpp"
#include "screens/bikes/bike_log.hpp"
#include "screens/platform.hpp"
#include "screens/widgets/ui.hpp"
#include "storage/keeper.hpp"
#include "storage/store.hpp"

namespace camside::screens {

class LogTransfer {
 public:
  LogTransfer(BikeLog& log, Platform& platform, storage::Store& store);

  bool look();  // once a frame: what came of files; true: one has come and waits to be looked at
  bool waiting() const { return file_.has_value(); }
  bool reading() const { return file_ && file_->unread; }  // another frame is wanted
  void leave() { file_.reset(); }

  std::string said(Left what) const;  // of the last file that left, if it was that
  void draw_copies(Ui& ui);
  void draw_file(Ui& ui);
  void draw_take_in(Ui& ui);  // the main action while a file waits

 private:
  struct File {
    std::string name;
    std::optional<std::string> unread = {};  // a large one's bytes, until "Reading …" has been seen
    bool announced = false;
    std::optional<records::Log> log;  // none: it can't be taken in
    Findings findings;
    std::vector<std::string> brings;
    std::vector<records::Entry> entries;  // to be added
    int version = -1;                     // of our log, when that was looked at
  };

  // noinline: a door of app-web/later.py
  [[gnu::noinline]] void take(FileCome come);
  [[gnu::noinline]] void read(const std::string& bytes);
  void note_given(const FileGiven& given);
  void look_again();
  std::optional<int> days_since_copy() const;

  BikeLog& log_;
  Platform& platform_;
  storage::Keeper keeper_;                                                 // of the time of the last copy
  std::shared_ptr<std::string> copied_ = std::make_shared<std::string>();  // that time; empty: never
  std::optional<File> file_;
  std::string said_;
};

}  // namespace camside::screens
