#include "calc/pushrod/pushrod_setting.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "units/format.hpp"

namespace camside::pushrod {

namespace {

constexpr double same_flat = 1e-9;
constexpr Length same_length = Length::mm(1e-9);

// How many flats, freed from the last bits of arithmetic: 2.9999999999999996 turns are 18 flats.
double in_flats(double turns, int flats_per_turn) {
  const double flats = turns * flats_per_turn;
  const double whole = std::round(flats);
  return std::abs(flats - whole) < same_flat ? whole : flats;
}

double turns_of(long flats, int flats_per_turn) {
  return static_cast<double>(flats) / flats_per_turn;
}

Length preload_of(const Input& in, const Setting& s, long flats) {
  return preload_after(s.way, turns_of(flats, in.flats_per_turn), s.per_turn, in.travel);
}

// Of the two whole flats beside the exact answer the one nearer to the middle of the travel; the shallower on a tie.
long round_to_middle(const Input& in, const Setting& s, long below) {
  const Length middle = *in.travel / 2.0;
  const Length low = preload_of(in, s, below);
  const Length high = preload_of(in, s, below + 1);
  const Length gain = abs(low - middle) - abs(high - middle);
  if (gain > same_length) return below + 1;
  if (gain < -same_length) return below;
  return low < high ? below : below + 1;
}

long whole_flats(const Input& in, const Setting& s) {
  const double exact = in_flats(s.exact_turns, in.flats_per_turn);
  const double below = std::floor(exact);
  const long flats = static_cast<long>(below);
  if (exact == below) return flats;
  if (in.travel) return round_to_middle(in, s, flats);
  return exact - below > 0.5 ? flats + 1 : flats;
}

Sense other(Sense sense) {
  return sense == Sense::Clockwise ? Sense::CounterClockwise : Sense::Clockwise;
}

void add_directions(const Input& in, Setting& s) {
  if (!in.thread_hand || !in.adjuster_end) return;
  s.lengthens = lengthening_sense(*in.thread_hand, *in.adjuster_end);
  s.turn = s.way == Way::BottomAndBackOff ? other(*s.lengthens) : *s.lengthens;
}

}  // namespace

std::optional<ThreadPitch> pitch_of(const std::optional<ThreadPitch>& pitch, const std::optional<Length>& ten) {
  if (pitch) return pitch;
  if (ten) return ThreadPitch::mm(ten->in_mm() / 10.0);
  return {};
}

std::optional<Length> advance_per_turn(const Input& in) {
  const auto first = pitch_of(in.pitch, in.ten_threads);
  if (!first) return {};
  const auto second = pitch_of(in.second_pitch, in.second_ten_threads);
  return second ? first->per_turn() + second->per_turn() : first->per_turn();
}

Way way_of(const Input& in) {
  if (in.lifter == Lifter::Solid) return Way::JustFree;
  return in.lifter_state == LifterState::Wet ? Way::LengthenFromZero : Way::BottomAndBackOff;
}

std::optional<Length> wanted_preload(const Input& in) {
  if (in.rods == Rods::Fixed) return {};
  if (in.lifter == Lifter::Solid) return Length{};
  if (in.preload) return in.preload;
  if (in.travel) return *in.travel / 2.0;
  return {};
}

Length preload_after(Way way, double turns, Length per_turn, const std::optional<Length>& travel) {
  const Length moved = turns * per_turn;
  return way == Way::BottomAndBackOff ? travel.value_or(Length{}) - moved : moved;
}

double turns_for(Way way, Length preload, Length per_turn, const std::optional<Length>& travel) {
  const Length move = way == Way::BottomAndBackOff ? travel.value_or(Length{}) - preload : preload;
  return move / per_turn;
}

TurnsAndFlats split_flats(long flats, int flats_per_turn) {
  return {flats / flats_per_turn, flats % flats_per_turn, 0.0};
}

TurnsAndFlats split_turns(double turns, int flats_per_turn) {
  const double flats = in_flats(turns, flats_per_turn);
  const double below = std::floor(flats);
  TurnsAndFlats t = split_flats(static_cast<long>(below), flats_per_turn);
  t.degrees = (flats - below) * 360.0 / flats_per_turn;
  return t;
}

Setting setting_for(const Input& in, Length wanted, Length per_turn) {
  Setting s;
  s.way = way_of(in);
  s.per_turn = per_turn;
  s.per_flat = per_turn / in.flats_per_turn;
  s.wanted = wanted;
  s.exact_turns = std::max(0.0, turns_for(s.way, wanted, per_turn, in.travel));
  s.exact = split_turns(s.exact_turns, in.flats_per_turn);
  s.set_flats = whole_flats(in, s);
  s.set = split_flats(s.set_flats, in.flats_per_turn);
  s.given = preload_of(in, s, s.set_flats);
  add_directions(in, s);
  return s;
}

std::string text_of(const TurnsAndFlats& t, int flats_per_turn) {
  const std::string whole = format_turns_flats(t.turns * flats_per_turn + t.flats, flats_per_turn);
  return t.degrees > 0.0 ? fmt::format("{} {:.4g}°", whole, t.degrees) : whole;
}

}  // namespace camside::pushrod
