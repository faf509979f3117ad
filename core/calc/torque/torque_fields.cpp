// Names, words and ranges of everything a torque asks for.
#include <array>

#include "calc/torque/torque.hpp"

namespace camside::torque {

namespace {

constexpr std::array<Choice, 2> thread_words{{
    {"inch", "Inch thread"},
    {"metric", "Metric thread"},
}};
constexpr std::array<Choice, 2> lubricated_words{{
    {"dry", "Dry"},
    {"oiled", "Oil or locking liquid on it"},
}};

constexpr Torque most_torque = Torque::newton_metres(1000.0);
constexpr Length most_length = Length::mm(2000.0);

}  // namespace

void describe(FieldVisitor& v, Extension& e) {
  v.value(Field{"wrench", "Wrench", "From the square drive to the middle of the grip mark"}
              .at_least(Length::mm(50.0))
              .at_most(most_length)
              .must(),
          e.wrench);
  v.value(Field{"length", "Extension", "From the square drive to the middle of the fastener"}
              .above(0.0)
              .at_most(most_length)
              .must(),
          e.length);
  v.value(Field{"angle", "Angle", "Between extension and wrench: 0° straight out, 90° square, 180° folded back"}
              .at_least(0.0)
              .at_most(Angle::deg(180.0)),
          e.angle);
}

void describe(FieldVisitor& v, Bolt& b) {
  v.value(Field{"diameter", "Diameter", "Nominal, over the thread"}
              .at_least(Length::mm(2.0))
              .at_most(Length::mm(50.0))
              .must(),
          b.diameter);
  v.value(Field{"pitch", "Thread", "Threads per inch, or the pitch in mm"}
              .at_least(ThreadPitch::mm(0.2))
              .at_most(ThreadPitch::mm(6.0))
              .must(),
          b.pitch);
  v.choice(Field{"thread", "Kind of thread", "Settles the stress area"}, b.thread, thread_words);
  v.choice(Field{"lubricated", "Threads are", "What the torque is meant for: the same torque pulls harder when oiled"},
           b.lubricated, lubricated_words);
  v.value(Field{"nut_factor", "Nut factor K", "Of the thread compound's maker; left out: 0.20 dry, 0.15 oiled"}
              .at_least(0.05)
              .at_most(0.5),
          b.nut_factor);
  v.value(Field{"blind_hole", "Blind hole", "It ends in the casting, as in case and cover"}, b.blind_hole);
}

void describe(FieldVisitor& v, Input& in) {
  v.value(Field{"fastener", "Fastener", "Such as cam plate bolts"}, in.fastener);
  v.value(Field{"torque", "Torque wanted", "At the fastener"}.above(0.0).at_most(most_torque).must(), in.torque);
  v.source(Field{"source", "Who says so", "The sheet or manual the torque comes from"}, in.source);
  v.group(Field{"extension", "Extension", "A crow's foot or adapter between wrench and fastener"}, in.extension);
  v.value(Field{"scale_end", "Wrench goes up to", "The greatest torque of its scale"}.above(0.0).at_most(most_torque),
          in.scale_end);
  v.group(Field{"bolt", "Bolt", "For its preload, and to catch a torque in the wrong unit"}, in.bolt);
}

}  // namespace camside::torque
