#include "records/kinds.hpp"

#include <algorithm>

#include "calc/backlash/backlash.hpp"
#include "calc/gear_pair/gear_pair.hpp"
#include "calc/gear_pick/gear_pick.hpp"
#include "calc/inspection_due/inspection_due.hpp"
#include "calc/life/life.hpp"
#include "calc/look_over/look_over.hpp"
#include "calc/pushrod/pushrod.hpp"
#include "calc/runout/runout.hpp"
#include "calc/wear/wear.hpp"
#include "records/examples.hpp"

namespace camside::records {

namespace {

template <class Input, class Result>
RecordKind kind_of(std::string_view name, std::string_view label, std::string_view question,
                   tl::expected<Result, Findings> (*solve)(const Input&)) {
  RecordKind kind;
  kind.name = name;
  kind.label = label;
  kind.question = question;
  kind.make = maker<Input, Result>(solve);
  kind.examples = {example_file(name)};
  return kind;
}

RecordKind with_table(RecordKind kind, std::string_view list,
                      std::vector<std::pair<std::string_view, std::string_view>> also = {}) {
  kind.csv_list = list;
  kind.csv_also = std::move(also);
  return kind;
}

RecordKind look_over_kind() {
  RecordKind kind =
      kind_of("look_over", "Look-over",
              "What does this used bike hide on its cam side, what would that cost, and what is it worth today?",
              &look_over::solve);
  kind.told = [](const Solved& s) {
    return look_over::summary(*s.input_as<look_over::Input>(), *s.result_as<look_over::Result>());
  };
  return kind;
}

RecordKind runout_kind() {
  RecordKind kind = kind_of("runout", "Runout", "How far does the shaft run out, and does that stand within its limit?",
                            &runout::solve);
  kind.examples = {example_file("runout_swing"), example_file("runout_stations")};
  return with_table(std::move(kind), "stations", {{"method", "stations"}});
}

std::vector<RecordKind> all_kinds() {
  return {
      runout_kind(),
      kind_of("gear_pair", "Gear pair",
              "How much lash have these two gears at this centre distance, and can the pair run at all?",
              &gear_pair::solve),
      with_table(
          kind_of("backlash", "Backlash",
                  "How much lash has this mesh over its whole cycle, and does it stand in the window of the sheet?",
                  &backlash::solve),
          "readings"),
      kind_of("gear_pick", "Gears to order",
              "Which sizes of gears bring the lash into its window, and which come nearest?", &gear_pick::solve),
      kind_of("pushrod", "Pushrods", "How many turns and flats set the rods, and what preload does that give?",
              &pushrod::solve),
      with_table(kind_of("inspection_due", "Due",
                         "What is due next on this bike, by distance and by date, and what has no proof?",
                         &inspection_due::solve),
                 "log"),
      with_table(
          kind_of("wear", "Wear", "Is this shoe thick enough, and at which distance does its wear reach the limit?",
                  &wear::solve),
          "readings"),
      with_table(
          kind_of("life", "Life", "How long do such parts live in this shop, and will this one last the next miles?",
                  &life::solve),
          "parts"),
      look_over_kind(),
  };
}

}  // namespace

std::span<const RecordKind> kinds() {
  static const std::vector<RecordKind> all = all_kinds();
  return all;
}

const RecordKind* find_kind(std::string_view name, std::span<const RecordKind> among) {
  const auto it = std::find_if(among.begin(), among.end(), [&](const RecordKind& k) { return k.name == name; });
  return it == among.end() ? nullptr : &*it;
}

}  // namespace camside::records
