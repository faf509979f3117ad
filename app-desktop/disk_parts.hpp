// What every store on a disk does with files: whole reads, whole writes, syncs; errors as the system's words. And the
// thread that waits for the disk.
#pragma once

#include <chrono>
#include <condition_variable>
#include <cstdint>
#include <deque>
#include <functional>
#include <mutex>
#include <optional>
#include <string>
#include <string_view>
#include <thread>
#include <tl/expected.hpp>

namespace camside {

using DiskDone = tl::expected<void, std::string>;

std::string last_disk_error();  // of errno

// A file descriptor that closes itself.
class Descriptor {
 public:
  explicit Descriptor(int fd) : fd_(fd) {}
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  ~Descriptor();
  bool good() const { return fd_ >= 0; }
  int get() const { return fd_; }

 private:
  int fd_;
};

// Nothing when the file isn't there. What is no file (a folder, a pipe, a device) is an error, and never waited for.
tl::expected<std::optional<std::string>, std::string> read_all(const std::string& path);
tl::expected<std::optional<std::uint64_t>, std::string> size_of_file(const std::string& path);
DiskDone write_all(int fd, std::string_view bytes);
DiskDone write_and_close(int fd, std::string_view bytes);  // a file is synced before
tl::expected<std::uint64_t, std::string> append_to_file(const std::string& path, std::string_view bytes);  // its size
DiskDone write_file(const std::string& path, std::string_view bytes);  // not synced; takes the place of what is there
DiskDone write_synced(const std::string& path, std::string_view bytes);
DiskDone sync_path(const std::string& path);  // of a file or a folder
DiskDone sync_folders_above(const std::string& folder);
DiskDone rename_to(const std::string& from, const std::string& to);

// The lock of a folder's one writer, a descriptor to keep; the system lets go of it when the program ends. Makes the
// folder. −1: another program has it, and kept it for as long as we had patience.
tl::expected<int, std::string> lock_file(const std::string& folder, const std::string& name,
                                         std::chrono::milliseconds patience = {});

// A thread of its own does what waits for the disk; what is to be said about it runs in poll(), on the caller's thread.
// The destructor finishes what was handed over.
class DiskWorker {
 public:
  using Answer = std::function<void()>;  // runs in poll()
  using Task = std::function<Answer()>;  // runs on the worker's thread

  // `wake` is called from the worker's thread when an answer waits for poll(); it may only wake a sleeping window.
  explicit DiskWorker(std::function<void()> wake);
  ~DiskWorker();
  DiskWorker(const DiskWorker&) = delete;
  DiskWorker& operator=(const DiskWorker&) = delete;

  void enqueue(Task task);
  void poll();

 private:
  void work();

  std::function<void()> wake_;
  std::mutex mutex_;
  std::condition_variable changed_;
  std::deque<Task> tasks_;
  std::deque<Answer> answers_;
  bool ending_ = false;
  std::thread thread_;  // last: starts when all the rest is there
};

}  // namespace camside
