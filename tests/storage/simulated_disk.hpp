// A disk that does as told: it fails, cuts, garbles or forgets the n-th operation, or the power goes at it. It knows
// what a power cut leaves: bytes that were synced and names whose folder was; of everything else, what the test
// chooses, or any part of it in any order (restart_shuffled).
//
// Faults are set by the number of the changing operation (fault_at), or by the number of the call (strikes), where
// locking, reading and asking for a size count too; there several can be set.
#pragma once

#include <cstdint>
#include <map>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "storage/file_operations.hpp"

namespace camside::storage {

enum class Fault : std::uint8_t {
  None,
  Fail,        // the operation fails, nothing is done
  Cut,         // half of the bytes are written, then it fails (other operations: as Fail)
  FailOn,      // this and every later operation that changes anything fails: the disk is full or gone
  Garble,      // other bytes are written, and success is said
  Forget,      // nothing is written, and success is said
  PowerCut,    // half of the bytes are written, then nothing works any more until restart()
  KillBefore,  // nothing is done, and nothing works any more until restart()
  KillAfter,   // it is done, and nothing works any more until restart()
};

// What a power cut keeps of what was not synced.
enum class Survives : std::uint8_t { Nothing, Everything, HalfOfBytes, NamesOnly, BytesOnly, LastNameOnly };

struct SimulatedDisk {
  struct File {
    std::string seen;  // as programs read it
    std::string safe;  // synced
  };
  using Names = std::map<std::string, std::shared_ptr<File>>;
  Names seen;                     // names as programs see them
  Names safe;                     // names whose folder was synced
  std::vector<Names> name_steps;  // the names after each unsynced change of names

  int operations = 0;  // that change anything
  int fault_at = -1;   // counted from 0
  Fault fault = Fault::None;
  int calls = 0;                 // of any kind, while the machine is on
  std::map<int, Fault> strikes;  // by the number of the call; they stay through a restart
  bool failing_for_good = false;
  std::string why = "No space left on device";
  bool off = false;
  bool hurt = false;  // a fault has struck
  bool read_only_folder = false;
  bool unreadable = false;
  std::set<std::string> unreadable_names;
  const void* lock_owner = nullptr;
  std::size_t bytes_read = 0;
  std::size_t bytes_written = 0;
  int syncs = 0;

  std::string content(const std::string& name) const {
    const auto it = seen.find(name);
    return it == seen.end() ? "" : it->second->seen;
  }
  void set(const std::string& name, const std::string& bytes) {
    seen[name] = std::make_shared<File>(File{bytes, bytes});
    safe[name] = seen[name];
  }

  // The machine starts again; after a kill alone, everything survives.
  void restart(Survives survives) {
    begin_again();
    Names names = safe;
    if (survives == Survives::Everything || survives == Survives::HalfOfBytes || survives == Survives::NamesOnly)
      names = seen;
    if (survives == Survives::LastNameOnly && name_steps.size() > 1) names = only_last_step();
    for (auto& [name, file] : names) {
      const bool keeps = survives == Survives::Everything || survives == Survives::BytesOnly;
      const std::string content = keeps ? file->seen : survives == Survives::HalfOfBytes ? half(*file) : file->safe;
      file = std::make_shared<File>(File{content, content});
    }
    keep(names);
  }

  // Of every unsynced change of a name and of every file's unsynced bytes a power cut keeps, each for itself, what
  // chance says: nothing, all, a part, or as many zeros as there should be bytes.
  template <class Chance>
  void restart_shuffled(Chance& chance) {
    begin_again();
    Names names = safe;
    Names before = safe;
    for (const Names& after : name_steps) {
      if (chance() % 2 == 0) change(names, before, after);
      before = after;
    }
    std::map<const File*, std::shared_ptr<File>> kept;  // a file of two names is one file
    for (auto& [name, file] : names) {
      std::shared_ptr<File>& one = kept[file.get()];
      if (!one) {
        const std::string content = part_of(*file, chance);
        one = std::make_shared<File>(File{content, content});
      }
      file = one;
    }
    keep(names);
  }

