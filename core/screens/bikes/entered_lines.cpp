#include "screens/bikes/entered_lines.hpp"

#include "records/form.hpp"
#include "screens/widgets/shown.hpp"
#include "screens/words.hpp"
#include "units/parse.hpp"

namespace camside::screens {

using records::FieldSort;
using records::FormField;

namespace {

std::string choice_text(const FormField& field) {
  for (const Choice& choice : field.choices)
    if (choice.name == field.text) return std::string(choice.label);
  return field.text;
}

std::string number_text(const FormField& field, System system) {
  if (field.kind == Kind::Number || field.kind == Kind::Money) return field.text;
  const auto entered = parse(field.kind, field.text);
  if (!entered || !entered->unit || entered->unit->symbol == preferred_unit(field.kind, system).symbol)
    return field.text;
  return field.text + " (" + shown(field.kind, entered->base, system) + ")";
}

std::string text_shown(const FormField& field, System system) {
  switch (field.sort) {
    case FieldSort::Choice:
      return choice_text(field);
    case FieldSort::Number:
      return number_text(field, system);
    case FieldSort::Flag:
      return field.text == "true" ? words::yes() : words::no();
    case FieldSort::Text:
    case FieldSort::Date:
    case FieldSort::Group:
    case FieldSort::List:
      break;
  }
  return field.text;
}

}  // namespace

std::vector<EnteredLine> entered_lines(const records::Record& record, std::span<const RecordKind> among,
                                       System system) {
  std::vector<EnteredLine> lines;
  std::string list;  // the label of the list a nameless item stands in
  for (const FormField& field : records::form_of(record, among)) {
    if (field.sort == FieldSort::List) list = field.field.label;
    if (field.sort == FieldSort::Group || field.sort == FieldSort::List || !field.entered) continue;
    const bool nameless = field.field.label.empty();
    lines.push_back({nameless ? list : std::string(field.field.label), text_shown(field, system)});
  }
  return lines;
}

}  // namespace camside::screens
