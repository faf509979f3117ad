// Names, words and ranges of what is known.
#include <array>

#include "knowledge/knowledge.hpp"

namespace camside::knowledge {

namespace {

constexpr std::array<Choice, 1> file_words{{{"knowledge", "What is known of engines"}}};
constexpr std::array<Choice, 3> bound_words{{
    {"at most", "At most"},
    {"at least", "At least"},
    {"up to", "Up to, a prompt to measure"},
}};
constexpr std::array<Choice, 3> basket_words{{
    {"both", "True crank or bent"},
    {"true crank", "True crank: gears"},
    {"bent crank", "Bent crank: chain fall-back"},
}};

constexpr Distance most_distance = Distance::miles(1'000'000.0);

Field id_field() {
  return Field{"id", "Id", "Short permanent name that other places refer to"}.must();
}
Field name_field() {
  return Field{"name", "Name", "The trade's word for it"}.must();
}
Field engines_field() {
  return Field{"engines", "Engines", "Ids of the engines it is about; none: all"};
}
Field source_field() {
  return Field{"source", "Who says so", "Where it comes from"}.must();
}

}  // namespace

void describe(FieldVisitor& v, Item& i) {
  v.value(id_field(), i.id);
  v.value(name_field(), i.name);
  v.list(engines_field(), i.engines);
  v.value(Field{"every", "Every", "Distance"}.above(0.0).at_most(most_distance), i.every);
  v.list(Field{"drives", "Drives", "Ids of the drives it is about; none: all"}, i.drives);
  v.value(Field{"months", "Or every", "Months, whichever comes first"}.at_least(1.0).at_most(1200.0), i.months);
  v.value(Field{"every_worn", "Every, once worn", "Distance, once it was seen worn"}.above(0.0).at_most(most_distance),
          i.every_worn);
  v.value(Field{"risk", "Risk", "Id of the look-over's risk that it prevents; without proof it is due with that"},
          i.risk);
  v.value(Field{"part_of", "Part of", "A name that means this one too"}, i.part_of);
  v.value(Field{"hidden", "Hidden", "A good look at the whole is none at this one"}, i.hidden);
  v.value(Field{"replaced", "Replaced", "Due to be replaced; else to be looked at"}, i.replaced);
  v.value(Field{"note", "Note", "What to know beside it"}, i.note);
  v.source(source_field(), i.source);
}

void describe(FieldVisitor& v, LengthLimit& l) {
  v.value(id_field(), l.id);
  v.value(name_field(), l.name);
  v.list(engines_field(), l.engines);
  v.choice(Field{"bound", "Bound", "Which side of the figure is good"}.must(), l.bound, bound_words);
  v.limit(Field{"limit", "Limit", "The figure with its source"}.above(0.0).at_most(Length::mm(50.0)).must(), l.limit);
  v.value(Field{"note", "Note", "What to know beside it"}, l.note);
}

void describe(FieldVisitor& v, Wait& w) {
  const Field time = Field{"least", "Least", "Shortest wait"}.above(0.0).at_most(Duration::minutes(1440.0)).must();
  Field most = time;
  most.name = "most";
  most.label = "Most";
  most.help = "Longest usual wait";
  v.value(id_field(), w.id);
  v.value(name_field(), w.name);
  v.list(engines_field(), w.engines);
  v.value(time, w.least);
  v.value(most, w.most);
  v.value(Field{"note", "Note", "What to know beside it"}, w.note);
  v.source(source_field(), w.source);
}

void describe(FieldVisitor& v, Fix& f) {
  v.value(id_field(), f.id);
  v.value(name_field(), f.name);
  v.list(engines_field(), f.engines);
  v.value(Field{"text", "What it does", "What it cures and what it leaves"}.must(), f.text);
  v.list(Field{"conditions", "Conditions", "Each must be answered before this way is open"}, f.conditions);
  v.source(source_field(), f.source);
}

void describe(FieldVisitor& v, Part& p) {
  v.value(id_field(), p.id);
  v.value(name_field(), p.name);
  v.list(engines_field(), p.engines);
  v.choice(Field{"basket", "Basket", "Needed with a true crank, with a bent one, or with both"}, p.basket,
           basket_words);
  v.value(Field{"when", "When", "Only then; left out: always"}, p.when);
  v.value(Field{"why", "Why", "Why it is replaced while in there"}, p.why);
  v.source(source_field(), p.source);
}

void describe(FieldVisitor& v, Fact& f) {
  v.value(Field{"text", "Fact", "One sentence of the trade"}.must(), f.text);
  v.list(engines_field(), f.engines);
  v.source(source_field(), f.source);
}

void describe(FieldVisitor& v, Knowledge& k) {
  v.value(Field{"camside", "Version", "Version of the file"}.at_least(1.0).at_most(1.0).must(), k.version);
  v.choice(Field{"kind", "Kind of file", "Always \"knowledge\""}.must(), k.kind, file_words);
  v.value(Field{"title", "Title", "What it is about"}.must(), k.title);
  describe(v, k.book);
  v.list(Field{"items", "Items", "What is looked after, and how often"}, k.items);
  v.list(Field{"limits", "Limits", "Lengths used as defaults; the maker's sheet and the owner win"}, k.limits);
  v.list(Field{"waits", "Waits", "Times used as defaults"}, k.waits);
  v.list(Field{"fixes", "Fixes", "Ways to put the cam side right"}, k.fixes);
  v.list(Field{"parts", "Parts", "Replaced while in there"}, k.parts);
  v.list(Field{"facts", "Facts", "What the trade knows"}, k.facts);
}

}  // namespace camside::knowledge
