// A store whose answers come when the test lets them, good or bad.
#pragma once

#include <deque>
#include <map>
#include <string>
#include <utility>

#include "records/file_remarks.hpp"
#include "storage/store.hpp"

namespace camside::storage {

class FakeStore final : public Store {
 public:
  struct Save {
    std::string name;
    std::string bytes;
    SaveDone done;
  };
  struct Load {
    std::string name;
    Whole whole;
    LoadDone done;
  };
  std::deque<Save> saves;
  std::deque<Load> loads;
  std::map<std::string, std::string> kept;

  void load(const std::string& name, Whole whole, LoadDone done) override {
    loads.push_back({name, std::move(whole), std::move(done)});
  }
  void save(const std::string& name, std::string bytes, SaveDone done) override {
    saves.push_back({name, std::move(bytes), std::move(done)});
  }

  void confirm() {
    Save save = take();
    kept[save.name] = save.bytes;
    save.done({});
  }
  void refuse() { take().done(tl::unexpected(remarks::cannot_save("here", "the disk is full"))); }
  void answer_load() {
    Load load = std::move(loads.front());
    loads.pop_front();
    load.done(Loaded{kept[load.name], false, {}});
  }
  void refuse_load() {
    Load load = std::move(loads.front());
    loads.pop_front();
    load.done(tl::unexpected(remarks::cannot_load("here", "input/output error")));
  }

 private:
  Save take() {
    Save save = std::move(saves.front());
    saves.pop_front();
    return save;
  }
};

}  // namespace camside::storage
