#include "disk_store.hpp"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdlib>
#include <filesystem>
#include <optional>
#include <system_error>
#include <utility>

#include "findings/file_remarks.hpp"

namespace camside {

namespace {

using storage::Loaded;
using Done = tl::expected<void, std::string>;

std::string last_error() {
  return std::generic_category().message(errno);
}

// A file descriptor that closes itself.
class Descriptor {
 public:
  explicit Descriptor(int fd) : fd_(fd) {}
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  ~Descriptor() {
    if (fd_ >= 0) ::close(fd_);
  }
  bool good() const { return fd_ >= 0; }
  int get() const { return fd_; }

 private:
  int fd_;
};

bool exists(const std::string& path) {
  struct stat about {};
  return ::stat(path.c_str(), &about) == 0;
}

// Nothing when the file isn't there.
tl::expected<std::optional<std::string>, std::string> read_all(const std::string& path) {
  const Descriptor file(::open(path.c_str(), O_RDONLY | O_CLOEXEC));
  if (!file.good()) {
    if (errno == ENOENT) return std::nullopt;
    return tl::unexpected(last_error());
  }
  std::string bytes;
  std::string part(std::size_t{1} << 16U, '\0');
  for (;;) {
    const ssize_t got = ::read(file.get(), part.data(), part.size());
    if (got == 0) return bytes;
    if (got > 0) bytes.append(part.data(), static_cast<std::size_t>(got));
    if (got < 0 && errno != EINTR) return tl::unexpected(last_error());
  }
}

Done write_all(int fd, std::string_view bytes) {
  while (!bytes.empty()) {
    const ssize_t put = ::write(fd, bytes.data(), bytes.size());
    if (put > 0) bytes.remove_prefix(static_cast<std::size_t>(put));
    if (put < 0 && errno != EINTR) return tl::unexpected(last_error());
  }
  return {};
}

Done sync_folder(const std::string& folder) {
  const Descriptor dir(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  if (!dir.good() || ::fsync(dir.get()) != 0) return tl::unexpected(last_error());
  return {};
}

Done rename_to(const std::string& from, const std::string& to) {
  if (::rename(from.c_str(), to.c_str()) != 0) return tl::unexpected(last_error());
  return {};
}

Done write_synced(const std::string& path, std::string_view bytes) {
  const Descriptor file(::open(path.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0600));
  if (!file.good()) return tl::unexpected(last_error());
  if (auto done = write_all(file.get(), bytes); !done) return done;
  if (::fsync(file.get()) != 0) return tl::unexpected(last_error());
  return {};
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
    : folder_(std::move(folder)),
      wake_(std::move(wake)),
      interrupt_(std::move(interrupt)),
      thread_([this] { work(); }) {}

DiskStore::~DiskStore() {
  {
    const std::lock_guard<std::mutex> guard(mutex_);
    ending_ = true;
  }
  changed_.notify_one();
  thread_.join();
  if (lock_ >= 0) ::close(lock_);
}

void DiskStore::load(const std::string& name, Whole whole, LoadDone done) {
  enqueue([this, name, whole = std::move(whole), done = std::move(done)]() -> Answer {
    return [done, answer = read_newest(name, whole)] { done(answer); };
  });
}

void DiskStore::save(const std::string& name, std::string bytes, SaveDone done) {
  enqueue([this, name, bytes = std::move(bytes), done = std::move(done)]() -> Answer {
    return [done, answer = write_newest(name, bytes)] { done(answer); };
  });
}

void DiskStore::poll() {
  std::deque<Answer> ready;
  {
    const std::lock_guard<std::mutex> guard(mutex_);
    ready.swap(answers_);
  }
  for (const Answer& answer : ready) answer();
}

void DiskStore::enqueue(Task task) {
  {
    const std::lock_guard<std::mutex> guard(mutex_);
    tasks_.push_back(std::move(task));
  }
  changed_.notify_one();
}

void DiskStore::work() {
  std::unique_lock<std::mutex> guard(mutex_);
  for (;;) {
    changed_.wait(guard, [this] { return ending_ || !tasks_.empty(); });
    if (tasks_.empty()) return;
    Task task = std::move(tasks_.front());
    tasks_.pop_front();
    guard.unlock();
    Answer answer = task();
    guard.lock();
    answers_.push_back(std::move(answer));
    if (wake_ && !ending_) wake_();
  }
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
  if (lock_ >= 0) return true;
  std::error_code ignored;  // an unmakeable folder shows when the file is opened
  std::filesystem::create_directories(folder_, ignored);
  const int fd = ::open(path("lock", "").c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0600);
  if (fd < 0) return true;  // no lock to be had here: saving will tell why
  if (::flock(fd, LOCK_EX | LOCK_NB) != 0 && errno == EWOULDBLOCK) {
    ::close(fd);
    return false;
  }
  lock_ = fd;
  return true;
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
  return sync_folder(folder_);
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
