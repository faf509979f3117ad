#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>

#include "calc/gear_pick/gear_pick_engines.hpp"

namespace camside::gear_pick {
namespace {

using namespace engines;

double between(double low, double high) {
  return low + (high - low) * (*rc::gen::inRange(0, 1'000'001)) / 1e6;
}

Result solved(const Input& in) {
  auto r = solve(in);
  if (!r) RC_FAIL(r.error().front().text);
  return *r;
}

// What a gear of this size over pins is thick.
Length thickness_of(const Gear& g, const Mesh& m, Length over_pins) {
  const auto form = involute::form(g.teeth, m.module, m.pressure_angle, m.helix);
  return Length::mm(*involute::thickness_from_pins_mm(form, over_pins.in_mm(), g.pin_diameter->in_mm()));
}

// Lash of two gears worked out from their sizes alone, in a state: every gear and the centre distance grown, then anew.
Length lash_from_sizes(const Mesh& m, const Gear& a, Length size_a, const Gear& b, Length size_b, double grown_gears,
                       double grown_centre) {
  const auto hot = gear_pair::frame(a.teeth, b.teeth, grown_gears * m.module, m.pressure_angle, m.helix,
                                    grown_centre * m.centre_distance)
                       .value();
  return gear_pair::lash_of(hot, grown_gears * thickness_of(a, m, size_a), grown_gears * thickness_of(b, m, size_b));
}

// Engine whose fitted lash is exactly what its sizes make.
Input true_engine() {
  Input in = two_cam_engine(*rc::gen::inRange(2, 6));
  for (std::size_t i = 0; i < 2; ++i) {
    Mesh& m = in.meshes[i];
    Gear& a = in.gears[2 * i];
    Gear& b = in.gears[2 * i + 1];
    m.centre_distance = m.centre_distance + Length::mm(between(-0.01, 0.03));
    a.fitted = *a.fitted + Length::mm(between(-0.02, 0.02));
    b.fitted = *b.fitted + Length::mm(between(-0.02, 0.02));
    m.lash_low = m.lash_high = lash_from_sizes(m, a, *a.fitted, b, *b.fitted, 1.0, 1.0);
  }
  return in;
}

RC_GTEST_PROP(GearPickProperties, FittingWhatWasPickedGivesWhatWasPredicted, ()) {
  const Input in = true_engine();
  const Result r = solved(in);
  for (std::size_t i = 0; i < 2; ++i) {
    const Set& set = r.sets[i];
    const Candidate& c =
        set.ranked[static_cast<std::size_t>(*rc::gen::inRange(0, static_cast<int>(set.ranked.size())))];
    for (const State s : lash_temperature::all_states) {
      const auto k = lash_temperature::growth_in(in.temperatures, s);
      const Length fitted = lash_from_sizes(in.meshes[i], in.gears[2 * i], set.choice(c, 0).value, in.gears[2 * i + 1],
                                            set.choice(c, 1).value, k.gear1, k.centre);
      RC_ASSERT(std::abs((set.lash(c, 0, s).low - fitted).in_mm()) < 1e-11);
    }
  }
}

RC_GTEST_PROP(GearPickProperties, PickingAgainAfterFittingLeavesIt, ()) {
  Input in = true_engine();
  const Result r = solved(in);
  for (std::size_t i = 0; i < 2; ++i) {
    const Set& set = r.sets[i];
    in.gears[2 * i].fitted = set.choice(set.best(), 0).value;
    in.gears[2 * i + 1].fitted = set.choice(set.best(), 1).value;
    in.meshes[i].lash_low = set.lash(set.best(), 0, State::AsMeasured).low;
    in.meshes[i].lash_high = set.lash(set.best(), 0, State::AsMeasured).high;
  }
  const Result again = solved(in);
  for (std::size_t i = 0; i < 2; ++i) {
    RC_ASSERT(std::abs(again.sets[i].best().score_mm - r.sets[i].best().score_mm) < 2.0 * tie_mm);
    RC_ASSERT(again.sets[i].best().index == 0U);
  }
}

RC_GTEST_PROP(GearPickProperties, BetterAlwaysStandsAboveWorse, ()) {
  Input in = row_of_three(4);
  in.meshes[0].lash_low = Length::thou(between(-1.0, 4.0));
  in.meshes[0].lash_high = in.meshes[0].lash_low + Length::thou(between(0.0, 1.5));
  const Set set = solved(in).sets[0];
  for (std::size_t i = 1; i < set.ranked.size(); ++i) {
    const Candidate& above = set.ranked[i - 1];
    const Candidate& below = set.ranked[i];
    RC_ASSERT(above.standing == Standing::Fits || below.standing != Standing::Fits);
    if ((above.standing == Standing::Fits) == (below.standing == Standing::Fits))
      RC_ASSERT(above.score_mm >= below.score_mm - tie_mm);
  }
}

RC_GTEST_PROP(GearPickProperties, AThickerGearNeverGivesMoreLash, ()) {
  const Input in = row_of_three(3);
  const Set set = solved(in).sets[0];
  const Candidate& a = set.ranked[static_cast<std::size_t>(*rc::gen::inRange(0, static_cast<int>(set.ranked.size())))];
  const Candidate& b = set.ranked[static_cast<std::size_t>(*rc::gen::inRange(0, static_cast<int>(set.ranked.size())))];
  for (std::size_t m = 0; m < set.meshes.size(); ++m) {
    const auto sum = [&](const Candidate& c) {
      return set.choice(c, set.meshes[m].gear_a).thicker + set.choice(c, set.meshes[m].gear_b).thicker;
    };
    if (sum(a) > sum(b))
      RC_ASSERT(set.lash(a, m, State::AsMeasured).low < set.lash(b, m, State::AsMeasured).low + Length::mm(1e-12));
  }
}

RC_GTEST_PROP(GearPickProperties, MoreSizesOnOfferAreNeverWorse, ()) {
  Input in = true_engine();
  const Result all = solved(in);
  in.gears[0].sizes.pop_back();
  const Result fewer = solved(in);
  RC_ASSERT(all.sets[0].best().score_mm >= fewer.sets[0].best().score_mm - tie_mm);
}

}  // namespace
}  // namespace camside::gear_pick
