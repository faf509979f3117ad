// One story: what a look-over calls "must do anyway" is due now in the log of the bike that was bought, and nothing
// else is, for every age, every drive and answers drawn at random.
#include "work/look_over_to_log.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

#include "calc/look_over/look_over.hpp"
#include "due/due_board.hpp"
#include "knowledge/knowledge.hpp"
#include "log/log_samples.hpp"
#include "log/log_view.hpp"
#include "records/json_path.hpp"
#include "records/kinds.hpp"

namespace camside::work {
namespace {

using records::Entry;
using records::Json;
using records::Record;

constexpr const char* bike = "b0000000-0000-4000-8000-00000000000a";

class Drawn {
 public:
  explicit Drawn(unsigned seed) : gen_(seed) {}
  int below(int n) { return std::uniform_int_distribution<int>(0, n - 1)(gen_); }

  Record look_over(const look_over::Engine& engine, const std::string& drive) {
    Record r = records::make_record(*records::find_kind("look_over"), "a", "2027-09-18T10:05:00-05:00");
    r.set("name", "Drawn");
    static const Json file = *records::read_json(knowledge::usual_knowledge_file());
    Json& e = r.entered();
    for (const char* part : {"drives", "engines", "questions", "risks"}) e["known"][part] = file[part];
    e["engine"] = engine.id;
    if (!drive.empty()) e["drive"] = drive;
    e["today"] = "2027-09-18";
    if (below(5) > 0) e["odometer"] = std::to_string(500 * (1 + below(220))) + " mi";
    e["touched"] = below(2) == 0 ? "cold" : "warm";
    e["answers"] = Json::array();
    for (const look_over::Question& q : knowledge::usual_knowledge().book.questions) answer(e, q);
    return r;
  }

 private:
  void answer(Json& e, const look_over::Question& q) {
    if (below(3) == 0) return;
    Json a{{"question", q.id}, {"said", below(2) == 0 ? "yes" : below(2) == 0 ? "no" : "didn't see"}};
    if (asks_for_proof(knowledge::usual_knowledge().book, q.id)) {
      if (below(3) > 0) a["reading"] = std::to_string(500 * below(220)) + " mi";
      if (below(2) == 0) a["day"] = "20" + std::to_string(10 + below(19)) + "-05-12";
    }
    e["answers"].push_back(std::move(a));
  }

  std::mt19937 gen_;
};

struct Bought {
  records::Log log;
  due_board::History history;
  due_board::Board board;
};

Bought bought(const Record& record, const look_over::Input& in, const look_over::Result& r) {
  Bought b;
  int n = 0;
  const auto next_stamp = [&] {
    n += 1;
    return records::samples::stamp("e" + std::to_string(n), n);
  };
  for (Entry& e : bike_of(bike, record, in, r, next_stamp)) {
    EXPECT_TRUE(records::check_entry(e).empty()) << e.kind() << e.record.entered().dump();
    b.log.add(std::move(e));
  }
  const records::View view = records::view(b.log);
  b.history = due_board::history_of(b.log, *records::find_bike(view, bike), knowledge::usual_knowledge(), *in.today);
  b.board = due_board::board_of(b.history);
  return b;
}

const look_over::Found* found(const look_over::Result& r, const std::string& risk) {
  for (const auto* list : {&r.must_do, &r.may_find, &r.elsewhere})
    for (const look_over::Found& f : *list)
      if (f.risk == risk) return &f;
  return nullptr;
}

void expect_one_story(const Record& record, int n) {
  const Solved solved = records::solve(record);
  const auto* const r = solved.result_as<look_over::Result>();
  const auto* const in = solved.input_as<look_over::Input>();
  ASSERT_TRUE(r && in) << (solved.findings.empty() ? "" : solved.findings.front().field);
  const Bought b = bought(record, *in, *r);
  EXPECT_EQ(b.history.drives, r->drives) << n;
  for (const due_board::Row& row : b.board.rows) {
    const look_over::Found* const f = found(*r, b.history.watched[row.item].risk);
    ASSERT_NE(f, nullptr) << row.result.name;
    // With the drive not known the dearest decides what the bearings go along with, and the list shows every drive.
    if (r->drives.size() > 1 && !b.history.watched[row.item].with.empty()) continue;
    EXPECT_EQ(due_now(row), f->must) << n << " " << r->engine << " " << row.result.name << " " << f->why_must << "\n"
                                     << record.entered()["answers"].dump() << record.entered().value("odometer", "?");
  }
  for (const look_over::Found& f : r->must_do) {
    const auto& watched = b.history.watched;
    const bool looked_after =
        std::any_of(watched.begin(), watched.end(), [&](const auto& w) { return w.risk == f.risk; });
    EXPECT_TRUE(looked_after || !b.history.faults.empty()) << "what must be done is on no list: " << f.name;
  }
}

TEST(OneStory, LookOverDueAndLogAgreeForEveryAgeAndDrive) {
  Drawn draw(1808);
  int n = 0;
  for (const look_over::Engine& engine : knowledge::usual_knowledge().book.engines) {
    std::vector<std::string> drives = engine.drives;
    drives.emplace_back("");
    drives.emplace_back(look_over::drive_not_known);
    for (const std::string& drive : drives)
      for (int i = 0; i < 5; ++i) expect_one_story(draw.look_over(engine, drive), ++n);
  }
}

TEST(OneStory, PriceFaultsAndWhatWasNotSeenComeAlong) {
  Drawn draw(1);
  Record record = draw.look_over(knowledge::usual_knowledge().book.engines[1], "sprung chains");
  record.entered()["answers"] = Json::array({Json{{"question", "leaks_top"}, {"said", "yes"}}});
  record.entered()["asking"] = 7500;
  record.entered()["odometer"] = "9000 mi";
  const Solved solved = records::solve(record);
  const Bought b = bought(record, *solved.input_as<look_over::Input>(), *solved.result_as<look_over::Result>());
  std::string notes;
  for (const Entry& e : b.log.entries()) notes += e.entered_text("text") + "\n";
  EXPECT_NE(notes.find("Asked 7,500"), std::string::npos);
  EXPECT_NE(notes.find("Not looked at:\n"), std::string::npos);
  ASSERT_EQ(b.history.faults.size(), 1U);
  EXPECT_EQ(b.history.faults[0].part, "Oil leak at the rocker boxes or pushrod tubes");
  const auto shoe = std::find_if(b.board.rows.begin(), b.board.rows.end(),
                                 [](const auto& row) { return row.result.name == "Inner tensioner shoe"; });
  ASSERT_NE(shoe, b.board.rows.end());
  EXPECT_TRUE(shoe->result.due_for_want_of_proof) << "due now, and not good for 21,000 mi more";
}

}  // namespace
}  // namespace camside::work
