// The entries of one record, made from the fields its calculator describes: labels, units, ranges, choices and errors
// all come from there. What most people need stands first; the rest is behind "Set-up and more". Editing is done in the
// record through records/form.hpp, so what was typed is kept as typed.
#pragma once

#include <functional>
#include <set>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "records/form.hpp"
#include "screens/widgets/keypad.hpp"
#include "screens/widgets/ui.hpp"

namespace camside::screens {

// What a press in the form asks for; carried out after the form was drawn.
struct FormAction {
  enum class What : std::uint8_t { None, Edit, Set, AddItem, RemoveItem, RemoveField, LayOut };
  What what = What::None;
  std::string path;
  std::string text;
  std::size_t index = 0;  // LayOut: how many
};

// A list of readings taken at marks round a turn: twelve of them are typed without typing twelve angles.
struct MarkedList {
  std::string_view list;                  // "stations"
  std::string_view mark;                  // the field of an item that says where: "angle"
  std::vector<std::string_view> columns;  // fields that always stand in the row; others once they are entered
  std::vector<int> counts;                // marks that can be laid out at once
  int whole_deg = 360;                    // where the marks come round again
};

// How a screen arranges its record's form.
struct FormPlan {
  std::vector<std::string_view> front;  // top-level names shown first, in this order
  // Does not apply just now: a top-level name, or a column of a marked list ("readings.outer_lash").
  std::function<bool(std::string_view top, const std::vector<records::FormField>&)> hidden;
  std::vector<MarkedList> marked;

  const MarkedList* marked_list(std::string_view path) const;
};

class EntryForm {
 public:
  FormAction draw(Ui& ui, const std::vector<records::FormField>& form, const FormPlan& plan, const Findings& findings,
                  std::string_view editing, System system);
  // The field that Next goes to: the following one that takes the keypad, in the order drawn. Empty: there is none.
  std::string after(std::string_view path) const;
  std::string first_empty() const;
  void show_all(bool all) { more_ = all; }
  void scroll_to(std::string path) { scroll_to_ = std::move(path); }  // once, when it is drawn next

 private:
  struct Frame;  // what one draw needs everywhere
  using Fields = std::vector<const records::FormField*>;
  void section(Frame& f, std::string_view top);
  void one(Frame& f, std::size_t i);
  void number(Frame& f, const records::FormField& field, float width, const std::string& label, bool bare);
  void number(Frame& f, const records::FormField& field);
  void choice(Frame& f, const records::FormField& field);
  void flag(Frame& f, const records::FormField& field);
  std::size_t group(Frame& f, std::size_t i);
  std::size_t list(Frame& f, std::size_t i);
  void item(Frame& f, const records::FormField& list, std::size_t first, std::size_t last, std::size_t index);
  void item_row(Frame& f, const records::FormField& list, const Fields& fields, std::size_t index);
  void item_rest(Frame& f, std::size_t first, std::size_t last);
  void remove_cross(Frame& f, const records::FormField& list, std::size_t index);
  void offer_marks(Frame& f, const records::FormField& list);
  bool in_row(const Frame& f, const records::FormField& list, const records::FormField& field) const;

  bool more_ = false;
  std::string unfolded_;  // the choice whose possibilities are shown although one was taken
  std::string scroll_to_;
  std::set<std::string> opened_;    // optional groups shown though nothing is entered in them yet
  std::vector<std::string> order_;  // paths that take the keypad, as drawn last
  std::vector<std::string> empty_;  // those of them without an entry
};

}  // namespace camside::screens
