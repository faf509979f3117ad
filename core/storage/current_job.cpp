#include "storage/current_job.hpp"

#include <utility>

namespace camside::storage {

namespace {

constexpr const char* job_name = "current-job";

bool can_be_read(std::string_view bytes) {
  return records::read_file(bytes).has_value();
}

}  // namespace

struct CurrentJob::Shared {
  Store& store;
  Keeper keeper;
  records::MeasurementFile job = records::empty_file();
  Findings findings;
  bool ready = false;
  bool store_unreadable = false;

  void take(Loaded loaded) {
    findings = std::move(loaded.findings);
    if (loaded.bytes.empty()) return;
    auto opened = records::read_file(loaded.bytes);
    Findings of_file = opened ? std::move(opened->findings) : std::move(opened.error());
    findings.insert(findings.end(), of_file.begin(), of_file.end());
    if (opened) job = std::move(opened->file);
  }
  void take(tl::expected<Loaded, Finding> answer) {
    store_unreadable = !answer;
    if (answer)
      take(std::move(*answer));
    else
      findings = {answer.error()};
    ready = true;
  }
};

CurrentJob::CurrentJob(Store& store) : shared_(new Shared{store, Keeper(store, job_name), {}, {}, false, false}) {
  shared_->job = records::empty_file();
}

void CurrentJob::open(std::function<void()> changed) {
  shared_->store.load(job_name, can_be_read,
                      [s = shared_, changed = std::move(changed)](tl::expected<Loaded, Finding> answer) {
                        s->take(std::move(answer));
                        if (changed) changed();
                      });
}

bool CurrentJob::ready() const {
  return shared_->ready;
}
records::MeasurementFile& CurrentJob::job() {
  return shared_->job;
}
const records::MeasurementFile& CurrentJob::job() const {
  return shared_->job;
}
const Findings& CurrentJob::findings() const {
  return shared_->findings;
}

bool CurrentJob::commit() {
  if (!shared_->ready || shared_->store_unreadable || shared_->job.read_only) return false;
  shared_->keeper.put(records::write_file(shared_->job));
  return true;
}

bool CurrentJob::replace(records::MeasurementFile job) {
  if (!shared_->ready) return false;
  shared_->job = std::move(job);
  shared_->findings.clear();
  return commit();
}

void CurrentJob::retry() {
  shared_->keeper.retry();
}
SaveState CurrentJob::state() const {
  return shared_->keeper.state();
}
const std::optional<Finding>& CurrentJob::reason() const {
  return shared_->keeper.reason();
}
bool CurrentJob::all_safe() const {
  return shared_->keeper.all_safe();
}

}  // namespace camside::storage
