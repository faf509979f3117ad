#include "calc/backlash/backlash_readings.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>

#include "base/stable_sort.hpp"
#include "calc/backlash/backlash_remarks.hpp"
#include "fields/path.hpp"

namespace camside::backlash {

namespace {

constexpr double deg = 3.14159265358979323846 / 180.0;
constexpr double same_position_rad = 0.5 * deg;

// Where teeth of this gear can be: down to the base circle, up to a generous profile shift.
struct Band {
  double low_mm;
  double high_mm;
  bool holds(double r_mm) const { return r_mm > low_mm && r_mm <= high_mm; }
};
Band flank_band(const involute::Form& g, double module_mm) {
  return {std::max(g.base_mm, g.reference_mm - 1.5 * module_mm), g.reference_mm + 2.2 * module_mm};
}

tl::expected<double, Finding> flank_angle_rad(const Input& in, const involute::Form& g) {
  const double r = in.contact_radius->in_mm();
  const Band band = flank_band(g, in.module.in_mm());
  const auto angle = involute::angle_at_rad(g.base_mm, r);
  if (!band.holds(r) || !angle) {
    return tl::unexpected(remarks::radius_off_the_flank("contact_radius", *in.contact_radius, Length::mm(band.low_mm),
                                                        Length::mm(band.high_mm), band.holds(0.5 * r)));
  }
  return *angle;
}

double contact_factor(const Input& in, double flank_rad, double helix_b_rad) {
  const double lean = in.indicator_angle.value_or(Angle{}).in_rad();
  switch (*in.contact) {
    case Contact::ToothFlank:
      return std::cos(flank_rad - lean) / std::cos(flank_rad);
    case Contact::FlankSquare:
      return 1.0 / (std::cos(flank_rad) * std::cos(helix_b_rad));
    case Contact::ArmFace:
      break;
  }
  return std::cos(lean);
}

// Angle of the crank as entered: 0-720°, before it is folded.
double entered_rad(const Reading& r) {
  return r.angle->in_rad() + (r.turn.value_or(1) - 1) * 0.5 * cycle_rad;
}

double folded(double rad) {
  const double rest = std::fmod(rad, cycle_rad);
  const double up = rest < 0.0 ? rest + cycle_rad : rest;
  return up < cycle_rad ? up : 0.0;
}

// 720° as a rule; 360° when nobody read beyond it, for then one turn was taken for the whole.
double closing_angle_rad(const Input& in) {
  double most = 0.0;
  for (const Reading& r : in.readings) {
    most = std::max(most, entered_rad(r));
  }
  const bool within_one_turn = in.readings.size() > 2 && most < 0.5 * cycle_rad + same_position_rad;
  return within_one_turn ? 0.5 * cycle_rad : cycle_rad;
}

Findings check_turns(const Input& in) {
  Findings out;
  if (in.readings.empty()) {
    out.push_back(remarks::no_readings());
  }
  const auto with_turn = [](const Reading& r) { return r.turn.has_value(); };
  const auto given = std::count_if(in.readings.begin(), in.readings.end(), with_turn);
  for (std::size_t i = 0; i < in.readings.size(); ++i) {
    const Reading& r = in.readings[i];
    if (given > 0 && !r.turn) {
      out.push_back(remarks::turn_said_for_some(reading_path(i, "turn")));
      break;
    }
    if (r.turn && r.angle->in_rad() > 0.5 * cycle_rad + 1e-9) {
      out.push_back(remarks::angle_beyond_its_turn(reading_path(i, "angle"), *r.angle));
    }
  }
  return out;
}

std::vector<Point> points_of(const Input& in, const Conversion& c) {
  const auto start = start_reading(in);
  const double closing_rad = closing_angle_rad(in);
  const double sense = in.turned == Turned::Forward ? 1.0 : -1.0;
  std::vector<Point> out(in.readings.size());
  for (std::size_t i = 0; i < out.size(); ++i) {
    const Reading& r = in.readings[i];
    const double entered = entered_rad(r);
    const double crank = folded(sense * entered);
    out[i] = {.reading = i,
              .crank = Angle::rad(crank),
              .turn = crank < 0.5 * cycle_rad ? 1 : 2,
              .lash = c.per_reading * *r.reading - c.per_outer * r.outer_lash.value_or(Length{}),
              .closing = start && *start != i && std::abs(entered - closing_rad) < same_position_rad};
  }
  return out;
}

std::vector<const Point*> by_angle(const std::vector<Point>& points) {
  std::vector<const Point*> out;
  for (const Point& p : points) {
    if (!p.closing) {
      out.push_back(&p);
    }
  }
  sort_stably(out.begin(), out.end(), [](const Point* a, const Point* b) {
    return a->crank != b->crank ? a->crank < b->crank : a->reading < b->reading;
  });
  // A position that straddles the mark (719.9° beside 0°) is brought together at the end.
  const auto near_mark =
      std::find_if(out.begin(), out.end(), [](const Point* p) { return p->crank.in_rad() >= same_position_rad; });
  const bool straddles = !out.empty() && out.back()->crank.in_rad() > cycle_rad - same_position_rad;
  if (straddles && near_mark != out.begin()) {
    std::rotate(out.begin(), near_mark, out.end());
  }
  return out;
}

double apart(const Point& a, const Point& b) {
  const double d = std::abs(a.crank.in_rad() - b.crank.in_rad());
  return std::min(d, cycle_rad - d);
}

void add_position(Round& round, std::vector<const Point*>::const_iterator first,
                  std::vector<const Point*>::const_iterator last) {
  const auto n = static_cast<double>(last - first);
  double sum = 0.0;
  for (auto p = first; p != last; ++p) {
    sum += (*p)->lash.in_mm();
  }
  const double mean = sum / n;
  for (auto p = first; p != last; ++p) {
    const double off = (*p)->lash.in_mm() - mean;
    round.repeat_squares_mm2 += off * off;
  }
  const auto count = static_cast<std::size_t>(last - first);
  round.repeat_degrees_of_freedom += count - 1;
  round.positions.push_back({(*first)->crank.in_rad(), mean, count});
}

void group(Round& round) {
  const std::vector<const Point*> sorted = by_angle(round.points);
  auto first = sorted.begin();
  while (first != sorted.end()) {
    const auto last =
        std::find_if(first, sorted.end(), [&](const Point* p) { return apart(**first, *p) > same_position_rad; });
    add_position(round, first, last);
    first = last;
  }
}

void measure_gap(Round& round) {
  const auto& p = round.positions;
  for (std::size_t i = 0; i < p.size(); ++i) {
    const double to = folded(p[(i + 1) % p.size()].crank_rad - p[i].crank_rad);
    const double gap = p.size() == 1 ? cycle_rad : to;
    if (gap > round.largest_gap_rad) {
      round.largest_gap_rad = gap;
      round.gap_from_rad = p[i].crank_rad;
    }
  }
}

}  // namespace

Touched touched(const Input& in, const gear_pair::Frame& f) {
  return in.rocked == Rocked::Gear2 ? Touched{f.gear2, f.operating2_mm} : Touched{f.gear1, f.operating1_mm};
}

std::optional<std::size_t> start_reading(const Input& in) {
  for (std::size_t i = 0; i < in.readings.size(); ++i) {
    if (entered_rad(in.readings[i]) < same_position_rad) {
      return i;
    }
  }
  return std::nullopt;
}

std::string reading_path(std::size_t i, const char* field) {
  return item_path("readings", i, field);
}

tl::expected<Conversion, Finding> conversion(const Input& in, const gear_pair::Frame& f) {
  const Touched gear = touched(in, f);
  Conversion c;
  if (*in.contact != Contact::ArmFace) {
    const auto angle = flank_angle_rad(in, gear.form);
    if (!angle) {
      return tl::unexpected(angle.error());
    }
    c.flank_rad = *angle;
  }
  c.contact = contact_factor(in, c.flank_rad, gear.form.helix_b_rad);
  c.per_reading = c.contact * gear.operating_mm / in.contact_radius->in_mm();
  if (*in.access == Access::Subtraction) {
    c.per_outer = gear.operating_mm / in.outer->operating_radius->in_mm();
  }
  return c;
}

tl::expected<Round, Findings> round_of(const Input& in, const Conversion& c) {
  if (Findings refused = check_turns(in); !refused.empty()) {
    return tl::unexpected(std::move(refused));
  }
  Round round;
  round.points = points_of(in, c);
  group(round);
  measure_gap(round);
  return round;
}

}  // namespace camside::backlash
