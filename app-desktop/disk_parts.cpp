#include "disk_parts.hpp"

#include <fcntl.h>
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

}  // namespace

std::string last_disk_error() {
  return std::generic_category().message(errno);
}

Descriptor::~Descriptor() {
  if (fd_ >= 0) ::close(fd_);
}

tl::expected<std::optional<std::string>, std::string> read_all(const std::string& path) {
  const Descriptor file(::open(path.c_str(), O_RDONLY | O_CLOEXEC));
  if (!file.good()) {
    if (errno == ENOENT) return std::nullopt;
    return tl::unexpected(last_disk_error());
  }
  std::string bytes;
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
    if (put > 0) bytes.remove_prefix(static_cast<std::size_t>(put));
    if (put < 0 && errno != EINTR) return tl::unexpected(last_disk_error());
  }
  return {};
}

DiskDone write_file(const std::string& path, std::string_view bytes) {
  const Descriptor file(::open(path.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, own_file));
  if (!file.good()) return tl::unexpected(last_disk_error());
  return write_all(file.get(), bytes);
}

DiskDone write_synced(const std::string& path, std::string_view bytes) {
  if (auto done = write_file(path, bytes); !done) return done;
  return sync_path(path);
}

DiskDone sync_path(const std::string& path) {
  const Descriptor opened(::open(path.c_str(), O_RDONLY | O_CLOEXEC));
  if (!opened.good() || ::fsync(opened.get()) != 0) return tl::unexpected(last_disk_error());
  return {};
}

DiskDone rename_to(const std::string& from, const std::string& to) {
  if (::rename(from.c_str(), to.c_str()) != 0) return tl::unexpected(last_disk_error());
  return {};
}

tl::expected<int, std::string> lock_file(const std::string& folder, const std::string& name) {
  std::error_code ignored;  // an unmakeable folder shows when the file is opened
  std::filesystem::create_directories(folder, ignored);
  const int fd = ::open((folder + "/" + name).c_str(), O_RDWR | O_CREAT | O_CLOEXEC, own_file);
  if (fd < 0) return tl::unexpected(last_disk_error());
  if (::flock(fd, LOCK_EX | LOCK_NB) == 0) return fd;
  const int why = errno;
  ::close(fd);
  if (why == EWOULDBLOCK) return -1;
  return tl::unexpected(std::generic_category().message(why));
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
