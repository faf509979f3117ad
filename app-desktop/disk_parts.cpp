#include "disk_parts.hpp"

#include <fcntl.h>
#include <poll.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <filesystem>
#include <system_error>
#include <utility>

namespace camside {

namespace {

constexpr unsigned own_file = 0600;
constexpr const char* not_a_file = "it is a pipe or a device, not a file";

}  // namespace

std::string last_disk_error() {
  return std::generic_category().message(errno);
}

Descriptor::~Descriptor() {
  if (fd_ >= 0) ::close(fd_);
}

// A pipe or a device would keep us waiting for ever. Missing: −1.
tl::expected<int, std::string> open_file(const std::string& path, int flags) {
  const int fd = ::open(path.c_str(), flags | O_NONBLOCK | O_NOCTTY | O_CLOEXEC, own_file);
  if (fd < 0 && errno == ENOENT) return fd;
  struct stat about {};
  if (fd < 0 || ::fstat(fd, &about) != 0) {
    const std::string why = last_disk_error();
    if (fd >= 0) ::close(fd);
    return tl::unexpected(why);
  }
  if (S_ISREG(about.st_mode)) return fd;
  ::close(fd);
  return tl::unexpected(S_ISDIR(about.st_mode) ? std::generic_category().message(EISDIR) : std::string(not_a_file));
}

tl::expected<std::optional<std::string>, std::string> read_all(const std::string& path) {
  const auto opened = open_file(path, O_RDONLY);
  if (!opened) return tl::unexpected(opened.error());
  if (*opened < 0) return std::nullopt;
  const Descriptor file(*opened);
  std::string bytes;
  struct stat about {};
  if (::fstat(file.get(), &about) == 0) bytes.reserve(static_cast<std::size_t>(about.st_size));
  std::string part(std::size_t{1} << 16U, '\0');
  for (;;) {
    const ssize_t got = ::read(file.get(), part.data(), part.size());
    if (got == 0) return bytes;
    if (got > 0) bytes.append(part.data(), static_cast<std::size_t>(got));
    if (got < 0 && errno != EINTR) return tl::unexpected(last_disk_error());
  }
}

tl::expected<std::optional<std::uint64_t>, std::string> size_of_file(const std::string& path) {
  struct stat about {};
  if (::stat(path.c_str(), &about) == 0) return static_cast<std::uint64_t>(about.st_size);
  if (errno == ENOENT) return std::nullopt;
  return tl::unexpected(last_disk_error());
}

DiskDone write_all(int fd, std::string_view bytes) {
  while (!bytes.empty()) {
    const ssize_t put = ::write(fd, bytes.data(), bytes.size());
    if (put > 0) {
      bytes.remove_prefix(static_cast<std::size_t>(put));
    } else if (put < 0 && errno == EAGAIN) {  // a pipe whose reader is slow
      pollfd waiting{fd, POLLOUT, 0};
      ::poll(&waiting, 1, -1);
    } else if (put < 0 && errno != EINTR) {
      return tl::unexpected(last_disk_error());
    }
  }
  return {};
}

// Pipes and terminals can't be synced, and needn't be; nor can the files of some borrowed file systems.
DiskDone write_and_close(int fd, std::string_view bytes) {
  DiskDone done = write_all(fd, bytes);
  struct stat about {};
  const bool a_file = ::fstat(fd, &about) == 0 && S_ISREG(about.st_mode);
  if (done && a_file && ::fsync(fd) != 0 && errno != EINVAL && errno != ENOSYS)
    done = tl::unexpected(last_disk_error());
  if (::close(fd) != 0 && done && errno != EINTR) done = tl::unexpected(last_disk_error());
  return done;
}

tl::expected<std::uint64_t, std::string> append_to_file(const std::string& path, std::string_view bytes) {
  const auto opened = open_file(path, O_WRONLY | O_CREAT | O_APPEND);
  if (!opened) return tl::unexpected(opened.error());
  const Descriptor file(*opened);
  if (!file.good()) return tl::unexpected(std::generic_category().message(ENOENT));  // its folder is gone
  if (auto done = write_all(file.get(), bytes); !done) return tl::unexpected(done.error());
  struct stat about {};
  if (::fstat(file.get(), &about) != 0) return tl::unexpected(last_disk_error());
  return static_cast<std::uint64_t>(about.st_size);
}

// What has the name goes first, so that a link or a pipe of that name is not followed.
DiskDone write_file(const std::string& path, std::string_view bytes) {
  if (::unlink(path.c_str()) != 0 && errno != ENOENT) return tl::unexpected(last_disk_error());
  const Descriptor file(::open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_NOFOLLOW | O_CLOEXEC, own_file));
  if (!file.good()) return tl::unexpected(last_disk_error());
  return write_all(file.get(), bytes);
}

