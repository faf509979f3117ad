#include "command_line_files.hpp"

#include <cerrno>
#include <cstdio>
#include <memory>
#include <system_error>

#include "records/file_remarks.hpp"

namespace camside {

namespace {

struct CloseFile {
  void operator()(std::FILE* file) const {
    if (file != stdin) std::fclose(file);
  }
};
using File = std::unique_ptr<std::FILE, CloseFile>;

tl::unexpected<Finding> cannot_open(const std::string& name) {
  return tl::unexpected(remarks::cannot_open(name, std::generic_category().message(errno)));
}

}  // namespace

tl::expected<std::string, Finding> read_for_command_line(const std::string& name, std::size_t most_bytes) {
  const File file(name == "-" ? stdin : std::fopen(name.c_str(), "rbe"));
  if (!file) return cannot_open(name);
  std::string bytes;
  std::string part(std::size_t{1} << 16U, '\0');
  while (bytes.size() <= most_bytes) {
    const std::size_t got = std::fread(part.data(), 1, part.size(), file.get());
    bytes.append(part, 0, got);
    if (got < part.size()) break;
  }
  if (std::ferror(file.get()) != 0) return cannot_open(name);  // a folder opens, but doesn't read
  return bytes;
}

std::optional<Finding> write_for_command_line(const std::string& name, const std::string& bytes) {
  std::FILE* const file = std::fopen(name.c_str(), "wbe");
  if (!file) return cannot_open(name).value();
  const bool written = std::fwrite(bytes.data(), 1, bytes.size(), file) == bytes.size();
  if (std::fclose(file) != 0 || !written) return cannot_open(name).value();  // a full disk is told at the end
  return {};
}

}  // namespace camside