  void mend() {
    fault = Fault::None;
    strikes.clear();
    failing_for_good = false;
  }

 private:
  void begin_again() {
    off = false;
    fault = Fault::None;
    lock_owner = nullptr;
  }
  void keep(const Names& names) {
    seen = names;
    safe = names;
    name_steps.clear();
  }
  static void change(Names& names, const Names& before, const Names& after) {
    for (const auto& [name, file] : after) {
      const auto it = before.find(name);
      if (it == before.end() || it->second != file) names[name] = file;
    }
    for (const auto& [name, file] : before)
      if (after.count(name) == 0) names.erase(name);
  }
  template <class Chance>
  static std::string part_of(const File& file, Chance& chance) {
    const auto how = chance() % 4;
    if (how == 0) return file.safe;
    if (how == 1 || file.seen.compare(0, file.safe.size(), file.safe) != 0) return file.seen;
    const std::size_t added = file.seen.size() - file.safe.size();
    const std::size_t some = added == 0 ? 0 : static_cast<std::size_t>(chance() % added);
    if (how == 2) return file.seen.substr(0, file.safe.size() + some);
    return file.safe + std::string(some, '\0');
  }
  static std::string half(const File& file) {
    if (file.seen.compare(0, file.safe.size(), file.safe) != 0) return file.safe;
    return file.seen.substr(0, file.safe.size() + (file.seen.size() - file.safe.size()) / 2);
  }
  // Of two unsynced changes only the second reached the disk.
  Names only_last_step() const {
    Names names = safe;
    const Names& before = name_steps[name_steps.size() - 2];
    for (const auto& [name, file] : name_steps.back()) {
      const auto it = before.find(name);
      if (it == before.end() || it->second != file) names[name] = file;
    }
    return names;
  }
};

// One program's hands on the disk.
class SimulatedFiles final : public FileOperations {
 public:
  explicit SimulatedFiles(SimulatedDisk& disk) : disk_(disk) {}
  ~SimulatedFiles() override {
    if (disk_.lock_owner == this) disk_.lock_owner = nullptr;
  }

  std::string place() const override { return "the simulated disk"; }

  tl::expected<bool, Why> lock() override {
    if (disk_.off || disk_.read_only_folder) return tl::unexpected(Why("Read-only file system"));
    if (only_looked_fails()) return tl::unexpected(disk_.why);
    if (disk_.lock_owner == nullptr) disk_.lock_owner = this;
    return disk_.lock_owner == this;
  }

  tl::expected<std::optional<std::string>, Why> read(const std::string& name) override {
    if (only_looked_fails()) return tl::unexpected(disk_.why);
    if (disk_.unreadable || disk_.unreadable_names.count(name) > 0) return tl::unexpected(Why("Input/output error"));
    if (disk_.seen.count(name) == 0) return std::nullopt;
    disk_.bytes_read += disk_.content(name).size();
    return disk_.content(name);
  }

  tl::expected<std::optional<std::uint64_t>, Why> size(const std::string& name) override {
    if (only_looked_fails()) return tl::unexpected(disk_.why);
    if (disk_.seen.count(name) == 0) return std::nullopt;
    return disk_.content(name).size();
  }

  Done write(const std::string& name, std::string_view bytes) override {
    const Fault fault = next();
    if (fails(fault) && fault != Fault::Cut && fault != Fault::PowerCut) return tl::unexpected(disk_.why);
    set_name(name, std::make_shared<SimulatedDisk::File>());
    put(name, bytes, fault);
    return fails(fault) ? Done(tl::unexpected(disk_.why)) : Done();
  }

