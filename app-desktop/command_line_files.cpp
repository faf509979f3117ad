#include "command_line_files.hpp"

#include <fcntl.h>
#include <poll.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <chrono>
#include <new>
#include <system_error>
#include <thread>

#include "base/harmless.hpp"
#include "disk_parts.hpp"
#include "log/log_remarks.hpp"
#include "records/file_remarks.hpp"

namespace camside {

namespace {

using namespace std::chrono_literals;

constexpr auto patience_with_a_pipe = 2s;

std::string words_of(int error) {
  return std::generic_category().message(error);
}

struct Input {
  int fd = -1;
  bool named_pipe = false;
  std::size_t most_bytes = 0;
};

// Waits as long as somebody holds the other end of a pipe. One that nobody has opened yet gets a little time, for a
// writer started together with us; then it counts as empty, where a read that waits for an opener would hang for ever.
tl::expected<std::string, std::string> read_to_the_end(const Input& input) {
  const auto give_up = std::chrono::steady_clock::now() + patience_with_a_pipe;
  std::string bytes;
  std::string part(std::size_t{1} << 16U, '\0');
  while (bytes.size() <= input.most_bytes) {
    const ssize_t got = ::read(input.fd, part.data(), part.size());
    if (got > 0) {
      bytes.append(part, 0, static_cast<std::size_t>(got));
    } else if (got == 0) {
      if (!input.named_pipe || !bytes.empty() || std::chrono::steady_clock::now() > give_up) return bytes;
      std::this_thread::sleep_for(10ms);
    } else if (errno == EAGAIN) {
      pollfd waiting{input.fd, POLLIN, 0};
      ::poll(&waiting, 1, -1);
    } else if (errno != EINTR) {
      return tl::unexpected(last_disk_error());
    }
  }
  return bytes;
}

tl::expected<std::string, std::string> read_named(const std::string& name, std::size_t most_bytes) {
  const Descriptor file(::open(name.c_str(), O_RDONLY | O_NONBLOCK | O_NOCTTY | O_CLOEXEC));
  struct stat about {};
  if (!file.good() || ::fstat(file.get(), &about) != 0) return tl::unexpected(last_disk_error());
  if (S_ISDIR(about.st_mode)) return tl::unexpected(words_of(EISDIR));
  if (S_ISCHR(about.st_mode) || S_ISBLK(about.st_mode))
    return tl::unexpected(std::string("it is a device, not a file"));
  return read_to_the_end({file.get(), S_ISFIFO(about.st_mode), most_bytes});
}

std::optional<Finding> not_written(const std::string& where, const DiskDone& done) {
  if (done) return std::nullopt;
  return remarks::output_not_written(where, done.error());
}

}  // namespace

tl::expected<std::string, Finding> read_for_command_line(const std::string& name, std::size_t most_bytes) {
  auto bytes = name == "-" ? read_to_the_end({STDIN_FILENO, false, most_bytes}) : read_named(name, most_bytes);
  if (!bytes) return tl::unexpected(remarks::cannot_open(name, bytes.error()));
  return std::move(*bytes);
}

std::optional<Finding> write_for_command_line(const std::string& name, const std::string& bytes) {
  constexpr unsigned usual_file = 0666;
  const int fd = ::open(name.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_NOCTTY | O_CLOEXEC, usual_file);
  if (fd < 0) return remarks::cannot_open(name, last_disk_error());
  return not_written(name, write_and_close(fd, bytes));
}

void say_when_memory_runs_out() {
  static const std::string words = records::print_findings({remarks::no_memory()});
  std::set_new_handler([] {
    static_cast<void>(::write(STDERR_FILENO, words.data(), words.size()) > 0);
    ::_exit(records::exit_bad_input);
  });
}

int say_on_command_line(const records::Said& said) {
  const auto failed = not_written("Standard output", write_and_close(STDOUT_FILENO, harmless_lines(said.out)));
  const std::string words = harmless_lines(said.err + (failed ? records::print_findings({*failed}) : ""));
  const bool heard = write_all(STDERR_FILENO, words).has_value();  // stays open for what a sanitizer says at the end
  return failed || !heard ? records::exit_bad_input : said.exit;
}

}  // namespace camside
