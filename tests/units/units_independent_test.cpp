// Conversions by other people's arithmetic: the GNU units program, and exact fractions in Python. Both are packages
// that scripts/setup installs; where one is missing the test fails, since a check that did not run proves nothing.
#include <gtest/gtest.h>
#include <unistd.h>

#include <array>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <memory>
#include <random>
#include <string>
#include <vector>

#include "units/parse.hpp"

namespace camside {
namespace {

std::string output_of(const std::string& command) {
  const std::unique_ptr<FILE, int (*)(FILE*)> pipe(popen(command.c_str(), "r"), &pclose);
  std::string text;
  std::array<char, 4096> buffer{};
  while (pipe && std::fgets(buffer.data(), static_cast<int>(buffer.size()), pipe.get())) text += buffer.data();
  return text;
}

struct Conversion {
  Kind kind;
  const char* ours;
  const char* have;  // the same for GNU units
  const char* want;  // our base unit for GNU units
};

constexpr Conversion conversions[]{
    {Kind::Length, "1 in", "1 inch", "mm"},
    {Kind::Length, "0.0031 in", "0.0031 inch", "mm"},
    {Kind::Length, "3.1 thou", "3.1 thou", "mm"},
    {Kind::Length, "3.1 mil", "3.1 mil", "mm"},
    {Kind::Length, "1-3/8\"", "(1+3|8) inch", "mm"},
    {Kind::Length, "7/64 in", "7|64 inch", "mm"},
    {Kind::Length, "78.7 µm", "78.7 micron", "mm"},
    {Kind::Length, "2.5 cm", "2.5 cm", "mm"},
    {Kind::Length, "0.2 m", "0.2 m", "mm"},
    {Kind::Length, "2.25 ft", "2.25 ft", "mm"},
    {Kind::Angle, "3.5 °", "3.5 degree", "radian"},
    {Kind::Angle, "2 turns 3 flats", "(2+3|6) turn", "radian"},
    {Kind::Angle, "2 turns 30°", "(2 turn + 30 degree)", "radian"},
    {Kind::Angle, "3° 30′ 15″", "(3 degree + 30 arcmin + 15 arcsec)", "radian"},
    {Kind::Angle, "12 mrad", "12e-3 radian", "radian"},
    {Kind::Distance, "41,300 mi", "41300 mile", "km"},
    {Kind::Distance, "950 m", "950 m", "km"},
    {Kind::Temperature, "90 °F", "tempF(90)", "tempC"},
    {Kind::Temperature, "-13.5 °F", "tempF(-13.5)", "tempC"},
    {Kind::Temperature, "300 K", "tempK(300)", "tempC"},
    {Kind::TemperatureDifference, "90 °F", "90 degF", "K"},
    {Kind::Expansion, "23.1 ppm/K", "23.1e-6 / K", "1/K"},
    {Kind::Expansion, "6.5 ppm/°F", "6.5e-6 / degF", "1/K"},
    {Kind::Force, "12.5 lbf", "12.5 lbf", "N"},
    {Kind::Force, "1.5 kN", "1.5 kN", "N"},
    {Kind::Torque, "30 lbf·ft", "30 lbf ft", "N m"},
    {Kind::Torque, "90 lbf·in", "90 lbf inch", "N m"},
    {Kind::Pressure, "35 psi", "35 psi", "Pa"},
    {Kind::Pressure, "2.4 bar", "2.4 bar", "Pa"},
    {Kind::Pressure, "240 kPa", "240 kPa", "Pa"},
    {Kind::ThreadPitch, "32 tpi", "1|32 inch", "mm"},
    {Kind::ThreadPitch, "18 tpi", "1|18 inch", "mm"},
    {Kind::Module, "16 DP", "1|16 inch", "mm"},
    {Kind::Duration, "90 s", "90 s", "min"},
    {Kind::Duration, "1 h 30 min", "1.5 hour", "min"},
};

TEST(GnuUnits, Agrees) {
  ASSERT_NE(output_of("units --version").find("GNU Units"), std::string::npos)
      << "the program 'units' is missing; scripts/setup installs it";
  for (const auto& [kind, ours, have, want] : conversions) {
    const std::string answer = output_of(std::string("units -t -o %.16g '") + have + "' '" + want + "'");
    const double theirs = std::strtod(answer.c_str(), nullptr);
    const auto entered = parse(kind, ours);
    ASSERT_TRUE(entered) << ours;
    EXPECT_NEAR(entered->base, theirs, 2e-15 * std::fabs(theirs)) << ours << " for GNU units: " << answer;
    EXPECT_NE(theirs, 0.0) << answer;
  }
}

// Random texts, each of them read by Python's exact fractions and rounded there: the doubles must be the same bits.
class ExactFractions : public testing::Test {
 protected:
  ExactFractions() : folder_(std::filesystem::temp_directory_path() / ("camside_units_" + std::to_string(getpid()))) {
    std::filesystem::create_directories(folder_);
  }
  ~ExactFractions() override { std::filesystem::remove_all(folder_); }
  ExactFractions(const ExactFractions&) = delete;
  ExactFractions& operator=(const ExactFractions&) = delete;

