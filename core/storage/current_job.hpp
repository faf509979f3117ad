// The one current job: a measurement file that is loaded at start and saved after every committed edit.
#pragma once

#include <functional>
#include <memory>

#include "records/measurement.hpp"
#include "storage/keeper.hpp"
#include "storage/store.hpp"

namespace camside::storage {

class CurrentJob {
 public:
  explicit CurrentJob(Store& store);

  // Starts loading; `changed` is called when the job is there (a window that sleeps wakes up by it).
  void open(std::function<void()> changed = {});
  bool ready() const;  // until then the job is empty and edits are refused by commit()

  records::MeasurementFile& job();
  const records::MeasurementFile& job() const;
  const Findings& findings() const;  // about the file as it was opened: "the previous version was opened" …

  // After each committed edit. False when nothing may be saved: still loading, the job comes from a newer Camside, or
  // the store could not be read (saving would bury what is still in there).
  bool commit();
  bool replace(records::MeasurementFile job);  // another file takes its place and is saved as by commit()
  void retry();

  SaveState state() const;
  const std::optional<Finding>& reason() const;
  bool all_safe() const;

 private:
  struct Shared;
  std::shared_ptr<Shared> shared_;
};

}  // namespace camside::storage
