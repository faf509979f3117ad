// The calendar file against the rules of RFC 5545; a parser that isn't ours reads it in tests/browser/calendar.mjs.
#include "exchange/calendar.hpp"

#include <gtest/gtest.h>

#include <vector>

namespace camside::records {
namespace {

Date day(int y, unsigned m, unsigned d) {
  return Date{std::chrono::year{y}, std::chrono::month{m}, std::chrono::day{d}};
}

exchange::CalendarEvent event(std::string summary, std::string description = "") {
  return {"brindle-shoes@camside", day(2024, 2, 29), std::move(summary), std::move(description)};
}

std::string file_of(const exchange::CalendarEvent& one, std::string_view now = "2024-05-14T23:20:05.250-05:00") {
  return exchange::calendar_of({&one, 1}, now);
}

std::vector<std::string> lines_of(const std::string& file) {
  std::vector<std::string> lines;
  std::size_t from = 0;
  while (from < file.size()) {
    const std::size_t end = file.find("\r\n", from);
    EXPECT_NE(end, std::string::npos) << "a line without CR LF";
    if (end == std::string::npos) break;
    lines.push_back(file.substr(from, end - from));
    from = end + 2;
  }
  return lines;
}

std::string unfolded(const std::string& file) {
  std::string out = file;
  for (std::size_t at = 0; (at = out.find("\r\n ", at)) != std::string::npos;) out.erase(at, 3);
  return out;
}

bool has(const std::string& file, const std::string& line) {
  return unfolded(file).find(line + "\r\n") != std::string::npos;
}

TEST(Calendar, HoldsWhatTheStandardAsksFor) {
  const std::string file = file_of(event("Brindle: Tensioner shoes", "Overdue"));
  for (const char* line : {"BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//Camside//Due list//EN", "BEGIN:VEVENT",
                           "UID:brindle-shoes@camside", "DTSTART;VALUE=DATE:20240229",
                           "SUMMARY:Brindle: Tensioner shoes", "DESCRIPTION:Overdue", "BEGIN:VALARM", "ACTION:DISPLAY",
                           "TRIGGER:PT9H", "TRIGGER:-P6DT15H", "END:VALARM", "END:VEVENT"})
    EXPECT_TRUE(has(file, line)) << line;
  EXPECT_TRUE(file.ends_with("END:VCALENDAR\r\n"));
}

TEST(Calendar, NowIsWrittenInUtcAcrossMidnight) {
  EXPECT_TRUE(has(file_of(event("x")), "DTSTAMP:20240515T042005Z"));
  EXPECT_TRUE(has(file_of(event("x"), "2025-01-01T00:30:00+02:00"), "DTSTAMP:20241231T223000Z"));
}

TEST(Calendar, MarksOfTheFormatAreEscapedAndNothingElseGetsIn) {
  EXPECT_TRUE(has(file_of(event("a;b,c\\d\ne")), "SUMMARY:a\\;b\\,c\\\\d\\ne"));
  EXPECT_TRUE(has(file_of(event("a\r\nEND:VEVENT\t\x01z")), "SUMMARY:a\\nEND:VEVENT??z"));
}

TEST(Calendar, NoLineIsLongerThan75OctetsAndNoCharacterIsCut) {
  for (std::size_t shift = 0; shift < 8; ++shift) {
    std::string text(shift, 'x');
    for (int i = 0; i < 100; ++i) text += "µ−½";
    const std::string file = file_of(event(text));
    EXPECT_TRUE(has(file, "SUMMARY:" + text));
    for (const std::string& line : lines_of(file)) {
      EXPECT_LE(line.size(), 75U);
      const std::size_t first = line.starts_with(' ') ? 1 : 0;
      ASSERT_LT(first, line.size());
      EXPECT_NE(static_cast<unsigned char>(line[first]) & 0xC0U, 0x80U) << "a character was cut apart";
    }
  }
}

TEST(Calendar, ALineOf75OctetsIsLeftWholeAndOneMoreIsFolded) {
  const std::string fits(75 - 8, 'x');
  EXPECT_NE(file_of(event(fits)).find("SUMMARY:" + fits + "\r\n"), std::string::npos);
  EXPECT_NE(file_of(event(fits + "y")).find("SUMMARY:" + fits + "\r\n y\r\n"), std::string::npos);
}

TEST(Calendar, WithoutEventsItIsStillACalendar) {
  EXPECT_EQ(lines_of(exchange::calendar_of({}, "2024-05-14T10:00:00Z")).back(), "END:VCALENDAR");
}

}  // namespace
}  // namespace camside::records
