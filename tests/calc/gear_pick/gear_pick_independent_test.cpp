// Gears to order by another route: plain nested loops over the sizes, every lash worked out anew from tooth thickness,
// the hot engine as an engine of larger gears, no tables and no straight lines.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>
#include <vector>

#include "calc/gear_pick/gear_pick_engines.hpp"

namespace camside::gear_pick {
namespace {

using namespace engines;

struct Tried {
  double score_mm = 0.0;
  double least_mm = 0.0;
  std::vector<std::size_t> options;
};

// Lash of a pair of thicknesses by textbook formulas in doubles.
double lash_mm(double z1, double z2, double m, double alpha, double a, double s1, double s2) {
  const auto inv = [](double x) { return std::tan(x) - x; };
  const double aw = std::acos(m * (z1 + z2) / 2.0 * std::cos(alpha) / a);
  const double rw1 = a * z1 / (z1 + z2);
  const double rw2 = a * z2 / (z1 + z2);
  const double sw1 = 2.0 * rw1 * (s1 / (m * z1) + inv(alpha) - inv(aw));
  const double sw2 = 2.0 * rw2 * (s2 / (m * z2) + inv(alpha) - inv(aw));
  return 2.0 * std::numbers::pi * a / (z1 + z2) - sw1 - sw2;
}

double thickness_mm(double z, double m, double alpha, double over_pins, double pin) {
  const double odd = static_cast<int>(z) % 2 == 0 ? 1.0 : std::cos(std::numbers::pi / 2.0 / z);
  const double db = m * z * std::cos(alpha);
  const double am = std::acos(db * odd / (over_pins - pin));
  return m * z * (std::tan(am) - am - std::tan(alpha) + alpha - pin / db + std::numbers::pi / z);
}

// A row of three gears: sizes as thicknesses, the fitted one first.
struct Row {
  Input in;
  std::vector<std::vector<double>> thickness;
};

std::size_t mesh_gear(std::size_t mesh, std::size_t side) {
  return mesh + side;
}

Tried tried(const Row& row, const std::vector<std::size_t>& options) {
  Tried t{1e9, 1e9, options};
  const auto& c = row.in.temperatures;
  const double gear_c[] = {20.0, c.coldest_start.in_celsius(), c.warm_up_gears.in_celsius(), c.hot_gears.in_celsius()};
  const double case_c[] = {20.0, c.coldest_start.in_celsius(), c.warm_up_case.in_celsius(), c.hot_case.in_celsius()};
  for (std::size_t mesh = 0; mesh < 2; ++mesh) {
    const Mesh& m = row.in.meshes[mesh];
    const Gear& g1 = row.in.gears[mesh_gear(mesh, 0)];
    const Gear& g2 = row.in.gears[mesh_gear(mesh, 1)];
    const double s1 = row.thickness[mesh_gear(mesh, 0)][options[mesh_gear(mesh, 0)]];
    const double s2 = row.thickness[mesh_gear(mesh, 1)][options[mesh_gear(mesh, 1)]];
    const double swing = (m.lash_high - m.lash_low).in_mm();
    for (int state = 0; state < 4; ++state) {
      const double kg = 1.0 + c.gear1.in_per_kelvin() * (gear_c[state] - 20.0);
      const double kc = 1.0 + c.centre.in_per_kelvin() * (case_c[state] - 20.0);
      const auto lash = [&](double wider) {
        // Runout widens the centre distance; here it stands as thinner teeth of the first gear.
        return lash_mm(g1.teeth, g2.teeth, kg * m.module.in_mm(), m.pressure_angle.in_rad(),
                       kc * m.centre_distance.in_mm(), kg * (s1 - wider), kg * s2);
      };
      const double to_reference = m.module.in_mm() * (g1.teeth + g2.teeth) / 2.0 / m.centre_distance.in_mm();
      const double low = lash(0.0);
      const double high = lash(swing * to_reference);
      t.least_mm = std::min(t.least_mm, low);
      for (const Window& w : m.windows) {
        if (static_cast<int>(w.state) != state) continue;
        if (w.lowest) t.score_mm = std::min(t.score_mm, low - w.lowest->in_mm());
        if (w.highest) t.score_mm = std::min(t.score_mm, w.highest->in_mm() - high);
      }
    }
  }
  return t;
}

std::vector<Tried> all_tried(const Row& row) {
  std::vector<Tried> all;
  for (std::size_t a = 0; a < row.thickness[0].size(); ++a)
    for (std::size_t b = 0; b < row.thickness[1].size(); ++b)
      for (std::size_t c = 0; c < row.thickness[2].size(); ++c) all.push_back(tried(row, {a, b, c}));
  return all;
}

double draw(std::mt19937& random, double low, double high) {
  return std::uniform_real_distribution<double>(low, high)(random);
}

Row any_row(std::mt19937& random) {
  Row row{row_of_three(4), {}};
  for (Gear& g : row.in.gears) {
    const double m = row.in.meshes[0].module.in_mm();
    *g.fitted = *g.fitted + Length::mm(draw(random, -0.03, 0.03));
    row.thickness.emplace_back();
    const auto add = [&](Length size) {
      row.thickness.back().push_back(
          thickness_mm(g.teeth, m, Angle::deg(20.0).in_rad(), size.in_mm(), g.pin_diameter->in_mm()));
    };
    add(*g.fitted);
    for (const Size& s : g.sizes) add(*s.value);
  }
  for (std::size_t i = 0; i < 2; ++i) {
    Mesh& m = row.in.meshes[i];
    m.centre_distance = m.centre_distance + Length::mm(draw(random, -0.02, 0.02));
    m.lash_low = Length::mm(lash_mm(26, 26, m.module.in_mm(), Angle::deg(20.0).in_rad(), m.centre_distance.in_mm(),
                                    row.thickness[i][0], row.thickness[i + 1][0]));
    m.lash_high = m.lash_low + Length::mm(draw(random, 0.0, 0.02));
    m.windows = {{State::AsMeasured, Length::mm(0.012), Length::mm(draw(random, 0.03, 0.08))},
                 {State::FullyHot, {}, Length::mm(0.1)},
                 {State::ColdestStart, Length::mm(draw(random, 0.0, 0.01)), {}}};
  }
  return row;
}

// What one candidate's options are in the plain loops' counting: as fitted first, then the sizes.
std::size_t plain_option(const Set& set, const Candidate& c, std::size_t gear) {
  return static_cast<std::size_t>(set.choice(c, gear).size + 1);
}

TEST(GearPickIndependent, EveryCombinationAgreesWithPlainLoops) {
  std::mt19937 random(20030514);
  int fitted_rows = 0;
  for (int round = 0; round < 40; ++round) {
    const Row row = any_row(random);
    const auto r = solve(row.in);
    ASSERT_TRUE(r) << r.error().front().text;
    const Set& set = r->sets[0];
    const auto all = all_tried(row);
    ASSERT_EQ(all.size(), set.ranked.size());
    std::size_t fits = 0;
    for (const Tried& t : all) fits += t.score_mm >= -1e-9 && t.least_mm > 0.0 ? 1 : 0;
    EXPECT_EQ(set.fitting, fits);
    fitted_rows += fits > 0 ? 1 : 0;
    for (const Candidate& c : set.ranked) {
      const Tried plain = tried(row, {plain_option(set, c, 0), plain_option(set, c, 1), plain_option(set, c, 2)});
      EXPECT_NEAR(c.least_mm, plain.least_mm, 1e-11);
      if (c.standing == Standing::NoLash) continue;
      EXPECT_NEAR(c.score_mm, plain.score_mm, 1e-11);
    }
    if (fits == 0) continue;
    const auto better = [](const Tried& a, const Tried& b) {
      const auto fit = [](const Tried& t) { return t.score_mm >= -1e-9 && t.least_mm > 0.0; };
      return fit(a) != fit(b) ? fit(b) : a.score_mm < b.score_mm;
    };
    EXPECT_NEAR(std::max_element(all.begin(), all.end(), better)->score_mm, set.best().score_mm, tie_mm + 1e-11);
  }
  EXPECT_GT(fitted_rows, 10) << "the rows must try the tool";
  EXPECT_LT(fitted_rows, 40);
}

}  // namespace
}  // namespace camside::gear_pick
