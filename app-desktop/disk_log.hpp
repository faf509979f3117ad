// The log in a folder of a disk: the file operations of core/storage/file_operations.hpp with the system's calls, and
// the log store of core/storage/log_store.hpp with a thread that waits for the disk. File names:
// storage/log_engine.hpp, and log.lock, held while a Camside may write.
#pragma once

#include <chrono>
#include <functional>
#include <string>

#include "disk_parts.hpp"
#include "storage/file_operations.hpp"
#include "storage/log_engine.hpp"
#include "storage/log_store.hpp"

namespace camside {

class DiskFiles final : public storage::FileOperations {
 public:
  // A command that writes waits a little for another that is just writing; a window that stays open is not waited for.
  explicit DiskFiles(std::string folder, std::chrono::milliseconds patience = {})
      : folder_(std::move(folder)), patience_(patience) {}
  ~DiskFiles() override;
  DiskFiles(const DiskFiles&) = delete;
  DiskFiles& operator=(const DiskFiles&) = delete;

  std::string place() const override { return folder_; }
  tl::expected<bool, Why> lock() override;
  tl::expected<std::optional<std::string>, Why> read(const std::string& name) override;
  tl::expected<std::optional<std::uint64_t>, Why> size(const std::string& name) override;
  Done write(const std::string& name, std::string_view bytes) override;
  tl::expected<std::uint64_t, Why> append(const std::string& name, std::string_view bytes) override;
  Done truncate(const std::string& name, std::uint64_t size) override;
  Done sync(const std::string& name) override;
  Done rename(const std::string& from, const std::string& to) override;
  Done sync_folder() override;

 private:
  std::string path(const std::string& name) const { return folder_ + "/" + name; }

  std::string folder_;
  std::chrono::milliseconds patience_;
  int lock_ = -1;
  bool above_safe_ = false;  // the names of the folder and of those above it have been synced
};

class DiskLog final : public storage::LogStore {
 public:
  explicit DiskLog(std::string folder, std::function<void()> wake = {});

  void open(OpenDone done) override;
  void append(std::vector<records::Entry> entries, Done done) override;
  void poll() override { worker_.poll(); }

 private:
  DiskFiles files_;
  storage::LogEngine engine_;
  DiskWorker worker_;  // last: ends first, after finishing what was handed over
};

}  // namespace camside
