#include "units/unit.hpp"

#include <algorithm>
#include <array>
#include <numbers>
#include <string>

namespace camside {

namespace {

using Names = std::span<const std::string_view>;

constexpr std::string_view mm_names[]{"millimetre", "millimetres", "millimeter", "millimeters", "mm."};
constexpr std::string_view um_names[]{"um",         "μm",          "micron",     "microns",
                                      "micrometre", "micrometres", "micrometer", "micrometers"};
constexpr std::string_view cm_names[]{"centimetre", "centimetres", "centimeter", "centimeters"};
constexpr std::string_view m_names[]{"metre", "metres", "meter", "meters"};
constexpr std::string_view in_names[]{"inch", "inches", "in.", "\"", "″", "”", "''", "′′"};
constexpr std::string_view thou_names[]{"th", "mil", "mils", "thousandth", "thousandths"};
constexpr std::string_view ft_names[]{"foot", "feet", "ft.", "'", "′"};
constexpr std::array length_units{
    Unit{Kind::Length, "mm", mm_names, 1, 1, 0, false, false, 3},
    Unit{Kind::Length, "µm", um_names, 1, 1000, 0, false, false, 1},
    Unit{Kind::Length, "cm", cm_names, 10, 1, 0, false, false, 2},
    Unit{Kind::Length, "m", m_names, 1000, 1, 0, false, false, 3},
    Unit{Kind::Length, "in", in_names, 254, 10, 0, false, false, 4},
    Unit{Kind::Length, "thou", thou_names, 254, 10'000, 0, false, false, 1},
    Unit{Kind::Length, "ft", ft_names, 3048, 10, 0, false, false, 2},
};

constexpr std::string_view rad_names[]{"radian", "radians"};
constexpr std::string_view mrad_names[]{"milliradian", "milliradians"};
constexpr std::string_view degree_names[]{"º", "deg", "deg.", "degree", "degrees"};
constexpr std::string_view turn_names[]{"turns", "t", "rev", "revs", "revolution", "revolutions"};
constexpr std::string_view flat_names[]{"flats", "f"};
constexpr std::string_view arcmin_names[]{"′", "'", "arcminute", "arcminutes", "arc-min"};
constexpr std::string_view arcsec_names[]{"″", "\"", "”", "''", "arcsecond", "arcseconds", "arc-sec"};
constexpr std::array angle_units{
    Unit{Kind::Angle, "rad", rad_names, 1, 1, 0, false, false, 4},
    Unit{Kind::Angle, "mrad", mrad_names, 1, 1000, 0, false, false, 1},
    Unit{Kind::Angle, "°", degree_names, 1, 180, 0, false, true, 1},
    Unit{Kind::Angle, "turn", turn_names, 2, 1, 0, false, true, 2},
    Unit{Kind::Angle, "flat", flat_names, 1, 3, 0, false, true, 1},
    Unit{Kind::Angle, "arcmin", arcmin_names, 1, 10'800, 0, false, true, 1},
    Unit{Kind::Angle, "arcsec", arcsec_names, 1, 648'000, 0, false, true, 0},
};

constexpr std::string_view km_names[]{"kilometre", "kilometres", "kilometer", "kilometers", "kms"};
constexpr std::string_view mi_names[]{"mile", "miles", "mi."};
constexpr std::array distance_units{
    Unit{Kind::Distance, "km", km_names, 1, 1, 0, false, false, 0},
    Unit{Kind::Distance, "mi", mi_names, 1'609'344, 1'000'000, 0, false, false, 0},
    Unit{Kind::Distance, "m", m_names, 1, 1000, 0, false, false, 0},
};

constexpr std::string_view celsius_names[]{"C", "ºC", "℃", "degC", "celsius", "degree celsius", "degrees celsius"};
constexpr std::string_view fahrenheit_names[]{
    "F", "ºF", "℉", "degF", "fahrenheit", "degree fahrenheit", "degrees fahrenheit"};
constexpr std::string_view kelvin_names[]{"kelvin", "kelvins"};
constexpr std::array temperature_units{
    Unit{Kind::Temperature, "°C", celsius_names, 1, 1, 0, false, false, 1},
    Unit{Kind::Temperature, "°F", fahrenheit_names, 5, 9, 3200, false, false, 1},
    Unit{Kind::Temperature, "K", kelvin_names, 1, 1, 27'315, false, false, 1},
};

constexpr std::string_view kelvin_step_names[]{"kelvin", "kelvins", "°C", "C°", "C", "ºC", "℃", "degC", "celsius"};
constexpr std::string_view fahrenheit_step_names[]{"F°", "F", "ºF", "℉", "degF", "fahrenheit"};
constexpr std::array temperature_difference_units{
    Unit{Kind::TemperatureDifference, "K", kelvin_step_names, 1, 1, 0, false, false, 1},
    Unit{Kind::TemperatureDifference, "°F", fahrenheit_step_names, 5, 9, 0, false, false, 1},
};

constexpr std::string_view per_kelvin_names[]{"/K", "per K", "K^-1", "K⁻¹", "1/°C", "/°C", "1/C", "/C", "per °C"};
constexpr std::string_view ppm_per_kelvin_names[]{
    "ppm/°C",  "ppm/C",  "µm/m/K",   "μm/m/K",   "um/m/K",   "µm/(m·K)", "μm/(m·K)", "um/(m·K)",  "µm/m/°C",
    "μm/m/°C", "um/m/C", "×10^-6/K", "x10^-6/K", "·10^-6/K", "×10⁻⁶/K",  "·10⁻⁶/K",  "×10⁻⁶ 1/K", "·10⁻⁶ 1/K"};
constexpr std::string_view per_fahrenheit_names[]{"/°F", "1/F", "/F", "per °F"};
constexpr std::string_view ppm_per_fahrenheit_names[]{"ppm/F",    "µin/in/°F", "μin/in/°F",
                                                      "uin/in/F", "µin/in/F",  "μin/in/F"};
constexpr std::array expansion_units{
    Unit{Kind::Expansion, "1/K", per_kelvin_names, 1, 1, 0, false, false, 8},
    Unit{Kind::Expansion, "ppm/K", ppm_per_kelvin_names, 1, 1'000'000, 0, false, false, 1},
    Unit{Kind::Expansion, "1/°F", per_fahrenheit_names, 9, 5, 0, false, false, 8},
    Unit{Kind::Expansion, "ppm/°F", ppm_per_fahrenheit_names, 9, 5'000'000, 0, false, false, 1},
};

// 1 lbf = 0.45359237 kg · 9.80665 m/s² = 4.4482216152605 N
constexpr std::string_view newton_names[]{"newton", "newtons"};
constexpr std::string_view kilonewton_names[]{"kilonewton", "kilonewtons"};
constexpr std::string_view lbf_names[]{"lb", "lbs", "pound", "pounds", "pound-force"};
constexpr std::array force_units{
    Unit{Kind::Force, "N", newton_names, 1, 1, 0, false, false, 1},
    Unit{Kind::Force, "kN", kilonewton_names, 1000, 1, 0, false, false, 2},
    Unit{Kind::Force, "lbf", lbf_names, 44'482'216'152'605, 10'000'000'000'000, 0, false, false, 1},
};

// 1 lbf·ft = 4.4482216152605 N · 0.3048 m = 1.3558179483314004 N·m; a twelfth of it is 0.1129848290276167 N·m
constexpr std::string_view newton_metre_names[]{"Nm", "newton metre", "newton metres", "newton meter", "newton meters"};
constexpr std::string_view lbf_ft_names[]{"lb·ft",  "lbs·ft",     "ft·lbf",      "ft·lb",
                                          "ft·lbs", "foot-pound", "foot-pounds", "pound-feet"};
constexpr std::string_view lbf_in_names[]{"lb·in",  "lbs·in",     "in·lbf",      "in·lb",
                                          "in·lbs", "inch-pound", "inch-pounds", "pound-inches"};
constexpr std::array torque_units{
    Unit{Kind::Torque, "N·m", newton_metre_names, 1, 1, 0, false, false, 1},
    Unit{Kind::Torque, "lbf·ft", lbf_ft_names, 13'558'179'483'314'004, 10'000'000'000'000'000, 0, false, false, 1},
    Unit{Kind::Torque, "lbf·in", lbf_in_names, 1'129'848'290'276'167, 10'000'000'000'000'000, 0, false, false, 0},
};

// 1 psi = 4.4482216152605 N / (0.0254 m)²
constexpr std::string_view pascal_names[]{"pascal", "pascals"};
constexpr std::string_view kilopascal_names[]{"kilopascal", "kilopascals"};
constexpr std::string_view megapascal_names[]{"N/mm²", "N/mm^2", "N/mm2"};
constexpr std::string_view bar_names[]{"bars"};
constexpr std::string_view psi_names[]{"lbf/in²", "lb/in²", "lbf/in^2", "lb/in^2", "lbf/in2", "lb/in2"};
constexpr std::array pressure_units{
    Unit{Kind::Pressure, "Pa", pascal_names, 1, 1, 0, false, false, 0},
    Unit{Kind::Pressure, "kPa", kilopascal_names, 1000, 1, 0, false, false, 0},
    Unit{Kind::Pressure, "MPa", megapascal_names, 1'000'000, 1, 0, false, false, 2},
    Unit{Kind::Pressure, "bar", bar_names, 100'000, 1, 0, false, false, 2},
    Unit{Kind::Pressure, "psi", psi_names, 44'482'216'152'605, 6'451'600'000, 0, false, false, 1},
};

constexpr std::string_view mm_pitch_names[]{"mm/turn",     "mm/rev",     "millimetre",
                                            "millimetres", "millimeter", "millimeters"};
constexpr std::string_view in_pitch_names[]{"in/turn", "in/rev", "inch", "inches", "\"", "″", "”"};
constexpr std::string_view tpi_names[]{"/in",       "1/in",         "per in",           "per inch",      "threads/in",
                                       "thread/in", "threads/inch", "threads per inch", "threads per in"};
constexpr std::array thread_pitch_units{
    Unit{Kind::ThreadPitch, "mm", mm_pitch_names, 1, 1, 0, false, false, 3},
    Unit{Kind::ThreadPitch, "in", in_pitch_names, 254, 10, 0, false, false, 4},
    Unit{Kind::ThreadPitch, "tpi", tpi_names, 254, 10, 0, true, false, 2},
};

constexpr std::string_view mm_module_names[]{"millimetre", "millimetres", "millimeter", "millimeters"};
constexpr std::string_view diametral_pitch_names[]{"/in", "1/in", "per in", "per inch", "D.P.", "diametral pitch"};
constexpr std::array module_units{
    Unit{Kind::Module, "mm", mm_module_names, 1, 1, 0, false, false, 3},
    Unit{Kind::Module, "DP", diametral_pitch_names, 254, 10, 0, true, false, 3},
};

constexpr std::string_view minute_names[]{"mins", "minute", "minutes", "min."};
constexpr std::string_view second_names[]{"sec", "secs", "second", "seconds"};
constexpr std::string_view hour_names[]{"hr", "hrs", "hour", "hours"};
constexpr std::array duration_units{
    Unit{Kind::Duration, "min", minute_names, 1, 1, 0, false, false, 1},
    Unit{Kind::Duration, "s", second_names, 1, 60, 0, false, false, 0},
    Unit{Kind::Duration, "h", hour_names, 60, 1, 0, false, false, 2},
};

constexpr std::array number_units{Unit{Kind::Number, "", Names{}, 1, 1, 0, false, false, 4}};
constexpr std::array money_units{Unit{Kind::Money, "", Names{}, 1, 1, 0, false, false, 2}};

bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}
char lower(char c) {
  return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

// "N·m", "N m", "N-m" -> "Nm": blanks go, and product signs between two letters.
std::string without_joints(std::string_view spelling) {
  constexpr std::array<std::string_view, 5> joints{" ", "·", "⋅", "*", "-"};
  std::string plain;
  for (std::size_t i = 0; i < spelling.size();) {
    const auto joint = std::find_if(joints.begin(), joints.end(),
                                    [&](std::string_view j) { return spelling.substr(i).starts_with(j); });
    const std::size_t next = joint == joints.end() ? spelling.size() : i + joint->size();
    const bool between =
        next < spelling.size() && !plain.empty() && is_letter(plain.back()) && is_letter(spelling[next]);
    if (joint != joints.end() && (*joint == " " || between))
      i = next;
    else
      plain.push_back(spelling[i++]);
  }
  return plain;
}

std::string in_small_letters(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(), lower);
  return text;
}

template <class Equal>
const Unit* find_by(Kind kind, Equal equal) {
  for (const Unit& unit : units_of(kind))
    if (equal(unit.symbol) || std::any_of(unit.aliases.begin(), unit.aliases.end(), equal)) return &unit;
  return nullptr;
}

}  // namespace

double Unit::to_base(double value) const {
  const long double factor = static_cast<long double>(numerator) * (times_pi ? std::numbers::pi_v<long double> : 1.0L);
  const long double below = static_cast<long double>(denominator);
  if (reciprocal) return static_cast<double>(factor / (below * static_cast<long double>(value)));
  const long double zero = static_cast<long double>(zero_hundredths) / 100.0L;
  return static_cast<double>((static_cast<long double>(value) - zero) * factor / below);
}

double Unit::from_base(double base) const {
  const long double factor = static_cast<long double>(numerator) * (times_pi ? std::numbers::pi_v<long double> : 1.0L);
  const long double below = static_cast<long double>(denominator);
  if (reciprocal) return static_cast<double>(factor / (below * static_cast<long double>(base)));
  const long double zero = static_cast<long double>(zero_hundredths) / 100.0L;
  return static_cast<double>(static_cast<long double>(base) * below / factor + zero);
}

std::span<const Unit> units_of(Kind kind) {
  switch (kind) {
    case Kind::Number:
      return number_units;
    case Kind::Length:
      return length_units;
    case Kind::Angle:
      return angle_units;
    case Kind::Distance:
      return distance_units;
    case Kind::Temperature:
      return temperature_units;
    case Kind::TemperatureDifference:
      return temperature_difference_units;
    case Kind::Expansion:
      return expansion_units;
    case Kind::Force:
      return force_units;
    case Kind::Torque:
      return torque_units;
    case Kind::Pressure:
      return pressure_units;
    case Kind::ThreadPitch:
      return thread_pitch_units;
    case Kind::Module:
      return module_units;
    case Kind::Duration:
      return duration_units;
    case Kind::Money:
      return money_units;
  }
  return number_units;
}

const Unit* find_unit(Kind kind, std::string_view spelling) {
  const auto same = [&](std::string_view name) { return name == spelling; };
  if (const Unit* unit = find_by(kind, same)) return unit;
  const std::string plain = without_joints(spelling);
  const auto alike = [&](std::string_view name) { return without_joints(name) == plain; };
  if (const Unit* unit = find_by(kind, alike)) return unit;
  const std::string small = in_small_letters(plain);
  return find_by(kind, [&](std::string_view name) { return in_small_letters(without_joints(name)) == small; });
}

const Unit& preferred_unit(Kind kind, System system) {
  const bool inch = system == System::Inch;
  const auto spelled = [&](std::string_view in_inches, std::string_view metric) -> const Unit& {
    return *find_unit(kind, inch ? in_inches : metric);
  };
  switch (kind) {
    case Kind::Length:
      return spelled("in", "mm");
    case Kind::Angle:
      return spelled("°", "°");
    case Kind::Distance:
      return spelled("mi", "km");
    case Kind::Temperature:
      return spelled("°F", "°C");
    case Kind::TemperatureDifference:
      return spelled("°F", "K");
    case Kind::Expansion:
      return spelled("ppm/K", "ppm/K");
    case Kind::Force:
      return spelled("lbf", "N");
    case Kind::Torque:
      return spelled("lbf·ft", "N·m");
    case Kind::Pressure:
      return spelled("psi", "bar");
    case Kind::ThreadPitch:
      return spelled("tpi", "mm");
    case Kind::Module:
      return spelled("DP", "mm");
    case Kind::Number:
    case Kind::Duration:
    case Kind::Money:
      break;
  }
  return units_of(kind).front();
}

std::string_view name_of(Kind kind) {
  switch (kind) {
    case Kind::Number:
      return "number";
    case Kind::Length:
      return "length";
    case Kind::Angle:
      return "angle";
    case Kind::Distance:
      return "distance";
    case Kind::Temperature:
      return "temperature";
    case Kind::TemperatureDifference:
      return "temperature difference";
    case Kind::Expansion:
      return "expansion";
    case Kind::Force:
      return "force";
    case Kind::Torque:
      return "torque";
    case Kind::Pressure:
      return "pressure";
    case Kind::ThreadPitch:
      return "thread pitch";
    case Kind::Module:
      return "module";
    case Kind::Duration:
      return "duration";
    case Kind::Money:
      return "money";
  }
  return "";
}

}  // namespace camside