  tl::expected<std::uint64_t, Why> append(const std::string& name, std::string_view bytes) override {
    const Fault fault = next();
    if (fails(fault) && fault != Fault::Cut && fault != Fault::PowerCut) return tl::unexpected(disk_.why);
    if (disk_.seen.count(name) == 0) set_name(name, std::make_shared<SimulatedDisk::File>());
    put(name, bytes, fault);
    if (fails(fault)) return tl::unexpected(disk_.why);
    return disk_.content(name).size();
  }

  Done truncate(const std::string& name, std::uint64_t size) override {
    const Fault fault = next();
    if (fails(fault)) return tl::unexpected(disk_.why);
    if (disk_.seen.count(name) == 0) return tl::unexpected(Why("No such file or directory"));
    if (fault != Fault::Forget) disk_.seen[name]->seen.resize(size);
    return {};
  }

  Done sync(const std::string& name) override {
    const Fault fault = next();
    if (fails(fault)) return tl::unexpected(disk_.why);
    if (disk_.seen.count(name) == 0) return tl::unexpected(Why("No such file or directory"));
    ++disk_.syncs;
    if (fault != Fault::Forget) disk_.seen[name]->safe = disk_.seen[name]->seen;
    return {};
  }

  Done rename(const std::string& from, const std::string& to) override {
    const Fault fault = next();
    if (fails(fault)) return tl::unexpected(disk_.why);
    if (disk_.seen.count(from) == 0) return tl::unexpected(Why("No such file or directory"));
    if (fault == Fault::Forget) return {};
    const auto file = disk_.seen[from];
    disk_.seen.erase(from);
    set_name(to, file);
    return {};
  }

  Done sync_folder() override {
    const Fault fault = next();
    if (fails(fault)) return tl::unexpected(disk_.why);
    if (fault == Fault::Forget) return {};
    disk_.safe = disk_.seen;
    disk_.name_steps.clear();
    return {};
  }

 private:
  static bool fails(Fault fault) {
    return fault == Fault::Fail || fault == Fault::Cut || fault == Fault::FailOn || fault == Fault::PowerCut ||
           fault == Fault::KillBefore;
  }

  // Of a call that changes nothing.
  bool only_looked_fails() { return disk_.off || fails(strike()); }

  Fault strike() {
    if (disk_.off) return Fault::Fail;
    const int number = disk_.calls++;
    const auto it = disk_.strikes.find(number);
    if (it == disk_.strikes.end()) return disk_.failing_for_good ? Fault::Fail : Fault::None;
    disk_.hurt = true;
    const Fault fault = it->second;
    if (fault == Fault::FailOn) disk_.failing_for_good = true;
    if (fault == Fault::PowerCut || fault == Fault::KillBefore || fault == Fault::KillAfter) disk_.off = true;
    return fault;
  }

  Fault next() {
    const int number = disk_.operations++;
    if (disk_.off || disk_.read_only_folder) return Fault::Fail;
    if (const Fault struck = strike(); struck != Fault::None) return struck;
    const bool strikes = number == disk_.fault_at || (disk_.fault == Fault::FailOn && number > disk_.fault_at);
    if (!strikes || disk_.fault == Fault::None) return Fault::None;
    disk_.hurt = true;
    if (disk_.fault == Fault::PowerCut) disk_.off = true;
    return disk_.fault;
  }

  void set_name(const std::string& name, std::shared_ptr<SimulatedDisk::File> file) {
    disk_.seen[name] = std::move(file);
    disk_.name_steps.push_back(disk_.seen);
  }

  void put(const std::string& name, std::string_view bytes, Fault fault) {
    std::string written(bytes);
    if (fault == Fault::Cut || fault == Fault::PowerCut) written.resize(written.size() / 2);
    if (fault == Fault::Forget) written.clear();
    if (fault == Fault::Garble && !written.empty()) written[written.size() / 2] ^= 0x15;
    disk_.bytes_written += written.size();
    disk_.seen[name]->seen += written;
  }

  SimulatedDisk& disk_;
};

}  // namespace camside::storage
