// The words of the place Look-over that come from no calculator. Plain, short, no Title Case.
#pragma once

#include <cstddef>
#include <string>

#include "calc/look_over/look_over.hpp"

namespace camside::screens::words {

const char* check_over();
const char* check_over_another();
const char* look_over_question();
const char* look_over_help();
const char* six_at_most();
const char* compare_order();
const char* bars_help();
const char* bought();
const char* bought_help();
const char* nickname();

// Facts
const char* touched_first();
const char* touched_help();
const char* drive_now();
const char* drive_not_known();
const char* currency();
const char* engine_by_year();
std::string engine_row(const std::string& engine);
const char* start_round();
std::string left_to_see(std::size_t count);
const char* change_them();

// The round
std::string progress(std::size_t at, std::size_t of);
const char* all_questions();
const char* previous();
const char* didnt_see();
const char* not_answered();
const char* to_result();
std::string say(const std::string& sentence);
std::string tells_about(const std::string& names);
std::string ends_it(const std::string& answer, const std::string& why);
std::string cold_void(bool warm);
const char* silence_help();
const char* warm_hides_help();
const char* refused_help();
const char* marks_help();
std::string hidden_answer(const std::string& answer, const std::string& question);
const char* reading_on_bill();
const char* day_on_bill();
const char* on_bill_help();
std::string walk_away_because(const std::string& why);
const char* stop_here();
std::string so_far(const std::string& sum);
const char* hide_sum();
const char* show_sum();
const char* more_of_it();
const char* less_of_it();
std::string may_stop(std::size_t more, const std::string& narrows);
std::string next_one(const std::string& question);
std::string left_out(const std::string& why);
const char* correct_it();
const char* work_for_certain();
const char* asking_is_sound();

// The result
const char* knock_off();
const char* offer();
const char* walk_away();
const char* no_price_makes_up();
const char* walk_away_if();
const char* must_do();
const char* may_find();
const char* may_find_why();
const char* nothing_must();
std::string seldom_ones(std::size_t count);
const char* look_next();
const char* can_end_it();
const char* bill_spares();
std::string settles(const std::string& good, const std::string& bad);
const char* needs_cold();
std::string hidden_look(const std::string& question);
const char* no_offer_word(bool at_all);
const char* all_seen();
const char* placeholder_sum();
const char* look_at_prices();
const char* own_lists();
const char* own_lists_help();
const char* counts_nowhere();
std::string counts_for(const std::string& risk);
const char* none_of_them();
const char* invented_mark();
std::string no_curve(const std::string& list);
const char* prices();
const char* prices_help();
const char* price_mine();
const char* prices_not_mine();
const char* prices_are_mine();
const char* best();
const char* likely();
const char* worst();
const char* placeholder();
const char* yours();
const char* risks_ranked();
std::string settled_by(const std::string& what);
const char* what_moves_it();
const char* send_summary();
const char* save_summary();
const char* copy_summary();
const char* copied();
const char* it_is_mine();
const char* it_is_mine_help();
const char* see_its_bike();
const char* is_in_log();
const char* remove_bike();

// The comparison
const char* year();
const char* odometer();
const char* asking();
const char* not_seen_count();
std::string knock_off_of(const std::string& sum);
std::string offer_of(const std::string& range);
std::string not_seen(std::size_t count, look_over::Met to_walk);
std::string asks(const std::string& price);
const char* year_not_known();
const char* odometer_not_known();
const char* cannot_say();

// More of the pages
const char* answer_keys();
const char* invented_bikes();
const char* year_of_model();
const char* asking_price();
const char* made_with();
const char* round_again();
std::string bike_made(const std::string& name);

// In the bike's log
std::string chance_of(const std::string& percent, const std::string& from);
const char* swings_help();

}  // namespace camside::screens::words