  std::string random_number() {
    const auto upto = [this](int n) { return std::uniform_int_distribution<int>(0, n)(random_); };
    std::string digits;
    for (int n = 1 + upto(upto(3) == 0 ? 38 : 7); n > 0; --n) digits.push_back(static_cast<char>('0' + upto(9)));
    const int form = upto(9);
    if (form == 0) return digits.substr(0, 20) + "/" + std::to_string(1 + upto(127));
    if (form == 1) return std::to_string(upto(40)) + "-" + std::to_string(upto(6)) + "/" + std::to_string(7 + upto(57));
    if (form < 8) digits.insert(static_cast<std::size_t>(upto(static_cast<int>(digits.size()))), ".");
    if (form == 2) digits += "e" + std::to_string(upto(500) - 250);
    return digits;
  }
  std::string random_line() {
    const auto kinds = {Kind::Length,    Kind::Angle,   Kind::Distance, Kind::Temperature, Kind::TemperatureDifference,
                        Kind::Expansion, Kind::Force,   Kind::Torque,   Kind::Pressure,    Kind::ThreadPitch,
                        Kind::Module,    Kind::Duration};
    const Kind kind = data(kinds)[random_() % kinds.size()];
    const auto units = units_of(kind);
    const Unit& unit = units[random_() % units.size()];
    std::string number = random_number();
    if (unit.reciprocal) number.insert(0, "1");
    return std::to_string(static_cast<int>(kind)) + "\t" + (random_() % 4 == 0 ? "-" : "") + number + "\t" +
           std::string(unit.symbol);
  }
  std::vector<double> pythons_answers(const std::vector<std::string>& lines) {
    const auto file = folder_ / "texts";
    std::ofstream out(file);
    for (const std::string& line : lines) out << line << '\n';
    out.close();
    std::vector<double> answers;
    const std::string all =
        output_of("python3 '" CAMSIDE_SOURCE_DIR "/tests/units/exact_values.py' '" + file.string() + "'");
    for (const char* at = all.c_str(); *at != '\0';) {
      char* end = nullptr;
      answers.push_back(std::strtod(at, &end));
      if (end == at) break;
      at = end + 1;
    }
    return answers;
  }

  std::mt19937_64 random_{20030514};
  std::filesystem::path folder_;
};

TEST_F(ExactFractions, GiveTheSameBits) {
  std::vector<std::string> lines;
  for (int i = 0; i < 5000; ++i) lines.push_back(random_line());
  const std::vector<double> expected = pythons_answers(lines);
  ASSERT_EQ(expected.size(), lines.size()) << "python3 is missing or stopped; scripts/setup installs it";
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const std::size_t tab = lines[i].find('\t');
    std::string text = lines[i].substr(tab + 1);
    text.replace(text.find('\t'), 1, " ");
    const auto entered = parse(static_cast<Kind>(std::stoi(lines[i])), text);
    ASSERT_TRUE(entered) << text << ": " << entered.error().reason;
    EXPECT_EQ(entered->base, expected[i]) << text;
  }
}

}  // namespace
}  // namespace camside
