// What is entered in each kind of entry, typed, for whoever works with a log: entered_as<entered::Service>(entry).
// How the fields are called and what they may hold stands in log_entry_kinds.cpp.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "calc/inspection_due/inspection_due.hpp"
#include "fields/field.hpp"
#include "log/log_entry.hpp"

namespace camside::records {

namespace entered {

enum class ClockUnit : std::uint8_t { Miles, Kilometres };
enum class Proof : std::uint8_t { None, Hearsay, OwnEntry, Photo, Paper };
enum class Grade : std::uint8_t { Good, Worn, AtLimit, Failed, NotSeen };
constexpr bool proves(Proof proof) {
  return proof >= Proof::OwnEntry;
}

struct Facts {
  std::string nickname;
  std::optional<inspection_due::EngineYears> engine;
  std::string own_engine;
  std::optional<inspection_due::CamDrive> drive;  // left out: as built
  std::optional<int> model_year;
  std::optional<ClockUnit> odometer_unit;
};
void describe(FieldVisitor& v, Facts& in);

struct Odometer {
  std::optional<Distance> reading;
};
void describe(FieldVisitor& v, Odometer& in);

struct Clock {
  std::optional<Distance> old_reading;
  std::optional<Distance> new_reading;
};
void describe(FieldVisitor& v, Clock& in);

struct Service {
  std::vector<std::string> items;
  std::optional<Distance> odometer;
  std::string done_by;
  Proof proof = Proof::None;
  bool undated = false;  // the paper has a reading and no day; that of the entry is only when it was seen
};
void describe(FieldVisitor& v, Service& in);

struct Wear {
  std::string what;
  std::optional<Length> measured;
  std::optional<Limit<Length>> limit;
};
void describe(FieldVisitor& v, Wear& in);

struct Inspected {
  std::string part;
  std::optional<Grade> grade;
  std::optional<Distance> odometer;
  std::vector<Wear> wear;
  Proof proof = Proof::None;
};
void describe(FieldVisitor& v, Inspected& in);

// The owner's interval of an item; it goes before the one that is usual. Needs a distance, months, or `none`.
struct Rule {
  std::string item;
  std::optional<Distance> every;
  std::optional<int> months;
  bool none = false;  // this bike hasn't got it
  std::string why;
};
void describe(FieldVisitor& v, Rule& in);

// Put off, with the reason: the item is due as before, and says that it was put off. Needs a day or a reading.
struct Snooze {
  std::string item;
  std::optional<Date> until;
  std::optional<Distance> odometer;
  std::string reason;
};
void describe(FieldVisitor& v, Snooze& in);

struct Note {
  std::string text;
};
void describe(FieldVisitor& v, Note& in);

}  // namespace entered

// The fields as they were entered, read and checked. Not solved: refused, or of no kind that has fields.
Solved read_entered(const Entry& entry);

// What was entered; nothing when it is of another kind or refused.
template <class T>
std::optional<T> entered_as(const Entry& entry) {
  const Solved read = read_entered(entry);
  const T* const fields = read.input_as<T>();
  return read.solved && fields ? std::optional(*fields) : std::nullopt;
}

}  // namespace camside::records
