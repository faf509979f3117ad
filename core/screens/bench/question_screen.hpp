// One question, one screen: the answer at the top, the drawing, the entries, and the Working one tap away. What differs
// from question to question is its look: the plan of its form, its drawing, and an extra part where the work needs one.
#pragma once

#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

#include "records/kinds.hpp"
#include "records/measurement.hpp"
#include "screens/bench/extra_part.hpp"
#include "screens/platform.hpp"
#include "screens/widgets/answer.hpp"
#include "screens/widgets/entry_form.hpp"
#include "screens/widgets/ui.hpp"
#include "screens/widgets/zoom.hpp"
#include "storage/current_job.hpp"

namespace camside::screens {

struct QuestionLook {
  std::string_view kind;
  FormPlan plan;
  // Height wanted at a width, 0 when there is nothing to draw; and the drawing itself.
  std::function<float(const Ui&, const Solved&, float width)> drawing_height;
  std::function<void(const Ui&, const Solved&, System, const Area&)> drawing;
  std::function<std::unique_ptr<ExtraPart>()> extra;
  bool free_corner = false;  // nothing is drawn in its upper right one while the words have their usual size
  bool scales = true;        // the drawing may be made as low as there is room; false: it is a list and scrolls
};

class QuestionScreen {
 public:
  explicit QuestionScreen(QuestionLook look);

  std::string_view kind() const { return look_.kind; }
  const Solved& solved() const { return solved_; }
  Keypad& keypad() { return keypad_; }
  std::optional<double> next_wake_s() const { return extra_ ? extra_->next_wake_s() : std::nullopt; }
  std::optional<double> next_alarm_s() const { return extra_ ? extra_->next_alarm_s() : std::nullopt; }
  bool ran_out(double now_s) { return extra_ && extra_->ran_out(now_s); }
  bool keypad_open() const { return keypad_.is_open(); }

  // What stands beside the middle and is left out of it.
  struct Beside {
    bool working = false;
    bool drawing = false;
    std::function<void(const records::Record&)> below_drawing{};  // what can be done with the measurement shown
  };
  // The scrolling middle.
  void draw_middle(Ui& ui, storage::CurrentJob& job, Platform& platform, System system, const Beside& beside);
  // Where the screen has room beside the middle: the drawing, or the extra part of a question without one.
  void draw_side(Ui& ui, storage::CurrentJob& job, Platform& platform, System system, float height);
  // The one main action, or the keypad.
  void draw_bottom(Ui& ui, storage::CurrentJob& job, Platform& platform, System system, float height);
  float bottom_height(const Ui& ui) const;
  bool complete() const { return solved_.solved && form_.first_empty().empty(); }
  void forget();                       // the job was replaced: look again
  void choose(const std::string& id);  // of several of this kind

 private:
  records::Record* record(storage::CurrentJob& job);
  void refresh(const records::Record* record);
  const Unit* starting_unit(Kind kind, System system);
  void edit(std::string_view path, Platform& platform, storage::CurrentJob& job, System system);
  void carry_out(const FormAction& action, storage::CurrentJob& job, Platform& platform, System system);
  void commit(storage::CurrentJob& job);
  const records::FormField* refused_field() const;
  void next(storage::CurrentJob& job, Platform& platform, System system);
  bool next_item(storage::CurrentJob& job, Platform& platform, System system);
  void lay_out(records::Record& of, std::string_view list, std::size_t count);
  bool continue_marks(records::Record& of, const MarkedList& marked);
  void draw_extra(Ui& ui, storage::CurrentJob& job, Platform& platform, System system);
  void draw_chooser(Ui& ui, storage::CurrentJob& job);
  void draw_cautions_before(Ui& ui) const;
  void draw_start(Ui& ui, storage::CurrentJob& job, Platform& platform);
  void draw_drawing(Ui& ui, System system, float most_height);
  void draw_form(Ui& ui, storage::CurrentJob& job, Platform& platform, System system);
  void draw_rest(Ui& ui, System system, bool working_beside);
  void draw_working_here(Ui& ui);
  void draw_undo(Ui& ui, storage::CurrentJob& job);
  records::Record& add_record(storage::CurrentJob& job, Platform& platform, bool example);

  QuestionLook look_;
  int version_ = 0;  // counts how often it was solved anew
  std::unique_ptr<ExtraPart> extra_;
  EntryForm form_;
  Keypad keypad_;
  Zoom zoom_;  // of the drawing
  std::vector<records::FormField> fields_;
  Solved solved_;
  std::map<Kind, const Unit*> units_;  // typed last in this screen; who reads in thou keeps reading in thou
  System units_of_ = System::Inch;
  std::string shown_id_;
  std::string chosen_id_;  // of several of this kind; empty: the newest
  bool stale_ = true;
  bool working_open_ = false;
  bool notes_open_ = false;
  bool scroll_to_working_ = false;
  bool scroll_to_field_ = false;
  records::JsonValue undo_;  // the entries before the last removal
  std::string undo_text_;
  std::string undo_id_;
};

}  // namespace camside::screens
