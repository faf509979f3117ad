// The look-overs of the current job: made with what is known of engines today, edited in place, each solved once until
// it changes. Every change is committed at once, so that nothing tapped is lost.
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "calc/look_over/look_over.hpp"
#include "records/kinds.hpp"
#include "records/measurement.hpp"
#include "storage/current_job.hpp"

namespace camside::work {

// What was entered and can't be used: left out of the sum, kept as it was typed, and to be led to.
struct LeftOut {
  std::string at;  // "odometer", "answers/papers_shoes/day", "costs/shoes"
  Finding why;
};

// One solved; what can't be solved has an input only where the fields could be read. An entry that can't be used locks
// nothing: the last good one counts in its place, or none.
struct LookedOver {
  Solved solved;
  std::vector<LeftOut> left_out;

  const look_over::Input* input() const { return solved.input_as<look_over::Input>(); }
  const look_over::Result* result() const { return solved.result_as<look_over::Result>(); }
};

class LookOvers {
 public:
  explicit LookOvers(storage::CurrentJob& job) : job_(job) {}

  std::vector<std::string> ids() const;  // in the order they were begun
  records::Record* find(std::string_view id);
  const records::Record* find(std::string_view id) const;
  const LookedOver& read(std::string_view id);  // of one that is there
  const LookedOver& last(std::string_view id);  // as it was when it could last be solved
  // Its risks in the book's order, as they were when it could last be solved: a price half typed may be out of order.
  const std::vector<look_over::Found>& risks(std::string_view id);
  std::string cost(std::string_view id, std::string_view risk, std::string_view end) const;  // the user's, as typed
  void forget();                                                                             // the job was replaced

  std::string add(const std::string& taken, const std::vector<std::string>& taken_names = {});  // returns its id
  void add_examples();  // the invented bikes for sale
  void put_back(records::Record removed, std::size_t at);
  std::size_t remove(std::string_view id);  // where it stood

  std::string said(std::string_view id, std::string_view question);
  void answer(std::string_view id, std::string_view question, std::string_view said);
  // "reading" or "day", as typed off the proof. Who types one has seen the proof: `good` is the answer where there is
  // none yet.
  std::string on_proof(std::string_view id, std::string_view question, std::string_view what) const;
  void set_on_proof(std::string_view id, std::string_view question, std::string_view good, std::string_view what,
                    std::string_view text);
  void set(std::string_view id, std::string_view path, std::string_view text);
  void rename(std::string_view id, const std::string& name);
  void forget_costs(std::string_view id);
  // What it costs is the user's, not the bike's: it holds for every look-over that is real, or for every invented one.
  // The other two of its row stay as they were.
  void set_cost(std::string_view id, const look_over::Found& of, std::string_view end, std::string_view text);
  void take_price(std::string_view id, const look_over::Found& shown);
  void set_currency(std::string_view id, std::string_view text);
  void give_prices_back(std::string_view id);                          // those taken as they stood, not those typed
  void set_life(std::string_view id, const look_over::OwnLife& life);  // one for each risk, and one risk for each list
  void forget_life(std::string_view id, std::string_view risk);

 private:
  void take_own_figures(records::Record& fresh) const;
  std::string free_name();
  LookedOver solved_with_what_can_be_used(std::string_view id, const records::Record& of);
  std::vector<records::Record*> priced_alike(std::string_view id);
  void priced_anew(std::string_view id);
  void changed(std::string_view id);
  void solve_anew(std::string_view id);

  storage::CurrentJob& job_;
  std::map<std::string, LookedOver, std::less<>> kept_;
  std::map<std::string, LookedOver, std::less<>> last_;
  std::map<std::string, std::vector<look_over::Found>, std::less<>> risks_;
  std::map<std::string, records::Record, std::less<>> good_;  // as it stood when all of it could be used
  std::size_t last_number_ = 0;                               // numbers are not used again
};

bool is_invented(const records::Record& look_over);

}  // namespace camside::work
