// Engines that the tests of gears to order share; all invented.
#pragma once

#include <cmath>
#include <string>
#include <vector>

#include "calc/gear_pair/gear_pair.hpp"
#include "calc/gear_pick/gear_pick.hpp"

namespace camside::gear_pick::engines {

inline Gear gear(std::string name, std::string shaft, int teeth) {
  Gear g;
  g.name = std::move(name);
  g.shaft = std::move(shaft);
  g.teeth = teeth;
  return g;
}

inline void offer(Gear& g, SizeMeans means, Length fitted, const std::vector<Length>& sizes) {
  g.size_means = means;
  g.fitted = fitted;
  int number = 0;
  for (const Length v : sizes) g.sizes.push_back({g.name + " " + std::to_string(++number), v, {}, {}});
}

inline Mesh mesh(std::string name, std::string a, std::string b, Module module, Length centre) {
  Mesh m;
  m.name = std::move(name);
  m.gear_a = std::move(a);
  m.gear_b = std::move(b);
  m.module = module;
  m.centre_distance = centre;
  m.uncertainty = Length::mm(0.001);
  m.window_source = Source::makers_sheet("gear sheet");
  m.measured_by_window_method = true;
  return m;
}

inline void all_of_one_metal(Input& in) {
  in.temperatures.gear1 = in.temperatures.gear2 = in.temperatures.centre = Expansion{};
}

// One mesh of two like gears of module 1 on their reference centre distance.
inline Input one_mesh(double low_mm, double high_mm, double lowest_mm, double highest_mm) {
  Input in;
  in.shafts = {{"rear cam", Role::Cam}, {"front cam", Role::Cam}};
  in.gears = {gear("rear", "rear cam", 40), gear("front", "front cam", 40)};
  in.meshes = {mesh("inner mesh", "rear", "front", Module::mm(1.0), Length::mm(40.0))};
  in.meshes[0].lash_low = Length::mm(low_mm);
  in.meshes[0].lash_high = Length::mm(high_mm);
  in.meshes[0].windows = {{State::AsMeasured, Length::mm(lowest_mm), Length::mm(highest_mm)}};
  all_of_one_metal(in);
  return in;
}

// `count` sizes a step apart around a middle.
inline std::vector<Length> around(double middle_mm, double step_mm, int count) {
  std::vector<Length> sizes;
  for (int i = 0; i < count; ++i) sizes.push_back(Length::mm(middle_mm + step_mm * (i - count / 2)));
  return sizes;
}

// The two-cam gear drive: two separate meshes, `count` sizes for each of the four gears, over pins.
inline Input two_cam_engine(int count) {
  Input in;
  in.shafts = {{"crank", Role::Crank}, {"rear cam", Role::Cam}, {"front cam", Role::Cam}};
  in.gears = {gear("pinion", "crank", 17), gear("rear outer", "rear cam", 34), gear("rear inner", "rear cam", 26),
              gear("front inner", "front cam", 26)};
  const Module module = Module::diametral_pitch(16.0);
  const double pin_mm = 1.728 / 16.0 * 25.4;
  for (Gear& g : in.gears) {
    const auto form = involute::form(g.teeth, module, Angle::deg(20.0), Angle{});
    const double s = involute::thickness_from_shift_mm(form, 0.0) - 0.01;
    const double m = involute::pin_seat(form, s, pin_mm)->over_pins_mm;
    offer(g, SizeMeans::OverPins, Length::mm(m), around(m, 0.0254, count));
    g.pin_diameter = Length::mm(pin_mm);
    g.joint = g.name == "pinion" ? Joint::Bolted : Joint::Pressed;
  }
  in.meshes = {mesh("outer mesh", "pinion", "rear outer", module, Length::inches(25.5 / 16.0 + 0.001)),
               mesh("inner mesh", "rear inner", "front inner", module, Length::inches(26.0 / 16.0 + 0.001))};
  for (Mesh& m : in.meshes) {
    m.lash_low = Length::thou(1.2);
    m.lash_high = Length::thou(2.0);
    m.uncertainty = Length::thou(0.02);
    m.windows = {{State::AsMeasured, Length::thou(0.5), Length::thou(1.6)}};
  }
  return in;
}

// A row of three gears: the middle one meshes with both neighbours, all combinations are joined.
inline Input row_of_three(int count) {
  Input in = two_cam_engine(count);
  in.shafts = {{"first cam", Role::Cam}, {"second cam", Role::Cam}, {"third cam", Role::Cam}};
  in.gears = {in.gears[2], in.gears[2], in.gears[3]};
  in.gears[0].name = "first";
  in.gears[0].shaft = "first cam";
  in.gears[1].name = "second";
  in.gears[1].shaft = "second cam";
  in.gears[2].name = "third";
  in.gears[2].shaft = "third cam";
  in.meshes = {in.meshes[1], in.meshes[1]};
  in.meshes[0].name = "first mesh";
  in.meshes[0].gear_a = "first";
  in.meshes[0].gear_b = "second";
  in.meshes[1].name = "second mesh";
  in.meshes[1].gear_a = "second";
  in.meshes[1].gear_b = "third";
  in.meshes[1].lash_low = Length::thou(1.9);
  in.meshes[1].lash_high = Length::thou(2.4);
  return in;
}

}  // namespace camside::gear_pick::engines
