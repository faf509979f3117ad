#include "calc/runout/runout_findings.hpp"

#include <algorithm>
#include <utility>

#include "calc/runout/runout_needle.hpp"
#include "calc/runout/runout_remarks.hpp"
#include "fields/path.hpp"
#include "findings/safety.hpp"

namespace camside::runout {

namespace {

namespace say = remarks::runout;

constexpr Length main_bearing_play = Length::inches(0.002);  // common practice, no published source
constexpr Angle leaning = Angle::deg(15.0);
// Common practice, no published source: what such shafts show, and what no shaft in its case can.
constexpr double far_above_usual_mm = 0.020 * 25.4;
constexpr double impossible_mm = 0.3 * 25.4;
constexpr double flat_mm = 0.005 * 25.4;

// ---- set-up ----

const char* place_name(Contact contact) {
  switch (contact) {
    case Contact::BushingBand:
      return "ground band";
    case Contact::Gear:
      return "gear or sprocket";
    case Contact::Splines:
      return "splines";
    case Contact::ThreadOrBolt:
      return "thread or bolt head";
    case Contact::FlatOrAdapter:
      return "flat, keyway or adapter";
  }
  return "";
}

// Only a crank's pinion shaft has a plate that holds it and a band that is its own.
void remark_proof(const Setup& s, Findings& said) {
  const bool crank_out = s.stand == Stand::TruingStand;
  if (s.plate == Plate::On) said.push_back(say::plate_on());
  if (s.contact && *s.contact != Contact::BushingBand) said.push_back(say::wrong_contact(place_name(*s.contact)));
  const bool plate_open = !s.plate && !crank_out;
  if (!s.contact || plate_open) said.push_back(say::setup_not_said(!s.contact, plate_open));
}

// ---- mistakes of typing that the size of the runout gives away ----

std::optional<Finding> odd_size(const Shape& shape, const Setup& setup, const std::string& field) {
  const Length tir = Length::mm(shape.tir_mm);
  if (shape.tir_mm >= impossible_mm) return say::thou_typed_as_inches(field, tir);
  if (shape.tir_mm > far_above_usual_mm) return say::unit_or_zero_lost(field, tir);
  const double graduation_mm = setup.graduation->in_mm() * indicator_cosine(setup);
  if (shape.tir_mm > 0.0 && shape.tir_mm < 0.1 * graduation_mm) {
    return say::finer_than_the_dial(field, tir, *setup.graduation);
  }
  return std::nullopt;
}

void question_size(const Shape& shape, const Setup& setup, bool checked, const std::string& field, Findings& said) {
  if (shape.tir_mm == 0.0) said.push_back(say::needle_did_not_move(field));
  if (shape.proposed_tir_mm) return;  // asked about already, in better words
  const std::optional<Finding> odd = odd_size(shape, setup, field);
  if (odd) said.push_back(checked ? say::readings_confirmed() : *odd);
}

void question_repeats(const Shape& shape, const Setup& setup, const std::string& field, Findings& said) {
  const double graduation_mm = setup.graduation->in_mm() * indicator_cosine(setup);
  if (shape.repeat_spread_mm > 0.5 * graduation_mm + slack_mm) {
    said.push_back(say::turns_disagree(field, Length::mm(shape.repeat_spread_mm), *setup.graduation));
  }
}

// ---- the dial and its turns ----

void remark_dial(const DialTurn& turn, const Setup& setup, const std::string& field, Findings& said) {
  const Length once = Length::mm(needle_turn_mm(setup));
  const bool given = setup.needle_turn.has_value();
  if (turn.taken_out) {
    said.push_back(say::dial_turn_taken_out(field, once, given));
  } else {
    said.push_back(say::needle_may_have_passed_zero(field, turn.one, turn.other, once, given, turn.tir, turn.proposed));
  }
}

void remark_closing(const Setup& setup, const Shape& shape, const std::string& path, Findings& said) {
  const double graduation_mm = setup.graduation->in_mm() * indicator_cosine(setup);
  if (shape.closing_error_mm.value_or(0.0) <= graduation_mm + slack_mm) return;
  said.push_back(say::indicator_moved(path + "closing", Length::mm(*shape.closing_error_mm), *setup.graduation));
}

// ---- the two ways of reading ----

void remark_swings(const Readings& in, const Setup& setup, const Shape& shape, const std::string& path,
                   Findings& said) {
  const auto all = [&](const auto& test) { return std::all_of(in.swings.begin(), in.swings.end(), test); };
  if (in.swings.size() < 2) said.push_back(say::one_swing_only(path + "swings"));
  const bool low_at_zero = all([](const Swing& s) { return s.low.in_mm() == 0.0; });
  if (low_at_zero && !setup.swing_means && in.swings.front().high.in_mm() > 0.0) {
    said.push_back(say::swing_or_offset(item_path(path + "swings", 0), in.swings.front().high));
  }
  if (setup.dial == Dial::Balanced && shape.all_above_zero) said.push_back(say::only_one_side_of_dial(path + "swings"));
  if (setup.swing_means == SwingMeans::OffsetOnly) said.push_back(say::swing_doubled());
}

void remark_stations(const Setup& setup, const Shape& shape, const std::string& path, Findings& said) {
  if (shape.closings > 0) {
    said.push_back(say::closing_reading_taken(item_path(path + "stations", shape.closing_index), shape.closings));
  }
  if (shape.places < 6) said.push_back(say::too_few_to_prove(path + "stations", shape.places));
  if (!shape.ovality_mm) said.push_back(say::ovality_not_determined());
  if (setup.dial == Dial::Balanced && shape.all_above_zero)
    said.push_back(say::only_one_side_of_dial(path + "stations"));
}

void remark_flat(const Shape& shape, bool checked, Findings& said) {
  if (shape.two_lobes_mm <= flat_mm || shape.proposed_tir_mm) return;
  said.push_back(checked ? say::readings_confirmed() : say::read_on_a_flat(Length::mm(shape.two_lobes_mm)));
}

// ---- the other side ----

std::string missing_answers(const Setup& first, const OtherSide& about) {
  std::string text;
  const auto miss = [&](bool missing, const char* what) {
    if (missing) text += (text.empty() ? "" : ", ") + std::string(what);
  };
  miss(!first.seen_from || !about.seen_from, "from which side the angles were seen");
  miss(!about.one_zero.value_or(false), "that both sides count from one zero");
  miss(!about.same_side, "whether the indicators stood on the same side of the engine");
  miss(!about.crankpin, "where the crankpin is");
  miss(!about.support, "how the crank was carried");
  miss(!about.read_at, "whether it was read inside or outside of the supports");
  return text;
}

void remark_parts(const TwoPlanes& t, Findings& said) {
  using Part = TwoPlanes::Part;
  if (t.opposed_is == Part::Scissored) said.push_back(say::wheels_scissored(t.opposed));
  if (t.opposed_is == Part::Unnamed) said.push_back(say::opposed_part_elsewhere(t.opposed, t.opposed_high_spot));
  if (t.common_is == Part::Pinched) said.push_back(say::wheels_pinched_or_spread(true, t.common));
  if (t.common_is == Part::Spread) said.push_back(say::wheels_pinched_or_spread(false, t.common));
  if (t.common_is == Part::SetUp) said.push_back(say::common_part_is_setup(t.common, t.common_high_spot));
}

void remark_planes(const Input& in, const Shape& first, const Result& r, Findings& said) {
  if (!r.two_planes) {
    said.push_back(say::no_high_spot(first.high_spot_rad ? "other_side.swings" : "swings"));
    return;
  }
  const OtherSide& about = *in.other_side;
  if (in.setup.seen_from == SeenFrom::Left) said.push_back(say::angles_turned_round("setup.seen_from"));
  if (about.seen_from == SeenFrom::Left) said.push_back(say::angles_turned_round("other_side.seen_from"));
  if (!about.same_side.value_or(true)) said.push_back(say::signs_turned_round());
  const std::string missing = missing_answers(in.setup, about);
  if (!missing.empty()) {
    said.push_back(say::pattern_not_named(missing));
  } else if (*about.support == Support::VBlocks) {
    said.push_back(say::v_blocks_not_named());
  } else {
    remark_parts(*r.two_planes, said);
  }
}

// What is doubtful about the other side doesn't touch the verdict on this one.
void calm(Findings& findings) {
  for (Finding& f : findings) {
    if (f.severity == Severity::Doubt) f.severity = Severity::Caution;
  }
}

}  // namespace

Findings findings_of_setup(const Input& in) {
  Findings said;
  const Setup& s = in.setup;
  const bool crank = in.subject == Subject::CrankPinionShaft;
  if (crank) remark_proof(s, said);
  if (crank && s.stand != Stand::TruingStand) said.push_back(safety::turn_by_hand());
  if (s.stand == Stand::FrameOrLift) said.push_back(say::stands_on_frame());
  if (!s.play && in.subject != Subject::Gear) said.push_back(say::no_play_given());
  const Length play = indicator_cosine(s) * s.play.value_or(Length{});
  if (play.in_mm() > main_bearing_play.in_mm() + slack_mm) said.push_back(say::main_bearing_first(play));
  if (s.indicator_angle > leaning) said.push_back(say::indicator_leans(s.indicator_angle));
  if (!s.stated_error) said.push_back(say::no_stated_error());
  return said;
}

Findings findings_of_readings(const Readings& in, const Setup& setup, const Shape& shape, bool readings_checked,
                              const std::string& path) {
  Findings said;
  const bool swing = shape.method == Method::Swing;
  const char* const list = swing ? "swings" : "stations";
  for (const DialTurn& turn : shape.dial_turns) {
    remark_dial(turn, setup, item_path(path + list, turn.index, swing ? "" : "reading"), said);
  }
  if (swing) {
    remark_swings(in, setup, shape, path, said);
  } else {
    remark_stations(setup, shape, path, said);
  }
  question_size(shape, setup, readings_checked, path + list, said);
  question_repeats(shape, setup, path + list, said);
  remark_closing(setup, shape, path, said);
  remark_flat(shape, readings_checked, said);
  return said;
}

Findings findings_of_uncertainty(const Setup& setup, const Uncertainty& u) {
  if (!setup.repeatability || !u.from_repeats) return {};
  const Length declared = indicator_cosine(setup) * *setup.repeatability;
  if (u.repeatability <= 1.5 * declared) return {};
  return {say::declared_too_good(declared, u.repeatability)};
}

Findings findings_of_verdict(const Input& in, const Result& r) {
  if (!r.limit) return {say::no_limit()};
  Findings said;
  const bool crank = in.subject == Subject::CrankPinionShaft;
  if (r.pass_line->in_mm() < 0.0) said.push_back(say::nothing_can_pass(r.uncertainty.expanded, r.limit->value));
  if (!in.limit && crank) said.push_back(say::ceiling_not_welcome(r.limit->value));
  if (crank && *r.verdict == Verdict::Outside) {
    said.push_back(say::too_much_for_gears());
    said.push_back(say::bent_shaft_hurts_with_chains());
  }
  if (crank) said.push_back(say::cranks_shift());
  return said;
}

Findings findings_of_other_side(const Input& in, const Shape& first, const Shape& other, const Result& r) {
  Findings said = findings_of_readings(in.other_side->readings, in.setup, other, in.readings_checked, "other_side.");
  remark_planes(in, first, r, said);
  calm(said);
  return said;
}

Findings findings_of_gear(const Input& in, const Result& r) {
  Findings said;
  if (r.eccentricity && !in.at_gear && in.subject == Subject::CrankPinionShaft) said.push_back(say::not_at_the_gear());
  if (in.gear && r.at_gear.shaft_tir && !r.at_gear.total) {
    const Length shaft = *r.at_gear.shaft_tir;
    said.push_back(say::gear_high_spot_unknown(abs(shaft - in.gear->tir), shaft + in.gear->tir));
  }
  if (r.at_gear.lash_swing && *r.at_gear.lash_swing > *r.at_gear.window) {
    said.push_back(say::lash_swing_too_wide(r.judged, *r.at_gear.lash_swing, *r.at_gear.window));
  }
  return said;
}

}  // namespace camside::runout
