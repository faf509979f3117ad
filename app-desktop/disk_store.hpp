// The store of core/storage/store.hpp on a disk. Names become files of one folder:
//
//   current-job.json           the newest version, a file any editor opens
//   current-job.previous.json  the one before it
//   current-job.damaged.json   set aside, if ever one was damaged (then -2, -3 …)
//   lock                       held while a Camside has the folder; a second one reads and doesn't save
//
// A thread of its own does the waiting for the disk; answers are delivered by poll(). The destructor finishes what was
// handed over. Works on any file system with atomic rename; where hard links are missing the previous version is
// copied.
#pragma once

#include <cstdint>
#include <functional>
#include <set>
#include <string>

#include "disk_parts.hpp"
#include "storage/store.hpp"

namespace camside {

// $XDG_DATA_HOME/camside, else ~/.local/share/camside; empty when neither is set.
std::string default_data_folder();

class DiskStore final : public storage::Store {
 public:
  // Steps of one save, in order; a test stops after any of them as a power cut would.
  enum class Step : std::uint8_t { TempSynced, PreviousKept, Renamed };
  using Interrupt = std::function<bool(Step)>;  // true: stop here

  // `wake` is called from the store's thread when an answer waits for poll(); it may only wake a sleeping window.
  explicit DiskStore(std::string folder, std::function<void()> wake = {}, Interrupt interrupt = {});
  ~DiskStore() override;
  DiskStore(const DiskStore&) = delete;
  DiskStore& operator=(const DiskStore&) = delete;

  void load(const std::string& name, Whole whole, LoadDone done) override;
  void save(const std::string& name, std::string bytes, SaveDone done) override;
  void poll() override;

 private:
  struct Lock {
    ~Lock();
    int fd = -1;
  };

  bool take_lock();
  tl::expected<storage::Loaded, Finding> read_newest(const std::string& name, const Whole& whole);
  tl::expected<void, Finding> write_newest(const std::string& name, const std::string& bytes);
  tl::expected<void, std::string> write_steps(const std::string& name, const std::string& bytes);
  tl::expected<void, std::string> keep_previous(const std::string& name);
  bool stop_after(Step step) const { return interrupt_ && interrupt_(step); }
  std::string path(const std::string& name, const std::string& ending) const;
  Finding damage_noted(const std::string& name, bool previous_good);
  std::string free_damaged_name(const std::string& name) const;

  std::string folder_;
  Interrupt interrupt_;
  Lock lock_;
  std::set<std::string> damaged_;  // names whose newest version must be set aside at the next save
  DiskWorker worker_;              // last: ends first, after finishing what was handed over
};

}  // namespace camside
