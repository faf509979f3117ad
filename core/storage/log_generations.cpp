#include "storage/log_generations.hpp"

#include <algorithm>

namespace camside::storage {

namespace {

using records::Entry;
using records::Log;
using Done = FileOperations::Done;

// More than one temporary file is there only after several failures on end.
constexpr int most_temporary_files = 4;

std::string numbered(const std::string& name, int n, const std::string& ending) {
  return name + (n > 1 ? "-" + std::to_string(n) : "") + ending;
}

void add_all(Log& log, std::vector<Entry> entries) {
  for (Entry& entry : entries) log.add(std::move(entry));
}

class Reader {
 public:
  explicit Reader(FileOperations& files) : files_(files) {}

  tl::expected<Generations, FileOperations::Why> done() {
    if (auto done = read_newest(); !done) return tl::unexpected(done.error());
    found_.newer = found_.lines.version > lines_version;
    add_all(found_.all, std::exchange(found_.lines.entries, {}));
    found_.in_newest = found_.all.size();
    if (found_.in_newest == 0 || found_.damaged() || found_.torn() || more_beside())
      read_all_beside();
    else
      found_.temporary = temporary_name(was_unread(temporary_name()) ? 2 : 1);
    if (found_.in_newest == 0 && !found_.unread.empty())
      return tl::unexpected(found_.unread.front().first + ": " + found_.unread.front().second);
    return std::move(found_);
  }

 private:
  // Its bytes are let go at once: a log of a lifetime is large.
  Done read_newest() {
    const auto newest = files_.read(newest_name);
    if (!newest) return tl::unexpected(newest.error());
    if (!*newest) return {};
    found_.newest = (*newest)->size();
    found_.lines = read_lines(**newest);
    found_.torn_end = (*newest)->substr(found_.lines.torn.offset, found_.lines.torn.size);
    return {};
  }

  bool more_beside() {
    for (const std::string& name : {std::string(previous_name), temporary_name()}) {
      const auto bytes = bytes_of(name);
      const auto last = bytes ? last_record_in(*bytes) : std::nullopt;
      const bool further =
          bytes && (bytes->size() > *found_.newest ||
                    (last && (last->number > found_.lines.last_number || found_.all.lacks(last->entry))));
      if (further && has_more(*bytes)) return true;
    }
    return false;
  }

  // One that can't be read stays as it is.
  bool was_unread(const std::string& name) const {
    return std::any_of(found_.unread.begin(), found_.unread.end(),
                       [&name](const auto& one) { return one.first == name; });
  }

  bool has_more(const std::string& bytes) {
    const ReadLines lines = read_lines(bytes);
    if (lines.version > lines_version) found_.newer = true;
    return std::any_of(lines.entries.begin(), lines.entries.end(),
                       [this](const Entry& entry) { return found_.all.lacks(entry); });
  }

  void read_all_beside() {
    found_.unread.clear();  // of comparing
    if (const auto bytes = bytes_of(previous_name)) take(*bytes);
    for (int n = 1; read_damaged(damaged_name(n)); ++n) continue;
    for (int n = 1; n <= most_temporary_files; ++n) read_temporary(temporary_name(n));
    if (found_.whole && found_.all.size() > in_whole_) found_.whole.reset();
  }

  bool read_damaged(const std::string& name) {
    const auto bytes = bytes_of(name);
    if (bytes) take(*bytes);
    return bytes.has_value();
  }

  void read_temporary(const std::string& name) {
    const auto bytes = bytes_of(name);
    const std::size_t before = found_.all.size();
    if (bytes && !found_.newest) note_whole(name, *bytes, take(*bytes));
    if (bytes && found_.newest) take(*bytes);
    if (!was_unread(name) && found_.all.size() == before && !found_.temporary) found_.temporary = name;
  }

  // What only this file holds may be under any of the earlier names too, so what counts is how many it holds in all.
  void note_whole(const std::string& name, const std::string& bytes, const ReadLines& lines) {
    const bool whole = lines.version == lines_version && lines.damaged.empty() && lines.gaps.empty() &&
                       lines.torn.size == 0 && !lines.ends_open;
    Log log;
    add_all(log, read_lines(bytes).entries);
    if (!whole || log.size() <= in_whole_) return;
    in_whole_ = log.size();
    found_.whole = WholeGeneration{name, bytes.size(), lines.last_number};
  }

  ReadLines take(const std::string& bytes) {
    ReadLines lines = read_lines(bytes);
    if (lines.version > lines_version) found_.newer = true;
    add_all(found_.all, std::exchange(lines.entries, {}));
    return lines;
  }

  std::optional<std::string> bytes_of(const std::string& name) {
    auto bytes = files_.read(name);
    if (bytes) return std::move(*bytes);
    found_.unread.emplace_back(name, bytes.error());
    return std::nullopt;
  }

  FileOperations& files_;
  Generations found_;
  std::size_t in_whole_ = 0;
};

}  // namespace

std::string temporary_name(int n) {
  return numbered("log.camside.tmp", n, "");
}
std::string damaged_name(int n) {
  return numbered("log.damaged", n, ".camside");
}

bool Generations::previous_unread() const {
  return std::any_of(unread.begin(), unread.end(), [](const auto& one) { return one.first == previous_name; });
}

tl::expected<Generations, FileOperations::Why> read_generations(FileOperations& files) {
  return Reader(files).done();
}

}  // namespace camside::storage
