#include "disk_store.hpp"

#include <unistd.h>

#include <cstdlib>
#include <utility>

#include "records/file_remarks.hpp"

namespace camside {

namespace {

using storage::Loaded;
using Done = DiskDone;

bool exists(const std::string& path) {
  const auto size = size_of_file(path);
  return size && size->has_value();
}

// A second name for the same bytes; a copy where the file system has no links.
Done duplicate(const std::string& from, const std::string& to) {
  ::unlink(to.c_str());
  if (::link(from.c_str(), to.c_str()) == 0) return {};
  const auto bytes = read_all(from);
  if (!bytes) return tl::unexpected(bytes.error());
  return write_synced(to, bytes->value_or(""));
}

constexpr const char* interrupted = "interrupted";

}  // namespace

std::string default_data_folder() {
  const char* data = std::getenv("XDG_DATA_HOME");
  if (data != nullptr && data[0] == '/') return std::string(data) + "/camside";  // the standard wants it absolute
  const char* home = std::getenv("HOME");
  if (home != nullptr && home[0] != '\0') return std::string(home) + "/.local/share/camside";
  return "";
}

DiskStore::DiskStore(std::string folder, std::function<void()> wake, Interrupt interrupt)
    : folder_(std::move(folder)), interrupt_(std::move(interrupt)), worker_(std::move(wake)) {}

DiskStore::~DiskStore() = default;

DiskStore::Lock::~Lock() {
  if (fd >= 0) ::close(fd);
}

void DiskStore::load(const std::string& name, Whole whole, LoadDone done) {
  worker_.enqueue([this, name, whole = std::move(whole), done = std::move(done)]() -> DiskWorker::Answer {
    return [done, answer = read_newest(name, whole)] { done(answer); };
  });
}

void DiskStore::save(const std::string& name, std::string bytes, SaveDone done) {
  worker_.enqueue([this, name, bytes = std::move(bytes), done = std::move(done)]() -> DiskWorker::Answer {
    return [done, answer = write_newest(name, bytes)] { done(answer); };
  });
}

void DiskStore::poll() {
  worker_.poll();
}

std::string DiskStore::path(const std::string& name, const std::string& ending) const {
  return folder_ + "/" + name + ending;
}

std::string DiskStore::free_damaged_name(const std::string& name) const {
  std::string candidate = path(name, ".damaged.json");
  for (int n = 2; exists(candidate); ++n) candidate = path(name, ".damaged-" + std::to_string(n) + ".json");
  return candidate;
}

// The folder belongs to the first Camside that opens it, until it ends (the system lets go of the lock by itself).
bool DiskStore::take_lock() {
  if (lock_.fd >= 0) return true;
  const auto taken = lock_file(folder_, "lock");
  if (!taken) return true;  // no lock to be had here: saving will tell why
  lock_.fd = *taken;
  return *taken >= 0;
}

tl::expected<Loaded, Finding> DiskStore::read_newest(const std::string& name, const Whole& whole) {
  Loaded loaded;
  if (!take_lock()) loaded.findings.push_back(remarks::open_elsewhere(folder_));
  const auto newest = read_all(path(name, ".json"));
  if (!newest) return tl::unexpected(remarks::cannot_load(path(name, ".json"), newest.error()));
  if (*newest && whole(**newest)) {
    loaded.bytes = **newest;
    return loaded;
  }
  const auto previous = read_all(path(name, ".previous.json"));
  if (!previous) return tl::unexpected(remarks::cannot_load(path(name, ".previous.json"), previous.error()));
  const bool previous_good = *previous && whole(**previous);
  if (!*newest && !previous_good) return loaded;  // nothing stored yet
  loaded.previous = previous_good;
  if (previous_good) loaded.bytes = **previous;
  loaded.findings.push_back(*newest ? damage_noted(name, previous_good) : remarks::newest_missing());
  return loaded;
}

Finding DiskStore::damage_noted(const std::string& name, bool previous_good) {
  damaged_.insert(name);
  const std::string aside = free_damaged_name(name);
  return previous_good ? remarks::opened_previous(aside) : remarks::opened_nothing(aside);
}

tl::expected<void, Finding> DiskStore::write_newest(const std::string& name, const std::string& bytes) {
  if (!take_lock()) return tl::unexpected(remarks::open_elsewhere(folder_));
  if (auto done = write_steps(name, bytes); !done) return tl::unexpected(remarks::cannot_save(folder_, done.error()));
  return {};
}

tl::expected<void, std::string> DiskStore::write_steps(const std::string& name, const std::string& bytes) {
  const std::string temp = path(name, ".json.tmp");
  if (auto done = write_synced(temp, bytes); !done) return done;
  if (stop_after(Step::TempSynced)) return tl::unexpected(interrupted);
  if (auto done = keep_previous(name); !done) return done;
  if (stop_after(Step::PreviousKept)) return tl::unexpected(interrupted);
  if (auto done = rename_to(temp, path(name, ".json")); !done) return done;
  if (stop_after(Step::Renamed)) return tl::unexpected(interrupted);
  return sync_path(folder_);
}

// The good newest version becomes the previous one. A damaged one is set aside, and the good previous one stays.
tl::expected<void, std::string> DiskStore::keep_previous(const std::string& name) {
  const std::string newest = path(name, ".json");
  if (!exists(newest)) return {};
  if (damaged_.count(name) != 0) {
    if (auto done = rename_to(newest, free_damaged_name(name)); !done) return done;
    damaged_.erase(name);
    return {};
  }
  const std::string temp = path(name, ".previous.json.tmp");
  if (auto done = duplicate(newest, temp); !done) return done;
  return rename_to(temp, path(name, ".previous.json"));
}

}  // namespace camside
