// The life lists of the current job that have a curve, and which of a look-over's risks they stand for.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "calc/look_over/look_over.hpp"
#include "records/measurement.hpp"
#include "screens/widgets/ui.hpp"
#include "storage/current_job.hpp"

namespace camside::screens {

struct LifeTap {
  std::optional<look_over::OwnLife> take;  // in place of the book's chance of its risk
  std::string give_back;                   // the risk whose chance shall be the book's again
};

class LookOverLives {
 public:
  explicit LookOverLives(storage::CurrentJob& job) : job_(job) {}

  // In the working of a look-over. The example's list may stand only in one that is invented too.
  LifeTap draw(Ui& ui, const look_over::Input& in, const look_over::Result& r, bool invented);
  void close() { open_.clear(); }

 private:
  struct List {
    std::string id;
    records::JsonValue entered;  // it was solved with
    std::string words;           // "cam chain shoes: 4 of 12 failed"
    std::optional<look_over::OwnLife> life;
    bool invented = false;
  };

  static List read(const records::Record& of);
  void refresh();
  void draw_list(Ui& ui, const look_over::Input& in, const look_over::Result& r, const List& list, LifeTap& tap);

  storage::CurrentJob& job_;
  std::vector<List> lists_;
  std::string open_;  // id of the list whose risk is being chosen
};

}  // namespace camside::screens