DiskDone write_synced(const std::string& path, std::string_view bytes) {
  if (auto done = write_file(path, bytes); !done) return done;
  return sync_path(path);
}

DiskDone sync_path(const std::string& path) {
  const Descriptor opened(::open(path.c_str(), O_RDONLY | O_NONBLOCK | O_CLOEXEC));
  if (!opened.good() || ::fsync(opened.get()) != 0) return tl::unexpected(last_disk_error());
  return {};
}

DiskDone rename_to(const std::string& from, const std::string& to) {
  if (::rename(from.c_str(), to.c_str()) != 0) return tl::unexpected(last_disk_error());
  return {};
}

// A folder that is new has a name in the one above, and that one perhaps too; an earlier Camside may have made them and
// been killed. Those we may not open are not ours. Beyond a mount point nothing of this path is kept.
DiskDone sync_folders_above(const std::string& folder) {
  std::error_code failed;
  const std::filesystem::path whole = std::filesystem::canonical(folder, failed);
  struct stat own {};
  if (failed || ::stat(folder.c_str(), &own) != 0) return tl::unexpected(failed ? failed.message() : last_disk_error());
  for (std::filesystem::path path = whole; path.has_relative_path();) {
    path = path.parent_path();
    struct stat about {};
    if (::stat(path.c_str(), &about) == 0 && about.st_dev != own.st_dev) return {};
    const Descriptor opened(::open(path.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
    if (opened.good() && ::fsync(opened.get()) != 0 && errno != EINVAL && errno != EROFS)
      return tl::unexpected(last_disk_error());
  }
  return {};
}

tl::expected<int, std::string> lock_file(const std::string& folder, const std::string& name,
                                         std::chrono::milliseconds patience) {
  std::error_code ignored;  // an unmakeable folder shows when the file is opened
  std::filesystem::create_directories(folder, ignored);
  const int fd = ::open((folder + "/" + name).c_str(), O_RDWR | O_CREAT | O_CLOEXEC, own_file);
  if (fd < 0) return tl::unexpected(last_disk_error());
  const auto give_up = std::chrono::steady_clock::now() + patience;
  for (;;) {
    if (::flock(fd, LOCK_EX | LOCK_NB) == 0) return fd;
    const int why = errno;
    if (why == EWOULDBLOCK && std::chrono::steady_clock::now() < give_up) {
      std::this_thread::sleep_for(std::chrono::milliseconds(5));
    } else if (why != EINTR) {
      ::close(fd);
      if (why == EWOULDBLOCK) return -1;
      return tl::unexpected(std::generic_category().message(why));
    }
  }
}

DiskWorker::DiskWorker(std::function<void()> wake) : wake_(std::move(wake)), thread_([this] { work(); }) {}

DiskWorker::~DiskWorker() {
  {
    const std::lock_guard<std::mutex> guard(mutex_);
    ending_ = true;
  }
  changed_.notify_one();
  thread_.join();
}

void DiskWorker::poll() {
  std::deque<Answer> ready;
  {
    const std::lock_guard<std::mutex> guard(mutex_);
    ready.swap(answers_);
  }
  for (const Answer& answer : ready) answer();
}

void DiskWorker::enqueue(Task task) {
  {
    const std::lock_guard<std::mutex> guard(mutex_);
    tasks_.push_back(std::move(task));
  }
  changed_.notify_one();
}

void DiskWorker::work() {
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

}  // namespace camside
