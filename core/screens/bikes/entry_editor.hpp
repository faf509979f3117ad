// One entry of the log while it is being written: a new one or a correction. The form comes from the kind's fields.
// Nothing is in the log before "Save"; an entry that can't be taken stays here with what is wrong.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "log/log_entry.hpp"
#include "screens/widgets/entry_form.hpp"
#include "screens/widgets/keypad.hpp"
#include "screens/platform.hpp"

namespace camside::screens {

class EntryEditor {
 public:
  // `at_once`: the keypad opens on the first field, and Done on the keypad saves. `unit` is what distances start in.
  void begin(records::Entry draft, const Unit* unit);
  void begin_at_once(records::Entry draft, const Unit* unit);
  void close();
  bool active() const { return active_; }
  bool changed() const { return active_ && draft_.record.json != begun_.record.json; }
  const records::Entry& draft() const { return draft_; }
  bool keypad_open() const { return active_ && keypad_.is_open(); }
  bool holding() const { return keypad_.holding(); }
  std::string title() const { return records::label_of_entry(draft_.kind()); }

  void draw(Ui& ui, Platform& platform, System system);
  float bottom_height(const Ui& ui) const;
  void draw_bottom(Ui& ui, Platform& platform, System system, float height);
  std::optional<records::Entry> take_finished();  // once, after it was saved

 private:
  void start(records::Entry draft, const Unit* unit);
  void refresh();
  void look_again();
  const records::FormField* field(std::string_view path) const;
  void edit(const std::string& path, Platform& platform, System system);
  bool edit_in_text_field(const records::FormField& field, Platform& platform);
  void edit_day();
  void set(const std::string& path, const std::string& text);
  void carry_out(const FormAction& action, Platform& platform, System system);
  void take_typed(Platform& platform, System system, KeypadEvent event);
  void save();
  void draw_day(Ui& ui);
  void draw_refusals(Ui& ui);

  records::Entry draft_;
  records::Entry begun_;  // as it was before anything was typed
  EntryForm form_;
  FormPlan plan_;
  Keypad keypad_;
  std::vector<records::FormField> fields_;
  Findings findings_;  // paths as the form has them
  const Unit* unit_ = nullptr;
  bool active_ = false;
  bool at_once_ = false;
  bool open_first_ = false;
  bool stale_ = true;
  bool tried_ = false;  // to save: what is missing is said from then on
  bool finished_ = false;
};

}  // namespace camside::screens
