// Names, words and ranges of everything a look-over asks for.
#include <array>

#include "calc/look_over/look_over.hpp"

namespace camside::look_over {

namespace {

constexpr std::array<Choice, 4> said_words{
    {{"yes", "Yes"}, {"no", "No"}, {"didn't see", "Didn't see"}, {"none", "There is nothing to look at"}}};
constexpr std::array<Choice, 3> touched_words{{
    {"cold", "Touched first: stone cold"},
    {"warm", "Touched first: warm"},
    {"not touched", "Not touched before it ran"},
}};

constexpr Distance most_distance = Distance::miles(1'000'000.0);
constexpr double most_money = 1e6;

Field money(std::string_view name, std::string_view label, std::string_view help) {
  return Field{name, label, help}.at_least(0.0).at_most(most_money);
}

}  // namespace

void describe(FieldVisitor& v, Answer& a) {
  v.value(Field{"question", "Question", "Id of the question"}.must(), a.question);
  v.choice(Field{"said", "Answer", "What you saw or were told with proof; \"didn't see\" is an answer too"}.must(),
           a.said, said_words);
  v.value(Field{"reading", "Odometer on the bill", "Of the odometer when it was done, for an answer that is proof"}
              .at_least(0.0)
              .at_most(most_distance),
          a.reading);
  v.value(Field{"day", "Day on the bill", "When it was done; the month will do"}, a.day);
}

void describe(FieldVisitor& v, OwnCost& c) {
  v.value(Field{"risk", "Risk", "Id of what it is the cost of"}.must(), c.risk);
  v.value(money("best", "Best", "Least it can cost you").must(), c.best);
  v.value(money("likely", "Likely", "What it usually costs you").must(), c.likely);
  v.value(money("worst", "Worst", "Most it can cost you").must(), c.worst);
}

void describe(FieldVisitor& v, OwnLife& l) {
  v.value(Field{"risk", "Risk", "Id of what the part is"}.must(), l.risk);
  v.value(Field{"shape", "Shape β", "Of the life curve: 1 by chance, 2 to 4 by wear"}
              .at_least(least_shape)
              .at_most(most_shape)
              .must(),
          l.shape);
  v.value(Field{"characteristic_life", "Characteristic life", "By which 63.2 % have failed"}
              .at_least(least_characteristic_life)
              .at_most(most_characteristic_life)
              .must(),
          l.characteristic_life);
  v.source(Field{"source", "Whose list", "Where the curve comes from"}.must(), l.source);
}

void describe(FieldVisitor& v, Input& in) {
  v.value(Field{"year", "Model year", "From the papers or the frame number; leave out when not known"}
              .at_least(1900.0)
              .at_most(2100.0),
          in.year);
  v.value(Field{"engine", "Engine", "Id of the engine when you know it, or of your own; left out: by model year"},
          in.engine);
  v.value(Field{"drive", "Cam drive now", "Id of what turns the cams, or \"not known\"; left out: as it was built"},
          in.drive);
  v.value(Field{"odometer", "Odometer", "Full miles or km, without the tenths"}.at_least(0.0).at_most(most_distance),
          in.odometer);
  v.value(money("asking", "Asking price", "What the seller wants, in your own currency"), in.asking);
  v.choice(Field{"touched", "Engine touched first",
                 "A hand near the barrels before anything else; warm voids the cold start"},
           in.touched, touched_words);
  v.list(Field{"answers", "Answers", "One for each question; what is left out was not seen"}, in.answers);
  v.list(Field{"costs", "Your figures", "Own costs; they replace the made-up ones"}, in.costs);
  v.list(Field{"lives", "Your life curves", "From your own failures and survivors; they replace the book's chances"},
         in.lives);
  v.value(
      Field{"money_confirmed", "Made-up prices confirmed", "You looked at the made-up costs and take them as yours"},
      in.money_confirmed);
  v.value(Field{"currency", "Currency", "Stands beside every sum, such as $ or kr"}, in.currency);
  v.value(Field{"today", "Day of the look-over", "No bill can be of a later day"}, in.today);
  v.group(Field{"known", "What is known", "Engines, questions and risks the look-over counts with"}.must(), in.known);
}

}  // namespace camside::look_over
