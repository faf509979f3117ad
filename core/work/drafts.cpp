#include "work/drafts.hpp"

#include <string>
#include <utility>

#include "records/strict_json.hpp"

namespace camside::work {

using records::Entry;
using records::Json;

namespace {

constexpr const char* drafts_name = "drafts";

std::vector<Entry> read(std::string_view bytes) {
  std::vector<Entry> some;
  const auto json = records::read_json(bytes);
  if (!json || !json->is_array()) return some;
  for (const Json& one : *json)
    if (one.is_object()) some.push_back(Entry{records::Record{one}});
  return some;
}

}  // namespace

Drafts::Drafts(storage::Store& store) : keeper_(store, drafts_name) {
  store.load(
      drafts_name, [](std::string_view) { return true; },
      [mine = std::weak_ptr(all_)](const tl::expected<storage::Loaded, Finding>& answer) {
        const auto all = mine.lock();
        if (!all) return;
        all->loaded = true;
        if (!answer || answer->bytes.empty()) return;
        all->kept = answer->bytes;
        std::vector<Entry> kept = read(answer->bytes);
        all->aside.insert(all->aside.begin(), std::move_iterator(kept.begin()), std::move_iterator(kept.end()));
      });
}

void Drafts::keep(const Entry* being_written) {
  if (!all_->loaded) return;
  Json drafts = Json::array();
  for (const Entry& entry : all_->aside) drafts.push_back(entry.record.json);
  if (being_written) drafts.push_back(being_written->record.json);
  std::string bytes = drafts.empty() && all_->kept.empty() ? std::string() : records::write_json(drafts);
  if (bytes == all_->kept) return;
  all_->kept = bytes;
  keeper_.put(std::move(bytes));
}

}  // namespace camside::work
