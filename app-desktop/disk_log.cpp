#include "disk_log.hpp"

#include <unistd.h>

#include <utility>

namespace camside {

DiskFiles::~DiskFiles() {
  if (lock_ >= 0) ::close(lock_);
}

tl::expected<bool, DiskFiles::Why> DiskFiles::lock() {
  if (lock_ >= 0) return true;
  const auto taken = lock_file(folder_, "log.lock", patience_);
  if (!taken) return tl::unexpected(taken.error());
  lock_ = *taken;
  return lock_ >= 0;
}

tl::expected<std::optional<std::string>, DiskFiles::Why> DiskFiles::read(const std::string& name) {
  return read_all(path(name));
}

tl::expected<std::optional<std::uint64_t>, DiskFiles::Why> DiskFiles::size(const std::string& name) {
  return size_of_file(path(name));
}

DiskFiles::Done DiskFiles::write(const std::string& name, std::string_view bytes) {
  return write_file(path(name), bytes);
}

tl::expected<std::uint64_t, DiskFiles::Why> DiskFiles::append(const std::string& name, std::string_view bytes) {
  return append_to_file(path(name), bytes);
}

DiskFiles::Done DiskFiles::truncate(const std::string& name, std::uint64_t size) {
  if (::truncate(path(name).c_str(), static_cast<off_t>(size)) != 0) return tl::unexpected(last_disk_error());
  return {};
}

DiskFiles::Done DiskFiles::sync(const std::string& name) {
  return sync_path(path(name));
}

DiskFiles::Done DiskFiles::rename(const std::string& from, const std::string& to) {
  return rename_to(path(from), path(to));
}

DiskFiles::Done DiskFiles::sync_folder() {
  if (auto done = sync_path(folder_); !done) return done;
  if (above_safe_) return {};
  auto done = sync_folders_above(folder_);
  above_safe_ = done.has_value();
  return done;
}

DiskLog::DiskLog(std::string folder, std::function<void()> wake)
    : files_(std::move(folder)), engine_(files_), worker_(std::move(wake)) {}

void DiskLog::open(OpenDone done) {
  worker_.enqueue([this, done = std::move(done)]() -> DiskWorker::Answer {
    return [done, answer = engine_.open()]() mutable { done(std::move(answer)); };
  });
}

void DiskLog::append(std::vector<records::Entry> entries, Done done) {
  worker_.enqueue([this, entries = std::move(entries), done = std::move(done)]() -> DiskWorker::Answer {
    return [done, answer = engine_.append(entries)] { done(answer); };
  });
}

}  // namespace camside
