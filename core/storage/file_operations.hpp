// The few things a log's engine asks of a disk, as small steps, so that a simulator can drop, cut or garble any of
// them. Written for a real disk in app-desktop/disk_parts; in tests by a simulator that knows what a power cut forgets.
//
// Names are those of files in one folder. Nothing written is safe until sync() of the file confirmed it; a new or
// renamed file's name isn't safe until sync_folder() did.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <tl/expected.hpp>

namespace camside::storage {

class FileOperations {
 public:
  using Why = std::string;  // "No space left on device"
  using Done = tl::expected<void, Why>;

  virtual ~FileOperations() = default;
  virtual std::string place() const = 0;  // the folder, for people
  // Makes the folder when it is missing and takes the lock of its one writer, until this object ends. False: another
  // program has it.
  virtual tl::expected<bool, Why> lock() = 0;
  virtual tl::expected<std::optional<std::string>, Why> read(
      const std::string& name) = 0;  // none: there is no such file
  virtual tl::expected<std::optional<std::uint64_t>, Why> size(const std::string& name) = 0;  // none: no such file
  virtual Done write(const std::string& name, std::string_view bytes) = 0;  // a new file, or an old one's content anew
  // At the end of a file, which it makes when there is none. Gives the size after it; a failure may leave a part.
  virtual tl::expected<std::uint64_t, Why> append(const std::string& name, std::string_view bytes) = 0;
  virtual Done truncate(const std::string& name, std::uint64_t size) = 0;
  virtual Done sync(const std::string& name) = 0;
  virtual Done rename(const std::string& from, const std::string& to) = 0;  // takes the place of `to`
  virtual Done sync_folder() = 0;
};

}  // namespace camside::storage
