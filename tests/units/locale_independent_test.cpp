// Numbers read and write the same under a locale with a decimal comma, C's and C++'s.
#include <gtest/gtest.h>
#include <unistd.h>

#include <clocale>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <locale>
#include <string>

#include "units/format.hpp"

namespace camside {
namespace {

struct CommaAndPoint : std::numpunct<char> {
  char do_decimal_point() const override { return ','; }
  char do_thousands_sep() const override { return '.'; }
  std::string do_grouping() const override { return "\3"; }
};

// A locale made for the test alone, from Debian's package 'locales'.
class CommaLocale : public testing::Test {
 protected:
  void SetUp() override {
    folder_ = std::filesystem::temp_directory_path() / ("camside_locale_" + std::to_string(getpid()));
    std::filesystem::create_directories(folder_);
    const std::string make = "localedef -i de_DE -f UTF-8 '" + (folder_ / "de_DE.UTF-8").string() + "' 2>/dev/null";
    ASSERT_EQ(std::system(make.c_str()), 0) << "no comma locale; scripts/setup installs the package 'locales'";
    setenv("LOCPATH", folder_.c_str(), 1);
    ASSERT_NE(std::setlocale(LC_ALL, "de_DE.UTF-8"), nullptr);
    before_ = std::locale::global(std::locale(std::locale::classic(), new CommaAndPoint));
    std::setlocale(LC_ALL, "de_DE.UTF-8");
  }
  void TearDown() override {
    std::locale::global(before_);
    std::setlocale(LC_ALL, "C");
    unsetenv("LOCPATH");
    std::filesystem::remove_all(folder_);
  }

 private:
  std::filesystem::path folder_;
  std::locale before_;
};

TEST_F(CommaLocale, ChangesNothing) {
  char shown[16];
  std::snprintf(shown, sizeof shown, "%.1f", 1.5);
  ASSERT_STREQ(shown, "1,5") << "the locale is not in force, so the test would prove nothing";

  EXPECT_EQ(parse(Kind::Length, "1.5 in")->base, 38.1);
  EXPECT_EQ(parse(Kind::Length, "1,5 in")->base, 38.1);
  EXPECT_EQ(parse(Kind::Number, "1e-7")->base, 1e-7);
  EXPECT_EQ(format_full(0.07874, *find_unit(Kind::Length, "in")), "0.0031 in");
  EXPECT_EQ(format_decimal(1234.5, 2), "1234.50");
  EXPECT_EQ(format(Distance::miles(41300.0), System::Inch), "41,300 mi");
  EXPECT_EQ(convert(*parse(Kind::Length, "1/16 in"), *find_unit(Kind::Length, "mm"), 4), "1.5875 mm");
  EXPECT_EQ(format_turns_flats(15000, 6), "2500 turns");
}

}  // namespace
}  // namespace camside
