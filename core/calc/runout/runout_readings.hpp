// From what the needle showed to the shape of the shaft: closing readings apart, turns of the dial asked about,
// indicator angle taken out, stations put together, curve fitted. Part of runout.hpp, whose manual this follows.
// Numbers only: what the readings give to say is worded by runout_findings.hpp.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <tl/expected.hpp>
#include <vector>

#include "calc/runout/runout.hpp"

namespace camside::runout {

// A place where the needle seems to have gone round its dial. Needle readings as typed.
struct DialTurn {
  std::size_t index = 0;   // of the swing or station
  bool taken_out = false;  // else it is asked about
  Length one;
  Length other;
  Length tir;       // as typed
  Length proposed;  // with the turn taken out
};

// All lengths true, in mm; angles in rad.
struct Shape {
  Method method = Method::Swing;
  std::vector<CleanStation> stations;
  std::optional<turn_fit::Fit> fit;
  double lowest_mm = 0.0;
  double highest_mm = 0.0;
  double tir_mm = 0.0;
  double judged_mm = 0.0;  // T*
  std::optional<double> eccentricity_mm;
  std::optional<double> high_spot_rad;
  std::optional<double> ovality_mm;
  std::optional<double> scatter_mm;

  // Scatter between repeated readings of one place.
  double repeat_squares_mm2 = 0.0;
  double repeat_degrees_of_freedom = 0.0;
  double repeat_spread_mm = 0.0;  // largest difference between turns

  std::size_t readings = 0;
  std::size_t places = 0;  // swings, or different directions
  double largest_gap_rad = 0.0;

  std::optional<double> closing_error_mm;
  std::optional<double> tir_without_drift_mm;
  std::optional<double> judged_without_drift_mm;
  std::optional<double> proposed_tir_mm;

  // How it was read.
  std::vector<DialTurn> dial_turns;
  std::size_t closings = 0;       // stations that were only the start again, the last of them at
  std::size_t closing_index = 0;  // this place in the input
  bool all_above_zero = false;
  double two_lobes_mm = 0.0;  // a flat or a keyway under the contact shows so
};

// `path` stands before the fields of a refusal: "" or "other_side.".
tl::expected<Shape, Findings> shape_of(const Readings& readings, const Setup& setup, const std::string& path);

double indicator_cosine(const Setup& setup);

}  // namespace camside::runout
