// Inputs that several backlash tests share: the two meshes of the demo engine, read well.
#pragma once

#include <cmath>
#include <string>
#include <vector>

#include "calc/backlash/backlash.hpp"
#include "oracle/backlash_rows.hpp"

namespace camside::backlash {

inline void read_at(Input& in, const std::vector<double>& degrees, const std::vector<double>& thou) {
  in.readings.clear();
  for (std::size_t i = 0; i < degrees.size(); ++i)
    in.readings.push_back({Angle::deg(degrees[i]), {}, Length::thou(thou[i]), {}});
}

inline Window window_of(double min_thou, double max_thou) {
  return {Length::thou(min_thou),
          Length::thou(max_thou),
          Source::makers_sheet("sheet of the gear set"),
          {Place::InCase, true, Engine::Cold, Spots::RoundTheTurn, Line::PitchLine}};
}

// Crank mesh, 20 and 40 teeth of 20 per inch, arm of 1.25 in, everything asked for answered.
inline Input crank_mesh() {
  Input in;
  in.mesh = Mesh::Crank;
  in.teeth1 = 20;
  in.teeth2 = 40;
  in.module = Module::diametral_pitch(20.0);
  in.centre_distance = Length::mm(38.15);
  in.access = Access::Direct;
  in.loads_off = true;
  in.contact = Contact::ArmFace;
  in.contact_radius = Length::inches(1.25);
  in.indicator_angle = Angle{};
  in.graduation = Length::thou(0.1);
  in.play1 = Length::thou(0.2);
  in.play2 = Length::thou(0.1);
  in.method = {Place::InCase, true, Engine::Cold};
  read_at(in, {0, 90, 180, 270, 360, 450, 540, 630}, {1.5, 1.8, 1.4, 1.1, 1.3, 1.6, 1.2, 0.9});
  return in;
}

// Mesh behind the plate, 30 and 30 teeth, an arm on the front cam.
inline Input plate_mesh() {
  Input in = crank_mesh();
  in.mesh = Mesh::BehindPlate;
  in.teeth1 = in.teeth2 = 30;
  in.centre_distance = Length::mm(38.12);
  in.contact_radius = Length::inches(1.0);
  read_at(in, {0, 120, 240, 360, 480, 600}, {1.25, 1.55, 1.9, 2.0, 1.7, 1.3});
  return in;
}

inline Input of_row(const oracle::CycleRow& row) {
  Input in = row.crank ? crank_mesh() : plate_mesh();
  in.teeth1 = row.teeth1;
  in.teeth2 = row.teeth2;
  in.centre_distance = Length::mm(row.centre_mm);
  in.contact_radius = Length::mm(row.radius_mm);
  in.indicator_angle = Angle::deg(row.indicator_deg);
  in.graduation = Length::mm(row.graduation_mm);
  in.play1 = in.play2 = Length::thou(row.play_thou);
  read_at(in, row.degrees, row.thou);
  return in;
}

// Readings that follow a known curve exactly, in lash; the arm turns them into needle swings.
template <class LashMm>
void read_curve(Input& in, const std::vector<double>& degrees, double per_reading, const LashMm& lash_mm) {
  in.readings.clear();
  for (const double d : degrees)
    in.readings.push_back({Angle::deg(d), {}, Length::mm(lash_mm(Angle::deg(d).in_rad()) / per_reading), {}});
}

}  // namespace camside::backlash
