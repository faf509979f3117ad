#include "records/kinds.hpp"

#include <algorithm>

#include "calc/backlash.hpp"
#include "calc/gear_pair.hpp"
#include "calc/gear_pick.hpp"
#include "calc/inspection_due.hpp"
#include "calc/life.hpp"
#include "calc/pushrod.hpp"
#include "calc/runout.hpp"
#include "calc/wear.hpp"
#include "records/examples.hpp"

namespace camside::records {

namespace {

RecordKind runout_kind() {
  RecordKind kind;
  kind.name = "runout";
  kind.label = "Runout";
  kind.question = "How far does the shaft run out, and does that stand within its limit?";
  kind.make = maker<runout::Input, runout::Result>(&runout::solve);
  kind.csv_list = "stations";
  kind.csv_also = {{"method", "stations"}};
  kind.examples = {example_file("runout_swing"), example_file("runout_stations")};
  return kind;
}

RecordKind gear_pair_kind() {
  RecordKind kind;
  kind.name = "gear_pair";
  kind.label = "Gear pair";
  kind.question = "How much lash have these two gears at this centre distance, and can the pair run at all?";
  kind.make = maker<gear_pair::Input, gear_pair::Result>(&gear_pair::solve);
  kind.examples = {example_file("gear_pair")};
  return kind;
}

RecordKind backlash_kind() {
  RecordKind kind;
  kind.name = "backlash";
  kind.label = "Backlash";
  kind.question = "How much lash has this mesh over its whole cycle, and does it stand in the window of the sheet?";
  kind.make = maker<backlash::Input, backlash::Result>(&backlash::solve);
  kind.csv_list = "readings";
  kind.examples = {example_file("backlash")};
  return kind;
}

RecordKind gear_pick_kind() {
  RecordKind kind;
  kind.name = "gear_pick";
  kind.label = "Gears to order";
  kind.question = "Which sizes of gears bring the lash into its window, and which come nearest?";
  kind.make = maker<gear_pick::Input, gear_pick::Result>(&gear_pick::solve);
  kind.examples = {example_file("gear_pick")};
  return kind;
}

RecordKind pushrod_kind() {
  RecordKind kind;
  kind.name = "pushrod";
  kind.label = "Pushrods";
  kind.question = "How many turns and flats set the rods, and what preload does that give?";
  kind.make = maker<pushrod::Input, pushrod::Result>(&pushrod::solve);
  kind.examples = {example_file("pushrod")};
  return kind;
}

RecordKind inspection_due_kind() {
  RecordKind kind;
  kind.name = "inspection_due";
  kind.label = "Due";
  kind.question = "What is due next on this bike, by distance and by date, and what has no proof?";
  kind.make = maker<inspection_due::Input, inspection_due::Result>(&inspection_due::solve);
  kind.csv_list = "log";
  kind.examples = {example_file("inspection_due")};
  return kind;
}

RecordKind wear_kind() {
  RecordKind kind;
  kind.name = "wear";
  kind.label = "Wear";
  kind.question = "Is this shoe thick enough, and at which distance does its wear reach the limit?";
  kind.make = maker<wear::Input, wear::Result>(&wear::solve);
  kind.csv_list = "readings";
  kind.examples = {example_file("wear")};
  return kind;
}

RecordKind life_kind() {
  RecordKind kind;
  kind.name = "life";
  kind.label = "Life";
  kind.question = "How long do such parts live in this shop, and will this one last the next miles?";
  kind.make = maker<life::Input, life::Result>(&life::solve);
  kind.csv_list = "parts";
  kind.examples = {example_file("life")};
  return kind;
}

std::vector<RecordKind> all_kinds() {
  return {runout_kind(),  gear_pair_kind(),      backlash_kind(), gear_pick_kind(),
          pushrod_kind(), inspection_due_kind(), wear_kind(),     life_kind()};
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
