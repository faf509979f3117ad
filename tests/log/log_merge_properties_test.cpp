// Merging is a union: the same in any order, twice the same as once, and nothing is ever dropped or hidden.
#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <set>

#include "log/log_file.hpp"
#include "log/log_merge.hpp"
#include "log/log_samples.hpp"
#include "log/log_view.hpp"

namespace camside::records {
namespace {

using namespace samples;

// Few ids and few contents, so that entries meet: corrections, deletions, circles, gaps, one id with two contents, and
// the same content with its names in another order.
rc::Gen<Entry> some_entry() {
  const auto id = rc::gen::elementOf(std::vector<std::string>{"a", "b", "c", "d", "e", "f", "g", ""});
  const auto reference = rc::gen::elementOf(std::vector<std::string>{"a", "b", "c", "d", "e", "f", "elsewhere"});
  return rc::gen::exec([=] {
    const std::string made_id = *id;
    const int minute = *rc::gen::inRange(0, 4);
    const bool gone = *rc::gen::weightedElement<bool>({{3, false}, {1, true}});
    Entry entry = gone ? make_entry("deletion", brindle, stamp(made_id, minute))
                       : odometer(made_id, minute, *rc::gen::element("1 mi", "2 mi"), *rc::gen::element("p", "q"));
    const auto old = *rc::gen::resize(2, rc::gen::container<std::vector<std::string>>(reference));
    if (old.size() == 1) entry.record.json["replaces"] = old.front();
    if (old.size() > 1) entry.record.json["replaces"] = old;
    if (!*rc::gen::arbitrary<bool>()) return entry;
    Json turned = Json::object();
    for (auto it = entry.record.json->rbegin(); it != entry.record.json->rend(); ++it) turned[it.key()] = *it;
    entry.record.json = turned;
    return entry;
  });
}

using Entries = std::vector<Entry>;

rc::Gen<Entries> some_entries(int most = 14) {
  return rc::gen::resize(most, rc::gen::container<Entries>(some_entry()));
}

Log log_of(const Entries& entries) {
  Log log;
  for (const Entry& entry : entries) log.add(entry);
  return log;
}

Log merged(Log a, const Log& b) {
  merge(a, b);
  return a;
}

std::multiset<std::string> contents(const Log& log) {
  std::multiset<std::string> all;
  for (const Entry& entry : log.entries()) all.insert(content_of(entry));
  return all;
}

std::set<std::string> distinct(const Entries& entries) {
  std::set<std::string> all;
  for (const Entry& entry : entries) all.insert(content_of(entry));
  return all;
}

// What a view shows, without the numbers of the entries.
std::string shown(const Log& log) {
  std::string text;
  const View seen = view(log);
  for (const Bike& bike : seen.bikes) {
    text += bike.id + "|" + bike.nickname + "|" + (bike.removed ? "removed" : "") + "\n";
    for (const Line& line : bike.lines) {
      text += line.day + (line.deleted ? " deleted" : "") + (line.apart ? " apart" : "") + "\n";
      for (const std::size_t i : line.current) text += "  now " + content_of(log.entries()[i]) + "\n";
      for (const std::size_t i : line.replaced) text += "  was " + content_of(log.entries()[i]) + "\n";
    }
  }
  for (const Finding& finding : seen.findings) text += std::to_string(finding.number) + finding.text + "\n";
  return text;
}

RC_GTEST_PROP(LogMerge, IsTheSameInAnyOrder, ()) {
  const Entries entries = *some_entries();
  Entries turned = entries;
  std::reverse(turned.begin(), turned.end());
  const std::size_t cut = entries.empty() ? 0 : *rc::gen::inRange<std::size_t>(0, entries.size());
  std::rotate(turned.begin(), turned.begin() + static_cast<std::ptrdiff_t>(cut), turned.end());
  RC_ASSERT(export_log(log_of(entries)) == export_log(log_of(turned)));
  RC_ASSERT(shown(log_of(entries)) == shown(log_of(turned)));
}

RC_GTEST_PROP(LogMerge, OfTwoIsTheSameFromEitherSide, ()) {
  const Log a = log_of(*some_entries());
  const Log b = log_of(*some_entries());
  RC_ASSERT(export_log(merged(a, b)) == export_log(merged(b, a)));
  RC_ASSERT(shown(merged(a, b)) == shown(merged(b, a)));
}

RC_GTEST_PROP(LogMerge, OfThreeIsTheSameInAnyGrouping, ()) {
  const Log a = log_of(*some_entries());
  const Log b = log_of(*some_entries());
  const Log c = log_of(*some_entries());
  RC_ASSERT(export_log(merged(merged(a, b), c)) == export_log(merged(a, merged(b, c))));
}

RC_GTEST_PROP(LogMerge, TwiceIsTheSameAsOnce, ()) {
  const Log a = log_of(*some_entries());
  const Log b = log_of(*some_entries());
  const Log once = merged(a, b);
  RC_ASSERT(export_log(merged(once, b)) == export_log(once));
  RC_ASSERT(to_take_over(once, b).empty());
  RC_ASSERT(preview_merge(once, b).nothing_new());
  RC_ASSERT(preview_merge(once, b).replaced == 0U);
}

RC_GTEST_PROP(LogMerge, DropsNoContentAndInventsNone, ()) {
  const Entries ours = *some_entries();
  const Entries theirs = *some_entries();
  std::set<std::string> wanted = distinct(ours);
  wanted.merge(distinct(theirs));
  const std::multiset<std::string> got = contents(merged(log_of(ours), log_of(theirs)));
  RC_ASSERT(got == std::multiset<std::string>(wanted.begin(), wanted.end()));
}

RC_GTEST_PROP(LogMerge, EveryEntryIsSomewhereInTheView, ()) {
  const Log log = log_of(*some_entries());
  const std::string text = shown(log);
  for (const Entry& entry : log.entries()) RC_ASSERT(text.find(content_of(entry)) != std::string::npos);
}

// An entry that nothing names by an id it alone has is current: no content is hidden by accident.
RC_GTEST_PROP(LogMerge, WhatNothingReplacesIsShown, ()) {
  const Log log = log_of(*some_entries());
  const std::string text = shown(log);
  for (std::size_t i = 0; i < log.size(); ++i) {
    const bool replaced = std::any_of(log.entries().begin(), log.entries().end(), [&](const Entry& other) {
      const auto old = other.replaces();
      return std::find(old.begin(), old.end(), log.entries()[i].id()) != old.end();
    });
    if (!replaced) RC_ASSERT(text.find("now " + content_of(log.entries()[i])) != std::string::npos);
  }
}

RC_GTEST_PROP(LogMerge, ThePreviewCountsWhatTheMergeDoes, ()) {
  const Log a = log_of(*some_entries());
  const Log b = log_of(*some_entries());
  const MergePreview preview = preview_merge(a, b);
  const Log both = merged(a, b);
  // Several of theirs with one id that isn't here are counted as new, though only the first of them is.
  RC_ASSERT(preview.fresh + preview.differing == both.size() - a.size());
  RC_ASSERT(preview.fresh + preview.differing + preview.known == b.size());
}

RC_GTEST_PROP(LogMerge, WhatIsTakenOverGivesTheMerge, ()) {
  const Log a = log_of(*some_entries());
  const Log b = log_of(*some_entries());
  Log taken = a;
  for (const Entry& entry : to_take_over(a, b)) taken.add(entry);
  RC_ASSERT(export_log(taken) == export_log(merged(a, b)));
}

RC_GTEST_PROP(LogMerge, ExportImportExportIsTheSameByteForByte, ()) {
  const std::string first = export_log(log_of(*some_entries()));
  const auto opened = read_log_file(first);
  RC_ASSERT(opened.has_value());
  RC_ASSERT(write_log_file(opened->file) == first);
  RC_ASSERT(export_log(opened->file.log) == first);
}

RC_GTEST_PROP(LogMerge, BikesApartAndTogetherAreTheSame, ()) {
  const Log log = log_of(*some_entries());
  Log together;
  for (const Bike& bike : view(log).bikes) merge(together, log_of_bike(log, bike.id));
  RC_ASSERT(export_log(together) == export_log(log));
}

RC_GTEST_PROP(LogMerge, UndoShowsWhatWasThereBefore, ()) {
  Log log = log_of(*some_entries());
  log.add(odometer("fresh", 9, "3 mi"));
  const Entry change = *rc::gen::arbitrary<bool>() ? deleting("change", 10, "fresh")
                                                   : replacing(odometer("change", 10, "4 mi"), "fresh");
  log.add(change);
  int n = 0;
  for (Entry& back : undo(log, change, [&n] { return stamp("back" + std::to_string(++n), 11); })) log.add(back);
  const View seen = view(log);
  const Bike* bike = find_bike(seen, brindle);
  RC_ASSERT(bike != nullptr);
  const auto latest = latest_odometer(log, *bike);
  RC_ASSERT(latest.has_value());
  RC_ASSERT(log.entries()[*latest].entered_text("reading") == "3 mi");
}

// What stands in each bike's log, without who wrote it when.
std::multiset<std::string> standing(const Log& log) {
  std::multiset<std::string> all;
  for (const Bike& bike : view(log).bikes) {
    for (const Line& line : bike.lines) {
      if (line.deleted) continue;
      for (const std::size_t i : line.current) {
        const Entry& entry = log.entries()[i];
        if (entry.is_deletion() || entry.bike() != bike.id) continue;  // of a line of two bikes
        Json said = entry.record.json;
        for (const char* name : {"id", "made", "by", "replaces", "day"}) said.erase(name);
        all.insert(bike.id + " " + entry.day() + " " + canonical_json(said));
      }
    }
  }
  return all;
}

std::vector<Entry> fresh_of(const Log& ours, const Log& theirs) {
  std::vector<Entry> fresh;
  for (const Entry& entry : to_take_over(ours, theirs))
    if (ours.would_be(entry) != Added::Rewritten) fresh.push_back(entry);
  return fresh;
}

void add_all(Log& log, const std::vector<Entry>& entries) {
  for (const Entry& entry : entries) log.add(entry);
}

RC_GTEST_PROP(LogMerge, TakenBackShowsWhatStoodBefore, ()) {
  const Log ours = log_of(*some_entries(7));
  const Log theirs = log_of(*some_entries(7));
  Log log = merged(ours, theirs);
  const std::size_t with_theirs = log.size();
  int n = 0;
  const auto next = [&n] { return stamp("back" + std::to_string(++n), 11); };
  const std::vector<Entry> back = taken_back(log, fresh_of(ours, theirs), next);
  add_all(log, back);
  RC_ASSERT(standing(log) == standing(ours));
  RC_ASSERT(log.size() == with_theirs + back.size());  // nothing is lost
  add_all(log, taken_back(log, back, next));           // and brought again
  RC_ASSERT(standing(log) == standing(merged(ours, theirs)));
  RC_ASSERT(to_take_over(log, theirs).empty());
}

RC_GTEST_PROP(LogMerge, NothingBroughtNeedsNoTakingBack, ()) {
  const Log ours = log_of(*some_entries());
  const auto never = []() -> Stamp { throw std::logic_error("asked for an id"); };
  RC_ASSERT(taken_back(ours, {}, never).empty());
  RC_ASSERT(taken_back(ours, fresh_of(ours, ours), never).empty());
}

TEST(LogMergePreview, SaysWhatItWouldDo) {
  Log ours = brindle_log();
  Log theirs = brindle_log();
  ours.add(replacing(odometer("mine", 60, "41,030 mi"), "o1"));
  theirs.add(replacing(odometer("yours", 61, "41,003 mi"), "o1"));
  theirs.add(deleting("gone", 62, "n1"));
  theirs.add(odometer("s1", 63, "1 mi"));  // a garbled copy under the id of the service
  theirs.add(entry("facts", "facts9", 64, {{"nickname", "Second"}}, "bike 2"));
  const MergePreview preview = preview_merge(ours, theirs);
  EXPECT_EQ(preview.fresh, 3U);
  EXPECT_EQ(preview.known, 5U);
  EXPECT_EQ(preview.replaced, 1U);
  EXPECT_EQ(preview.differing, 1U);
  EXPECT_EQ(preview.apart, 1U);  // "s1" stood side by side in theirs already
  EXPECT_EQ(preview.new_bikes, std::vector<std::string>{"Second"});
  EXPECT_EQ(ours.size(), 6U);  // only looked
  EXPECT_NE(words_of(preview).find("3 new, 5 known, 1 replaced"), std::string::npos);
}

}  // namespace
}  // namespace camside::records
