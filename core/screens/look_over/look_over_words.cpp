#include "screens/look_over/look_over_words.hpp"

namespace camside::screens::words {

const char* check_over() {
  return "Check over a bike";
}
const char* check_over_another() {
  return "Check over another bike";
}
const char* look_over_question() {
  return "What does this bike hide, and what is it worth today?";
}
const char* look_over_help() {
  return "Short questions beside the bike, one tap each, the eight that matter most first. It says what must be done "
         "anyway, what you may find, what to offer, and when to walk away";
}
const char* six_at_most() {
  return "Six can be compared. Remove one to check over another";
}
const char* compare_order() {
  return "Least engine work first; one to walk away from last";
}
const char* bars_help() {
  return "The bars: likely range of the engine work, rough guess, all to one scale";
}
const char* bought() {
  return "Bought";
}
const char* bought_help() {
  return "Among your bikes, so it takes no place of the six";
}
const char* nickname() {
  return "Nickname";
}

const char* touched_first() {
  return "A hand near the engine, before it ran";
}
const char* touched_help() {
  return "Hold a hand near it before you talk, no touch yet: it may be hot. On a warm engine a good start proves "
         "nothing";
}
const char* drive_now() {
  return "What drives the cams now?";
}
const char* drive_not_known() {
  return "Not known";
}
const char* currency() {
  return "Currency";
}
const char* engine_by_year() {
  return "By model year";
}
std::string engine_row(const std::string& engine) {
  return "Engine: " + engine;
}
const char* start_round() {
  return "Start the round";
}
std::string left_to_see(std::size_t count) {
  return "Go on: " + std::to_string(count) + " still open";
}
const char* change_them() {
  return "Change";
}

std::string progress(std::size_t at, std::size_t of) {
  return std::to_string(at) + " of " + std::to_string(of);
}
const char* all_questions() {
  return "All questions";
}
const char* previous() {
  return "Previous";
}
const char* didnt_see() {
  return "Didn't see";
}
const char* not_answered() {
  return "open";
}
const char* to_result() {
  return "See the result";
}
std::string say(const std::string& sentence) {
  return "“" + sentence + "”";
}
std::string tells_about(const std::string& names) {
  return "Points to: " + names;
}
std::string ends_it(const std::string& answer, const std::string& why) {
  return "“" + answer + "” ends it: " + why;
}
std::string cold_void(bool warm) {
  return warm ? "The engine was warm: a good answer proves nothing, a bad one counts"
              : "Nobody had a hand near it while it was cold: a good answer proves nothing, a bad one counts";
}
const char* silence_help() {
  return "Silence proves nothing";
}
const char* warm_hides_help() {
  return "The engine was not stone cold, so only a bad answer counts";
}
const char* refused_help() {
  return "The seller won't? Then it is “Didn't see”";
}
const char* marks_help() {
  return "The marks on the answers: a tick is good for the bike, a cross bad, a diamond proves nothing";
}
std::string hidden_answer(const std::string& answer, const std::string& question) {
  return "“" + answer + "” doesn't count: “" + question + "”";
}
const char* reading_on_bill() {
  return "Odometer on the bill";
}
const char* day_on_bill() {
  return "Day on the bill";
}
const char* on_bill_help() {
  return "A bill without a reading clears nothing. The day as on the bill; the month will do";
}
std::string walk_away_because(const std::string& why) {
  return "Walk away: " + why;
}
const char* stop_here() {
  return "Stop here";
}
std::string so_far(const std::string& sum) {
  return "Engine work so far " + sum;
}
const char* hide_sum() {
  return "Hide the sum";
}
const char* show_sum() {
  return "Show the sum";
}
const char* more_of_it() {
  return "More on this";
}
const char* less_of_it() {
  return "Less";
}
std::string may_stop(std::size_t more, const std::string& narrows) {
  return "You may stop here: " + std::to_string(more) + " more would narrow it by about " + narrows;
}
std::string next_one(const std::string& question) {
  return "Next: " + question;
}
std::string left_out(const std::string& why) {
  return "Left out, can't be used: " + why;
}
const char* correct_it() {
  return "Correct";
}
const char* asking_is_sound() {
  return "Takes the asking price as a sound bike's";
}
const char* work_for_certain() {
  return "Work for certain";
}

const char* knock_off() {
  return "Engine work";
}
const char* offer() {
  return "Offer by your figures";
}
const char* walk_away() {
  return "Walk away";
}
const char* no_price_makes_up() {
  return "No price makes up for it";
}
const char* walk_away_if() {
  return "Walk away if";
}
const char* must_do() {
  return "Must do anyway";
}
const char* may_find() {
  return "May find";
}
const char* may_find_why() {
  return "Averaged into the sum; full cost if it happens";
}
const char* nothing_must() {
  return "Nothing";
}
std::string seldom_ones(std::size_t count) {
  return std::to_string(count) + " seldom ones: under Working";
}
const char* look_next() {
  return "Look at this next";
}
const char* can_end_it() {
  return "It can end it, and costs nothing";
}
const char* bill_spares() {
  return "A bill takes it off “must do anyway”";
}
std::string settles(const std::string& good, const std::string& bad) {
  return "If it is good, engine work " + good + "; if it is bad, " + bad;
}
const char* needs_cold() {
  return "Needs a stone-cold engine: come back when it has stood overnight";
}
std::string hidden_look(const std::string& question) {
  return "Hidden until this is settled: “" + question + "”";
}
const char* no_offer_word(bool at_all) {
  return at_all ? "no offer" : "no offer yet";
}
const char* all_seen() {
  return "All was looked at";
}
const char* placeholder_sum() {
  return "Made-up prices; enter yours";
}
const char* look_at_prices() {
  return "Enter my prices";
}
const char* own_lists() {
  return "Chances from your own lists";
}
const char* own_lists_help() {
  return "A list of failures and survivors (Life, on the Bench) can stand in for the book's chance of a risk";
}
const char* counts_nowhere() {
  return "Not used yet";
}
std::string counts_for(const std::string& risk) {
  return "Counts for: " + risk;
}
const char* invented_mark() {
  return " (invented)";
}
std::string no_curve(const std::string& list) {
  return list + ". It gives no curve to count with";
}
const char* none_of_them() {
  return "None: the book's chance";
}
const char* prices() {
  return "Prices";
}
const char* prices_help() {
  return "What it costs you to put each right: parts and hours. A row you change or take is yours; the others stay "
         "made "
         "up. First what must be done: no offer without your prices for it";
}
const char* price_mine() {
  return "Take as mine";
}
const char* prices_not_mine() {
  return "They are not mine after all";
}
const char* prices_are_mine() {
  return "All of these prices are yours";
}
const char* best() {
  return "Best";
}
const char* likely() {
  return "Likely";
}
const char* worst() {
  return "Worst";
}
const char* placeholder() {
  return "made up";
}
const char* yours() {
  return "yours";
}
const char* risks_ranked() {
  return "Risks by what they add";
}
std::string settled_by(const std::string& what) {
  return "Settled by: " + what;
}
const char* what_moves_it() {
  return "What moves the sum";
}
const char* send_summary() {
  return "Send the summary";
}
const char* save_summary() {
  return "Save the summary";
}
const char* copy_summary() {
  return "Copy the summary";
}
const char* copied() {
  return "Copied: paste it into a message";
}
const char* it_is_mine() {
  return "It is mine now";
}
const char* it_is_mine_help() {
  return "Makes it one of your bikes: what was seen, what wasn't, what has no proof and the price go into its log";
}
const char* see_its_bike() {
  return "See it under Bikes";
}
const char* is_in_log() {
  return "It is one of your bikes";
}
const char* remove_bike() {
  return "Remove this look-over";
}

const char* year() {
  return "Year";
}
const char* odometer() {
  return "Odometer";
}
const char* asking() {
  return "Asking";
}
const char* not_seen_count() {
  return "Not seen";
}
std::string knock_off_of(const std::string& sum) {
  return "engine work " + sum;
}
std::string offer_of(const std::string& range) {
  return "offer " + range;
}
std::string not_seen(std::size_t count, look_over::Met to_walk) {
  const std::string seen = count == 0 ? std::string("All seen") : std::to_string(count) + " not seen";
  return seen + (to_walk == look_over::Met::NotSeen ? ", reasons to walk away among them" : ", no reason to walk away");
}
std::string asks(const std::string& price) {
  return "asks " + price;
}
const char* year_not_known() {
  return "year not known";
}
const char* odometer_not_known() {
  return "odometer not known";
}
const char* cannot_say() {
  return "Something entered can't be used";
}

const char* answer_keys() {
  return "On the keyboard: y, n, d";
}
const char* invented_bikes() {
  return "Invented bikes of the demo scenario among them";
}
const char* year_of_model() {
  return "Model year";
}
const char* asking_price() {
  return "Asking price";
}
const char* made_with() {
  return "Made with Camside. Chances are rough and none of them published; what ages beside the engine is not in it";
}
const char* round_again() {
  return "Go through the round again";
}
std::string bike_made(const std::string& name) {
  return name + " is one of your bikes";
}

std::string chance_of(const std::string& percent, const std::string& from) {
  return "Chance " + percent + " (" + from + ")";
}
const char* swings_help() {
  return "The sum with one thing changed and all others as they are, from its least to its most. The line is the sum "
         "now";
}

}  // namespace camside::screens::words
