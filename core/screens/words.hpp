// Every text the screens show that does not come from a calculator or a field's description. Plain, short, no Title
// Case.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "log/log_merge.hpp"

namespace camside::screens::words {

// Places
const char* bikes();
const char* bench();
const char* look_over();
const char* setup();

// Keypad
const char* next();
const char* erase();
const char* sign();
const char* decimal_mark();
const char* done();
std::string date_form();
std::string allowed(const std::string& range);

// The Bench; its tiles say what their questions say (calc/question.hpp)
const char* desk();
const char* rest_is_coming();

// Screens of a question
const char* back();
const char* show_example();
std::string invented();
const char* new_measurement();
const char* enter_first();
std::string correct_field(const std::string& label);
const char* enter_next();
const char* larger();  // the drawing
const char* whole_drawing();
std::string times_larger(float scale);
const char* working();
const char* hide_working();
const char* more_entries();
const char* fewer_entries();
const char* add_item();
const char* value();
std::string needed(const std::string& label);
std::string notes(std::size_t count);
const char* hide_notes();
const char* lay_out_marks();
std::string marks(int count);
const char* other_measurements();
std::string nth(std::size_t n, std::size_t of);
const char* remove();
const char* add_group();
const char* no_answer_yet();
const char* limit_by();
const char* yes();
const char* no();
const char* not_said();
const char* undo();
std::string removed(const std::string& what);
std::string item_count(std::size_t count);

// Pushrods
const char* direction_not_known();
std::string teeth_as_chosen(const std::string& mesh);
std::string teeth_cannot_be_drawn(const std::string& mesh);
std::string version(const std::string& name);
const char* kept_on_device();
const char* update_ready();
const char* load_it();
std::string way_of_turning(const std::string& sense, bool longer);
const char* do_not_turn();
const char* still_to_go();
const char* all_turns_made();
const char* tap_after_turn();
const char* tap_after_flats();
const char* count_again();
const char* rods_set();
const char* wait_is_over();
const char* show_it();
const char* set_now();
const char* spins_with_drag();
const char* play_up_and_down();

// Due
const char* no_proof_beside();

// Bikes and their log
const char* no_bike_named();
const char* saving();
const char* saved();
const char* log_opening();
const char* log_read_only();
const char* another_tab_writes();
const char* write_here();
const char* no_bikes_yet();
const char* no_bikes_help();
const char* show_demo_bike();
const char* demo_added();
const char* remove_demo();
const char* invented_bike();
const char* add_bike();
const char* log_odometer();
const char* add_an_entry();
const char* which_kind();
const char* which_bike();
const char* change_facts();
const char* show_kinds();
const char* all_kinds();
const char* no_entries();
const char* due();
std::string due_in_list(const std::string& state, const std::string& item);
const char* engine_not_entered();
const char* nothing_looked_after();
std::string none_on_this_bike(const std::string& item, const std::string& why);
std::string show_all_due(std::size_t count);
const char* log_it_done();
const char* put_off();
const char* own_interval();
const char* reminders();
const char* deleted_state();
const char* removed_state();
const char* changed_apart();
const char* changed_apart_help();
const char* one_kept();
const char* bring_back();
const char* brought_back();
const char* correct();
const char* delete_entry();
const char* show_on_bench();
const char* before();
const char* measurement_name();
const char* day();
const char* save();
const char* discard();
const char* go_on();
std::string unfinished(const std::string& what);
const char* no_nickname();
const char* give_nickname();
const char* log_to_a_bike();
const char* add_bike_to_log_this();
std::string change_and_state(const std::string& state, const std::string& what);
std::string saved_in_log_of(const std::string& bikes);
std::string log_to(const std::string& bike);
std::string made(const std::string& when, const std::string& by);
std::string keep_nth(std::size_t n, std::size_t of);
std::string deleted(const std::string& what);
std::string removed_bikes(std::size_t count);
std::string more_remarks(std::size_t count);
std::string invented_beside(const std::string& text);

// Copies of the log
const char* copies();
const char* copies_help();
std::string reading_copy(std::size_t bytes);  // while it is
const char* send_copy();
const char* save_copy();
const char* take_in_copy();
const char* drop_copy();
const char* copy_to_take_in();
const char* file_left();
std::string file_written(const std::string& path);
const char* show_as_code();
std::string code_of(const std::string& name);
const char* code_help();
std::string code_holds(std::size_t entries, std::size_t bytes, std::size_t room);
std::string code_opens(const std::string& address);
std::string code_too_big(const std::string& name, std::size_t bytes, std::size_t room);
const char* code_too_big_help();
const char* send_bike();
const char* save_bike();
const char* only_this_device();
const char* needs_address();
const char* take_address();
const char* take_other_address();
const char* no_address_found();
const char* came_by_code();
std::string copy_age(std::optional<int> days);
const char* storage_promise(bool given);
std::vector<std::string> would_bring(const records::MergePreview& preview);
std::string take_in(std::size_t count);
std::string taken_in(std::size_t count);
std::string taken_back(std::size_t count);

// Save state
const char* not_saved();
const char* try_again();

// Places that are coming
const char* bikes_coming();
const char* coming();

// Setup
const char* units();
const char* theme();
const char* text_size();
const char* hand();
const char* screen_on_bench();
std::string bike_is(const std::string& name);
const char* type_words();
const char* about();
const char* safety();

}  // namespace camside::screens::words
