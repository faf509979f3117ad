#include "screens/words.hpp"

#include <fmt/format.h>

#include "units/format.hpp"

namespace camside::screens::words {

const char* bikes() {
  return "Bikes";
}
const char* bench() {
  return "Bench";
}
const char* look_over() {
  return "Look-over";
}
const char* setup() {
  return "Settings";
}

const char* next() {
  return "Next";
}
const char* erase() {
  return "Erase";
}
const char* sign() {
  return "Change sign";
}
const char* decimal_mark() {
  return "Decimal mark";
}
const char* done() {
  return "Done";
}
std::string date_form() {
  return "year-month-day: 2003-05-14";
}
std::string allowed(const std::string& range) {
  return "Allowed: " + range;
}

const char* desk() {
  return "Desk";
}

const char* rest_is_coming() {
  return "The rest of Camside is still on its way";
}

const char* back() {
  return "Back";
}
const char* show_example() {
  return "Show an example (invented)";
}
std::string invented() {
  return "Invented readings of the demo scenario, not measured on any engine";
}
const char* new_measurement() {
  return "Start a new one";
}
const char* enter_first() {
  return "Enter readings";
}
const char* larger() {
  return "Larger";
}
const char* whole_drawing() {
  return "Whole drawing";
}
std::string times_larger(float scale) {
  return format_decimal(static_cast<double>(scale), 1) + " times larger";
}
std::string correct_field(const std::string& label) {
  return "Correct: " + label;
}
const char* enter_next() {
  return "Next reading";
}
const char* working() {
  return "Working";
}
const char* hide_working() {
  return "Hide the working";
}
const char* more_entries() {
  return "Set-up and more";
}
const char* fewer_entries() {
  return "Fewer entries";
}
const char* add_item() {
  return "Add one";
}
const char* value() {
  return "Value";
}
std::string needed(const std::string& label) {
  return label + " (needed)";
}
std::string notes(std::size_t count) {
  return std::to_string(count) + (count == 1 ? " note" : " notes");
}
const char* hide_notes() {
  return "Hide the notes";
}
const char* lay_out_marks() {
  return "Lay out marks round the turn";
}
std::string marks(int count) {
  return std::to_string(count) + " marks";
}
const char* other_measurements() {
  return "Measurements kept in this job";
}
std::string nth(std::size_t n, std::size_t of) {
  return "Measurement " + std::to_string(n) + " of " + std::to_string(of);
}
const char* remove() {
  return "Remove";
}
const char* add_group() {
  return "Add";
}
const char* no_answer_yet() {
  return "No answer yet";
}
const char* limit_by() {
  return "Limit";
}
const char* yes() {
  return "Yes";
}
const char* no() {
  return "No";
}
const char* not_said() {
  return "Not said";
}
const char* undo() {
  return "Undo";
}
std::string removed(const std::string& what) {
  return what + " removed";
}
std::string item_count(std::size_t count) {
  return std::to_string(count) + (count == 1 ? " entry" : " entries");
}

const char* direction_not_known() {
  return "Hand of the thread and end of the adjuster settle which way";
}
std::string teeth_as_chosen(const std::string& mesh) {
  return "Teeth of the " + mesh + " with the highlighted choice, where the lash is least. Tap a bar for another";
}
std::string teeth_cannot_be_drawn(const std::string& mesh) {
  return "The teeth of the " + mesh + " can't be drawn for this choice. Tap a bar for another";
}
std::string version(const std::string& name) {
  return "Version " + name;
}
const char* kept_on_device() {
  return "Kept on this device: it opens without signal";
}
const char* update_ready() {
  return "A newer Camside is here. Nothing you entered is touched";
}
const char* load_it() {
  return "Load it";
}
std::string way_of_turning(const std::string& sense, bool longer) {
  return sense + ", seen from above: " + (longer ? "longer" : "shorter");
}
const char* do_not_turn() {
  return "Do not turn the engine";
}
const char* still_to_go() {
  return "Still to go";
}
const char* all_turns_made() {
  return "All made; hold the adjuster and tighten its locknut";
}
const char* tap_after_turn() {
  return "Tap after each full turn";
}
const char* tap_after_flats() {
  return "Tap when these flats are made";
}
const char* count_again() {
  return "Count again from the start";
}
const char* wait_is_over() {
  return "The wait is over: check now, spin both rods";
}
const char* show_it() {
  return "Show";
}
const char* rods_set() {
  return "Rods set and let bleed down";
}
const char* set_now() {
  return "Set it now";
}
const char* spins_with_drag() {
  return "Spins by the fingers, with drag";
}
const char* play_up_and_down() {
  return "Play up and down";
}

const char* no_proof_beside() {
  return ", no proof";
}

const char* no_bike_named() {
  return "Entries that name no bike";
}
const char* saving() {
  return "Saving …";
}
const char* saved() {
  return "Saved";
}
const char* log_opening() {
  return "Opening the log …";
}
const char* log_read_only() {
  return "The log is open for reading only: nothing can be added here";
}
const char* another_tab_writes() {
  return "Another tab writes the log. Here it can be read, and shows what is added there";
}
const char* write_here() {
  return "Write here";
}
const char* no_bikes_yet() {
  return "No bike yet";
}
const char* no_bikes_help() {
  return "Add the bike you look after, or one you may buy. Its log keeps odometer readings, work done, what "
         "was found and what was measured, on this device";
}
const char* show_demo_bike() {
  return "Show the demo bike (invented)";
}
const char* demo_added() {
  return "Demo bike";
}
const char* remove_demo() {
  return "Remove the demo bike";
}
const char* invented_bike() {
  return "Invented: this bike and its log do not exist";
}
const char* add_bike() {
  return "Add a bike";
}
const char* log_odometer() {
  return "Log odometer";
}
const char* add_an_entry() {
  return "Add an entry …";
}
const char* which_kind() {
  return "What is it?";
}
const char* which_bike() {
  return "To which bike?";
}
const char* change_facts() {
  return "Edit bike";
}
const char* show_kinds() {
  return "Show";
}
const char* all_kinds() {
  return "All";
}
const char* due() {
  return "Due";
}
std::string due_in_list(const std::string& state, const std::string& item) {
  return state + ": " + item;
}
const char* engine_not_entered() {
  return "Enter the engine's years among the facts, and their usual items stand here";
}
const char* nothing_looked_after() {
  return "No checks yet; add one";
}
std::string none_on_this_bike(const std::string& item, const std::string& why) {
  return item + ": none on this bike" + (why.empty() ? "" : "; " + why);
}
std::string show_all_due(std::size_t count) {
  return "Show all " + std::to_string(count);
}
const char* log_it_done() {
  return "Done, log it";
}
const char* put_off() {
  return "Put it off …";
}
const char* own_interval() {
  return "Own interval …";
}
const char* reminders() {
  return "Reminders for your calendar";
}
const char* no_entries() {
  return "No entries here";
}
const char* deleted_state() {
  return "Deleted";
}
const char* removed_state() {
  return "Removed";
}
const char* changed_apart() {
  return "Two versions";
}
const char* changed_apart_help() {
  return "Two devices changed this without knowing of each other. Both are kept until you say which one stands";
}
const char* one_kept() {
  return "One of two kept";
}
const char* bring_back() {
  return "Bring back";
}
const char* brought_back() {
  return "Brought back";
}
const char* correct() {
  return "Correct";
}
const char* delete_entry() {
  return "Delete";
}
const char* show_on_bench() {
  return "Show on the Bench";
}
const char* before() {
  return "Before it was changed";
}
const char* measurement_name() {
  return "Name";
}
const char* day() {
  return "Day";
}
const char* save() {
  return "Save";
}
const char* discard() {
  return "Discard";
}
const char* go_on() {
  return "Go on";
}
std::string unfinished(const std::string& what) {
  return "Not finished: " + what;
}
const char* no_nickname() {
  return "The bike has no nickname";
}
const char* give_nickname() {
  return "Give it a name that you know it by";
}
const char* log_to_a_bike() {
  return "Log to a bike …";
}
const char* add_bike_to_log_this() {
  return "Add a bike to log this …";
}
std::string change_and_state(const std::string& state, const std::string& what) {
  return state + ": " + what;
}
std::string saved_in_log_of(const std::string& bikes) {
  return "Saved in the log of " + bikes;
}
std::string log_to(const std::string& bike) {
  return "Log to " + bike;
}
std::string made(const std::string& when, const std::string& by) {
  constexpr std::size_t to_the_minute = 16;  // 2026-05-03T14:30
  std::string text = "Entered " + when.substr(0, to_the_minute);
  const std::size_t t = text.find('T', std::string("Entered ").size());
  if (t != std::string::npos) text[t] = ' ';
  return by.empty() ? text : text + " by " + by;
}
std::string keep_nth(std::size_t n, std::size_t of) {
  return "Keep " + std::to_string(n) + " of " + std::to_string(of);
}
std::string deleted(const std::string& what) {
  return what + " deleted";
}
std::string removed_bikes(std::size_t count) {
  return "Removed bikes (" + std::to_string(count) + ")";
}
std::string more_remarks(std::size_t count) {
  return "and " + std::to_string(count) + " more";
}
std::string invented_beside(const std::string& text) {
  return text.empty() ? "invented" : text + " · invented";
}

const char* copies() {
  return "Copies";
}
std::string reading_copy(std::size_t bytes) {
  return fmt::format("Reading {} MB …", std::max<std::size_t>(1, bytes >> 20U));
}
const char* copies_help() {
  return "A copy holds every bike with its whole log. Another device takes it in, or this one after a loss";
}
const char* send_copy() {
  return "Send a copy …";
}
const char* save_copy() {
  return "Save a copy";
}
const char* take_in_copy() {
  return "Add from a copy …";
}
const char* drop_copy() {
  return "To take in a copy, drop its file into this window";
}
const char* copy_to_take_in() {
  return "A copy to take in";
}
const char* file_left() {
  return "The file was handed over; look whether it arrived";
}
std::string file_written(const std::string& path) {
  return "The file is " + path;
}
std::string copy_age(std::optional<int> days) {
  if (!days) return "No copy was made here yet";
  if (*days <= 0) return "Last copy: today";
  return *days == 1 ? "Last copy: yesterday" : "Last copy: " + std::to_string(*days) + " days ago";
}
const char* storage_promise(bool given) {
  return given ? "This browser has promised to keep what is saved here"
               : "This browser has not promised to keep what is saved here: it may clear it to make room, some after a "
                 "week without a visit. A copy is safe from that";
}

namespace {
std::string entries(std::size_t count) {
  return std::to_string(count) + (count == 1 ? " entry" : " entries");
}
}  // namespace

const char* show_as_code() {
  return "Show as QR code";
}
std::string code_of(const std::string& name) {
  return name + " as a QR code";
}
const char* code_help() {
  return "Point another phone's camera at it and open the address it shows. What the bike brings is shown there first, "
         "and taken in only when its owner says so";
}
namespace {
// Of what is needed rounded up, of the room for it down.
std::string kilobytes(std::size_t tenths) {
  return std::to_string(tenths / 10) + "." + std::to_string(tenths % 10) + " kB";
}
std::string needed(std::size_t bytes) {
  return kilobytes((bytes + 99) / 100);
}
std::string room_for(std::size_t bytes) {
  return kilobytes(bytes / 100);
}
}  // namespace
std::string code_holds(std::size_t count, std::size_t bytes, std::size_t room) {
  return "Whole log: " + entries(count) + ", " + needed(bytes) + " of the " + room_for(room) +
         " a code holds. The bike stands in the code itself and goes over no network";
}
std::string code_opens(const std::string& address) {
  return "It opens " + address;
}
std::string code_too_big(const std::string& name, std::size_t bytes, std::size_t room) {
  return name + " is too big for a QR code: its log takes " + needed(bytes) +
         ", and a code that phones read well holds " + room_for(room);
}
const char* code_too_big_help() {
  return "Give it on as a file instead; the other device takes it in under Copies";
}
const char* send_bike() {
  return "Send this bike …";
}
const char* save_bike() {
  return "Save this bike as a file";
}
const char* only_this_device() {
  return "This page's address is good on this device only: another phone can't open it";
}
const char* needs_address() {
  return "The other phone opens the code in Camside's page, whose address isn't known here yet. Open Camside in a "
         "browser, copy its address, then take it from here";
}
const char* take_address() {
  return "Take the copied address";
}
const char* take_other_address() {
  return "Take another copied address";
}
const char* no_address_found() {
  return "What was copied last is no web address: it begins with https://";
}
const char* came_by_code() {
  return "A bike from a QR code";
}

std::vector<std::string> would_bring(const records::MergePreview& preview) {
  std::vector<std::string> lines{entries(preview.fresh) + " new", entries(preview.known) + " known: here already",
                                 entries(preview.replaced) + " replaced: corrected or deleted in the copy"};
  if (preview.differing > 0) lines.push_back(entries(preview.differing) + " that differ from yours: both are kept");
  if (preview.apart > 0) lines.push_back(entries(preview.apart) + " changed in both: both stand, to choose from");
  for (const std::string& bike : preview.new_bikes) lines.push_back("New bike: " + bike);
  return lines;
}
std::string take_in(std::size_t count) {
  return count == 0 ? "Nothing new in it" : "Take in " + entries(count);
}
std::string taken_in(std::size_t count) {
  return entries(count) + " taken in";
}
std::string taken_back(std::size_t count) {
  return entries(count) + " taken back";
}

const char* not_saved() {
  return "Not saved";
}
const char* try_again() {
  return "Try again";
}

const char* bikes_coming() {
  return "Each bike with its log, what is next due and what was measured. It is being built; until then the Bench "
         "keeps "
         "the measurements of one job, saved on this device";
}
const char* coming() {
  return "Coming";
}

const char* units() {
  return "Units";
}
const char* theme() {
  return "Theme";
}
const char* text_size() {
  return "Text size";
}
const char* hand() {
  return "Button for hand";
}
const char* screen_on_bench() {
  return "Screen on the Bench";
}
std::string bike_is(const std::string& name) {
  return "Bike: " + name;
}
const char* type_words() {
  return "Type it; Enter keeps it";
}
const char* about() {
  return "Camside measures and judges the cam side of an air-cooled pushrod V-twin. Nothing leaves this device unless "
         "you "
         "send it. Limits name who set them; those from common practice or memory say so";
}
const char* safety() {
  return "The engine maker's manual and the part maker's sheet win over Camside; local rules and a qualified person "
         "win "
         "over all of them. Turn the engine by hand only, plugs out, battery off, fingers and rags clear. If it stops, "
         "stop. After a lifter was loaded do not turn the engine until both rods of that cylinder spin";
}

}  // namespace camside::screens::words
