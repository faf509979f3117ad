// The place "Look-over": bikes for sale beside each other; of one its facts, the round of questions, the result on one
// screen, the prices, and the working. Everything entered is in the current job at once.
//
// What is noinline here is a door of app-web/later.py.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "screens/bikes/bike_log.hpp"
#include "screens/look_over/look_over_candidates.hpp"
#include "screens/look_over/look_over_lives.hpp"
#include "screens/look_over/look_over_round.hpp"
#include "screens/platform.hpp"
#include "screens/widgets/keypad.hpp"
#include "screens/widgets/ui.hpp"
#include "storage/current_job.hpp"
#include "work/look_over_record.hpp"

namespace camside::screens {

class LookOverScreen {
 public:
  LookOverScreen(storage::CurrentJob& job, Platform& platform, BikeLog& log)
      : looks_(job), lives_(job), platform_(platform), log_(log) {}

  void forget();  // the job was replaced

  // `said`: what came of the last file that left.
  [[gnu::noinline]] void draw_middle(Ui& ui, System system, bool wide, const std::string& said);
  [[gnu::noinline]] void draw_list(Ui& ui, System system);         // at the left of a wide window
  [[gnu::noinline]] void draw_side(Ui& ui);                        // at the right of one
  [[gnu::noinline]] float bottom_height(const Ui& ui, bool wide);  // 0: nothing stands there
  [[gnu::noinline]] void draw_bottom(Ui& ui, System system, float height);

  bool keypad_open() const { return keypad_.is_open(); }
  bool holding() const { return keypad_.holding(); }
  bool deep() const { return page_ != Page::List; }
  bool has_list() const { return deep(); }
  bool in_round() const { return page_ == Page::Round; }
  bool has_side() const { return page_ == Page::Round || page_ == Page::Questions || page_ == Page::Result; }
  [[gnu::noinline]] void back();
  void home() { go(Page::List); }          // the bikes beside each other
  void show(const std::string& id);        // its result
  std::vector<std::string> where() const;  // page, id, question
  void come_back(const std::vector<std::string>& where);
  [[gnu::noinline]] std::string title();
  const char* part() const;  // a name for each page, so that each keeps its own scrolling
  std::optional<std::string> take_bike() { return std::exchange(made_, std::nullopt); }

 private:
  enum class Page : std::uint8_t { List, Facts, Round, Questions, Result, Prices, Working };

  const look_over::Result* result() { return looks_.read(chosen_).result(); }
  const look_over::Input* input() { return looks_.read(chosen_).input(); }
  void go(Page page);
  void begin();
  void start_round();
  void show_question(const std::string& id);
  RoundQuestion round_question();
  std::vector<std::string> answers();
  std::string next_open();  // id of the question to go on with; empty: all were answered
  void lead_to(const std::string& at, System system);
  void draw_left_out(Ui& ui, System system);
  void draw_sum_switch(Ui& ui);
  std::vector<std::string> names_taken() const;
  std::size_t for_sale() const;  // those not bought, of which six can be compared
  bool is_bought(const std::string& id) const;
  void answer(const std::string& said);
  void step(int by);
  std::vector<Candidate> candidates(System system);
  std::string odometer_of(const look_over::Input& in, System system) const;

  void draw_start(Ui& ui);
  void draw_comparison(Ui& ui, System system);
  void draw_undo(Ui& ui);
  void draw_facts(Ui& ui, System system);
  void draw_engines(Ui& ui);
  void draw_drive(Ui& ui);
  void draw_fact(Ui& ui, const char* path, const std::string& label, System system);
  bool walk_away();
  bool stopped_here(Ui& ui);
  void draw_proof(Ui& ui, const RoundQuestion& round, System system);
  void draw_on_proof(Ui& ui, const char* what, const char* label, float width, System system);
  void take_on_proof(const std::string& path, const std::string& text);
  void draw_round(Ui& ui, System system, bool wide);
  void draw_questions(Ui& ui);
  void draw_result_page(Ui& ui, System system, const std::string& said);
  void draw_ways_out(Ui& ui, const std::string& said);
  void draw_purchase(Ui& ui);
  void draw_bought(Ui& ui);
  void draw_working(Ui& ui);
  bool prices_mine();
  void draw_prices(Ui& ui, System system);
  std::string price_text(const look_over::Found& of, std::size_t end) const;
  void draw_price(Ui& ui, const look_over::Found& of, System system);
  std::vector<look_over::Found> priced();  // what must be done first, else in the book's order
  std::string main_action();
  void take_main_action();
  void draw_keypad(Ui& ui, System system, float height);
  void edit_name();
  void edit_currency();
  void edit(const std::string& path, const std::string& label, Kind kind, const std::string& text, System system);
  void take_typed();
  void next_field(System system);
  void take_answer(const AnswerTap& tap);
  void physical_answers();
  std::string summary_text();
  void remove();
  void make_bike();

  work::LookOvers looks_;
  LookOverLives lives_;
  Platform& platform_;
  BikeLog& log_;
  Page page_ = Page::List;
  std::string chosen_;    // id of the look-over shown
  std::string question_;  // id of the question on screen
  Keypad keypad_;
  bool to_top_ = false;  // another question: from its beginning
  bool engines_open_ = false;
  bool more_ = false;      // of the question, all of it
  bool hide_sum_ = false;  // from the seller beside one
  std::string said_;
  bool gave_ = false;  // a summary left, and what came of it is to be said
  records::Record removed_;
  std::size_t removed_at_ = 0;
  std::string removed_name_;
  std::optional<std::string> made_;  // id of the bike made
};

}  // namespace camside::screens
