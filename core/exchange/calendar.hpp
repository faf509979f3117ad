// Reminders as a calendar file, for the calendar a phone has already. Standard: RFC 5545 (iCalendar): CR LF, lines of
// at most 75 octets folded between characters, texts with backslash, semicolon, comma and line break escaped.
//
// Each event is a whole day (DTSTART;VALUE=DATE, no time zone) with two alarms: nine o'clock on that day and nine
// o'clock seven days before. An event taken in again replaces the one with its UID; it is never counted as busy.
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "units/quantity.hpp"

namespace camside::exchange {

struct CalendarEvent {
  std::string uid;  // the same for the same thing, on every device
  Date day;
  std::string summary;
  std::string description;
};

// `now` as records write it ("2026-05-03T14:30:00+02:00"); it becomes DTSTAMP in UTC.
std::string calendar_of(std::span<const CalendarEvent> events, std::string_view now);

}  // namespace camside::exchange
