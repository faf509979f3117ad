// The pair of one mesh as a combination leaves it, for drawing its teeth.
#include "calc/gear_pick/gear_pick.hpp"

namespace camside::gear_pick {

namespace {

gear_pair::Gear taking_the_rest(const Gear& gear) {
  gear_pair::Gear g;
  g.teeth = gear.teeth;
  g.thickness_from = gear_pair::ThicknessFrom::AsFitted;
  g.tip_diameter = gear.tip_diameter;
  g.root_diameter = gear.root_diameter;
  return g;
}

// One gear's own measure is enough: the other takes what the lash leaves.
gear_pair::Gear measured(const Gear& gear, const Option& option) {
  gear_pair::Gear g = taking_the_rest(gear);
  if (gear.size_means == SizeMeans::OverPins) {
    g.thickness_from = gear_pair::ThicknessFrom::OverPins;
    g.over_pins = option.value;
    g.pin_diameter = gear.pin_diameter;
  } else if (gear.size_means == SizeMeans::Thickness) {
    g.thickness_from = gear_pair::ThicknessFrom::Thickness;
    g.thickness = option.value;
  }
  return g;
}

}  // namespace

tl::expected<gear_pair::Result, Findings> teeth(const Input& in, const Set& set, const Candidate& c, std::size_t mesh) {
  const Set::Joined& joined = set.meshes.at(mesh);
  const Mesh& of = in.meshes.at(static_cast<std::size_t>(joined.mesh));
  const auto gear = [&](std::size_t place) -> const Gear& {
    return in.gears.at(static_cast<std::size_t>(set.gears[place]));
  };
  gear_pair::Input pair;
  pair.gear1 = measured(gear(joined.gear_a), set.choice(c, joined.gear_a));
  pair.gear2 = taking_the_rest(gear(joined.gear_b));
  pair.module = of.module;
  pair.pressure_angle = of.pressure_angle;
  pair.helix = of.helix;
  pair.centre_distance = of.centre_distance;
  pair.sizes_confirmed = of.sizes_confirmed;
  pair.measured_lash = set.lash(c, mesh, State::AsMeasured).low;
  return gear_pair::solve(pair);
}

}  // namespace camside::gear_pick
