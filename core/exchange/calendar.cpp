#include "exchange/calendar.hpp"

#include <fmt/format.h>

#include <chrono>

#include "base/harmless.hpp"
#include "records/iso_time.hpp"

namespace camside::exchange {

namespace {

constexpr std::size_t most_octets = 75;

bool continues_character(char c) {
  return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U;
}

// A control character other than the line break may not stand in a text.
std::string escaped(std::string_view text) {
  std::string out;
  for (const char c : harmless_lines(text)) {
    if (c == '\n') {
      out += "\\n";
    } else if (c != '\r') {
      if (c == '\\' || c == ';' || c == ',') out += '\\';
      out += c;
    }
  }
  return out;
}

// One property, folded so that no character is cut apart; a line that goes on starts with a blank, which counts.
void add_line(std::string& out, std::string_view line) {
  std::size_t room = most_octets;
  while (line.size() > room) {
    std::size_t cut = room;
    while (cut > 1 && continues_character(line[cut])) --cut;
    out.append(line.substr(0, cut)).append("\r\n ");
    line.remove_prefix(cut);
    room = most_octets - 1;
  }
  out.append(line).append("\r\n");
}

std::string day_text(Date day) {
  return fmt::format("{:04}{:02}{:02}", static_cast<int>(day.year()), static_cast<unsigned>(day.month()),
                     static_cast<unsigned>(day.day()));
}

std::string moment_text(std::string_view now) {
  using namespace std::chrono;
  const sys_time<milliseconds> moment{milliseconds(records::utc_milliseconds(now).value_or(0))};
  const auto midnight = floor<days>(moment);
  const long second = static_cast<long>(floor<seconds>(moment - midnight).count());
  return fmt::format("{}T{:02}{:02}{:02}Z", day_text(Date(midnight)), second / 3600, second / 60 % 60, second % 60);
}

void add_alarm(std::string& out, std::string_view trigger, const std::string& words) {
  for (const auto line : {"BEGIN:VALARM", "ACTION:DISPLAY"}) add_line(out, line);
  add_line(out, fmt::format("TRIGGER:{}", trigger));
  add_line(out, "DESCRIPTION:" + words);
  add_line(out, "END:VALARM");
}

void add_event(std::string& out, const CalendarEvent& event, const std::string& stamp) {
  const std::string words = escaped(event.summary);
  add_line(out, "BEGIN:VEVENT");
  add_line(out, "UID:" + escaped(event.uid));
  add_line(out, "DTSTAMP:" + stamp);
  add_line(out, "DTSTART;VALUE=DATE:" + day_text(event.day));
  add_line(out, "SUMMARY:" + words);
  if (!event.description.empty()) add_line(out, "DESCRIPTION:" + escaped(event.description));
  add_line(out, "TRANSP:TRANSPARENT");
  add_alarm(out, "PT9H", words);
  add_alarm(out, "-P6DT15H", words);
  add_line(out, "END:VEVENT");
}

}  // namespace

std::string calendar_of(std::span<const CalendarEvent> events, std::string_view now) {
  std::string out;
  const std::string stamp = moment_text(now);
  for (const auto line :
       {"BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//Camside//Due list//EN", "CALSCALE:GREGORIAN", "METHOD:PUBLISH"})
    add_line(out, line);
  for (const CalendarEvent& event : events) add_event(out, event, stamp);
  add_line(out, "END:VCALENDAR");
  return out;
}

}  // namespace camside::exchange
