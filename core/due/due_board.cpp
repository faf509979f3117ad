#include "due/due_board.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <tuple>
#include <utility>

#include "base/harmless.hpp"
#include "base/stable_sort.hpp"
#include "units/parse.hpp"

namespace camside::due_board {

namespace {

using inspection_due::ItemResult;
using inspection_due::LogEntry;
using inspection_due::State;
using records::Entry;
namespace entered = records::entered;

// The log names an engine by the calculator's choice, what is known names it by its id.
constexpr std::array<std::pair<std::string_view, std::string_view>, 6> engine_ids{{
    {"single cam", "single_cam"},
    {"two cams, sprung chains", "sprung_chain"},
    {"two cams, hydraulic chains", "hydraulic_chain"},
    {"own", "own"},
    {"single cam, one chain", "single_chain"},
    {"four cams, gears", "four_cam"},
}};

// How names are compared.
std::string key_of(std::string_view name) {
  const auto blank = [](char c) { return c == ' ' || c == '\t' || c == '\n'; };
  while (!name.empty() && blank(name.front())) name.remove_prefix(1);
  while (!name.empty() && blank(name.back())) name.remove_suffix(1);
  std::string key(name);
  for (char& c : key)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return key;
}

std::optional<Date> day_of(const Entry& entry) {
  const auto day = parse_date(entry.day().substr(0, 10));
  return day ? std::optional(*day) : std::nullopt;
}

// Something of the log with the day it is about and its place there.
template <class T>
struct Dated {
  T what;
  Date day;
  std::size_t entry = 0;
};

class Reader {
 public:
  Reader(const records::Log& log, const records::Bike& bike, Date today) : log_(log), bike_(bike) {
    h_.bike = bike.id;
    h_.name = harmless(bike.name());
    h_.due.today = today;
    if (!bike.odometer_unit.empty()) h_.clock = bike.odometer_unit == "km" ? System::Metric : System::Inch;
  }

  History read(const knowledge::Knowledge& known) {
    take_entries();
    take_readings();
    add_usual(known);
    for (const auto& rule : rules_) apply(rule);
    for (std::size_t i = 0; i < h_.due.items.size(); ++i) fill(i);
    find_faults();
    return std::move(h_);
  }

 private:
  // ---- entries

  void take_entries() {
    for (const records::Line& line : bike_.lines)
      for (const std::size_t i : line.current)
        if (log_.entries()[i].bike() == bike_.id) take(i);
  }

  void take(std::size_t i) {
    const Entry& entry = log_.entries()[i];
    const std::string kind = entry.kind();
    if (kind == "odometer") return take_as<entered::Odometer>(i, [](auto& o) { return reading(o.reading); });
    if (kind == "clock")
      return take_as<entered::Clock>(i, [](auto& c) { return LogEntry{{}, c.old_reading, c.new_reading}; });
    if (kind == "service")
      return keep(services_, i, [](auto& s) { return s.proof == entered::Proof::Hearsay || s.undated; });
    if (kind == "finding") return keep(looks_, i, [](auto& f) { return f.proof == entered::Proof::Hearsay; });
    if (kind == "rule") return collect(rules_, i);
    if (kind == "snooze") return collect(snoozes_, i);
  }

  static LogEntry reading(std::optional<Distance> odometer) { return {{}, odometer, {}}; }

  // The day an entry is about, unless it is after today.
  std::optional<Date> day_so_far(std::size_t i) {
    const auto day = day_of(log_.entries()[i]);
    if (!day || *day <= *h_.due.today) return day;
    leave_out(inspection_due::dated_after_today(*day, *h_.due.today));
    return {};
  }

  template <class T, class Make>
  void take_as(std::size_t i, Make make) {
    auto what = records::entered_as<T>(log_.entries()[i]);
    if (what) add_reading(i, make(*what));
  }

  void add_reading(std::size_t i, LogEntry one) {
    one.date = day_so_far(i);
    if (one.date && one.odometer) readings_.push_back(one);
  }

  template <class T>
  void collect(std::vector<Dated<T>>& all, std::size_t i) {
    auto what = records::entered_as<T>(log_.entries()[i]);
    const auto day = day_of(log_.entries()[i]);
    if (what && day) all.push_back({std::move(*what), *day, i});
  }

  template <class T, class Hearsay>
  void keep(std::vector<Dated<T>>& all, std::size_t i, Hearsay hearsay) {
    const std::size_t before = all.size();
    collect(all, i);
    if (all.size() == before) return;
    if (all.back().day > *h_.due.today) {
      leave_out(inspection_due::dated_after_today(all.back().day, *h_.due.today));
      return all.pop_back();
    }
    if (!hearsay(all.back().what)) add_reading(i, reading(all.back().what.odometer));
  }

  // ---- the odometer

  void leave_out(Finding finding) {
    constexpr std::size_t enough = 20;
    finding.severity = Severity::Caution;
    finding.field.clear();
    if (h_.findings.size() < enough) h_.findings.push_back(std::move(finding));
  }

  void thin_out() {
    while (readings_.size() > most_readings) {
      std::size_t n = 0;
      const std::size_t last = readings_.size() - 1;
      std::vector<LogEntry> some;
      for (const LogEntry& one : readings_) {
        if (n % 2 == 0 || n == last || one.new_clock) some.push_back(one);
        ++n;
      }
      if (some.size() == readings_.size()) break;  // nothing but swaps
      readings_ = std::move(some);
    }
  }

  // Which reading a refusal is about: "log[12].odometer".
  static std::optional<std::size_t> refused_reading(const Finding& finding) {
    constexpr std::string_view begin = "log[";
    if (!finding.field.starts_with(begin)) return {};
    std::size_t i = 0;
    const char* const end = finding.field.data() + finding.field.size();
    const auto read = std::from_chars(finding.field.data() + begin.size(), end, i);
    return read.ec == std::errc{} ? std::optional(i) : std::nullopt;
  }

  // True when one was left out: then it is read again.
  bool leave_one_out() {
    for (const Finding& f : h_.riding.log.findings) {
      if (f.severity != Severity::Refusal) continue;
      const auto which = refused_reading(f);
      if (!which || *which >= readings_.size()) return false;
      leave_out(f);
      readings_.erase(readings_.begin() + static_cast<std::ptrdiff_t>(*which));
      return true;
    }
    return false;
  }

  void take_readings() {
    thin_out();
    do h_.riding = inspection_due::riding_of(readings_);
    while (leave_one_out());
  }

  // ---- items and rules

  // By its own name, or by that of the whole it belongs to.
  bool is_meant(std::size_t i, std::string_view key) const {
    return key_of(h_.due.items[i].name) == key || (!h_.watched[i].part_of.empty() && is_whole(i, key));
  }
  bool is_whole(std::size_t i, std::string_view key) const { return key_of(h_.watched[i].part_of) == key; }

  std::vector<std::size_t> find(std::string_view name) const {
    std::vector<std::size_t> all;
    for (std::size_t i = 0; i < h_.due.items.size(); ++i)
      if (is_meant(i, key_of(name))) all.push_back(i);
    return all;
  }

  // As built unless the owner says otherwise; not known: all that there can be.
  static std::vector<std::string> drives_of(const look_over::Engine& engine, const std::string& drive) {
    if (drive.empty() && !engine.drives.empty()) return {engine.drives.front()};
    return drive == look_over::drive_not_known ? engine.drives : std::vector<std::string>{drive};
  }

  void add_usual(const knowledge::Knowledge& known) {
    const std::string_view id = engine_id(bike_.engine);
    const look_over::Engine* const engine = engine_of(known.book, id);
    h_.engine_known = engine != nullptr;
    if (engine) h_.drives = drives_of(*engine, bike_.drive);
    for (const knowledge::Item* item : knowledge::items_of(known, id, h_.drives))
      if (find(item->name).empty()) add_item(known, *item);
  }

  void add_item(const knowledge::Knowledge& known, const knowledge::Item& item) {
    inspection_due::Item due{item.name, item.every, item.months, item.source, {}, {}};
    Watched watched;
    watched.note = item.note;
    watched.by_finding = !item.replaced;
    watched.usual = true;
    watched.every_worn = item.every_worn;
    watched.risk = item.risk;
    watched.part_of = item.part_of;
    watched.hidden = item.hidden;
    if (const look_over::Risk* risk = risk_of(known.book, item.risk)) {
      due.due_from = risk->must_from;
      watched.with = risk->must_with;
    }
    h_.due.items.push_back(std::move(due));
    h_.watched.push_back(std::move(watched));
  }

  // By day: a later rule goes before an earlier one.
  void apply(const Dated<entered::Rule>& rule) {
    const std::string key = key_of(rule.what.item);
    std::erase_if(h_.not_fitted, [&](const NotFitted& n) { return key_of(n.item) == key; });
    if (rule.what.none) return h_.not_fitted.push_back({rule.what.item, rule.what.why, rule.entry});
    std::vector<std::size_t> meant = find(rule.what.item);
    if (meant.empty()) {
      meant.push_back(h_.due.items.size());
      h_.due.items.push_back({rule.what.item, {}, {}, {}, {}, {}});
      h_.watched.emplace_back();
    }
    for (const std::size_t i : meant) {
      h_.watched[i].rule = rule.entry;
      set_rule(h_.due.items[i], h_.watched[i], rule.what);
    }
  }

  static void set_rule(inspection_due::Item& item, Watched& watched, const entered::Rule& rule) {
    item.every = rule.every;
    item.months = rule.months;
    item.source = Source::owner("the owner's own interval");
    if (!rule.why.empty()) watched.note = rule.why;
  }

  // ---- what was done

  void fill(std::size_t i) {
    for (const auto& done : services_)
      for (const std::string& item : done.what.items)
        if (is_meant(i, key_of(item))) add_done(i, day_on_paper(done), done.what.odometer, done.what.proof);
    add_looks(i);
    shorten_worn(i);
    for (const auto& snooze : snoozes_)
      if (is_meant(i, key_of(snooze.what.item))) h_.watched[i].put_off = put_off(i, snooze);
  }

  // No longer than is usual for a worn one, until the owner says how long.
  void shorten_worn(std::size_t i) {
    inspection_due::Item& item = h_.due.items[i];
    const Watched& watched = h_.watched[i];
    if (!watched.worn || watched.worn->own_interval_since || !watched.every_worn) return;
    if (item.every && *item.every <= *watched.every_worn) return;
    item.every = watched.every_worn;
    item.source = Source::memory();
  }

  static std::optional<Date> day_on_paper(const Dated<entered::Service>& done) {
    return done.what.undated ? std::nullopt : std::optional(done.day);
  }

  void add_done(std::size_t i, std::optional<Date> day, std::optional<Distance> odometer, entered::Proof proof) {
    if (proof == entered::Proof::Hearsay) odometer.reset();
    h_.due.items[i].services.push_back({day, odometer, entered::proves(proof), ""});
  }

  void add_looks(std::size_t i) {
    Watched& watched = h_.watched[i];
    for (const auto& look : looks_) {
      const std::string key = key_of(look.what.part);
      if (!is_meant(i, key) || look.what.grade == entered::Grade::NotSeen) continue;
      const bool good = look.what.grade == entered::Grade::Good;
      if (good && watched.hidden && key_of(h_.due.items[i].name) != key) continue;
      add_look(i, look);
    }
  }

  void add_look(std::size_t i, const Dated<entered::Inspected>& look) {
    Watched& watched = h_.watched[i];
    const bool bad = look.what.grade >= entered::Grade::AtLimit;
    const bool open = !serviced_since(i, look.entry, look.day);
    watched.bad.reset();
    if (bad && open) watched.bad = Bad{*look.what.grade, look.day};
    if (look.what.grade == entered::Grade::Worn && open) watched.worn = Worn{look.day, ruled_since(i, look)};
    if (!bad && (watched.by_finding || !watched.usual)) add_done(i, look.day, look.what.odometer, look.what.proof);
  }

  bool ruled_since(std::size_t i, const Dated<entered::Inspected>& look) const {
    return std::any_of(rules_.begin(), rules_.end(), [&](const auto& rule) {
      return is_meant(i, key_of(rule.what.item)) && rule.what.every &&
             later(rule.entry, rule.day, look.entry, look.day);
    });
  }

  // The latest word on each part that has no interval.
  void find_faults() {
    for (const auto& look : looks_) {
      const std::string key = key_of(look.what.part);
      if (look.what.grade == entered::Grade::NotSeen || !find(look.what.part).empty()) continue;
      std::erase_if(h_.faults, [&](const Fault& f) { return key_of(f.part) == key; });
      const bool bad = look.what.grade >= entered::Grade::AtLimit;
      if (bad && !named_since(key, look.entry, look.day))
        h_.faults.push_back({look.what.part, *look.what.grade, look.day});
    }
  }

  // The order of one day is that in which the entries were made.
  bool later(std::size_t a, Date day_a, std::size_t b, Date day_b) const {
    const auto made = [&](std::size_t i) { return log_.entries()[i].made_at(); };
    return std::tuple(day_a, made(a)) > std::tuple(day_b, made(b));
  }

  template <class Names>
  bool service_since(std::size_t entry, Date day, Names names) const {
    return std::any_of(services_.begin(), services_.end(), [&](const auto& s) {
      return later(s.entry, s.day, entry, day) && std::any_of(s.what.items.begin(), s.what.items.end(), names);
    });
  }
  bool serviced_since(std::size_t i, std::size_t entry, Date day) const {
    return service_since(entry, day, [&](const auto& name) { return is_meant(i, key_of(name)); });
  }
  bool named_since(const std::string& key, std::size_t entry, Date day) const {
    return service_since(entry, day, [&](const auto& name) { return key_of(name) == key; });
  }

  bool looked_since(std::size_t i, std::size_t entry, Date day) const {
    return std::any_of(looks_.begin(), looks_.end(), [&](const auto& look) {
      const bool hidden = h_.watched[i].hidden && key_of(h_.due.items[i].name) != key_of(look.what.part);
      return is_meant(i, key_of(look.what.part)) && !hidden && look.what.grade != entered::Grade::NotSeen &&
             later(look.entry, look.day, entry, day);
    });
  }

  // Over when its day or reading has come, or when the item was done since.
  std::optional<PutOff> put_off(std::size_t i, const Dated<entered::Snooze>& snooze) const {
    const bool look_counts = h_.watched[i].by_finding || !h_.watched[i].usual;
    if (serviced_since(i, snooze.entry, snooze.day)) return {};
    if (look_counts && looked_since(i, snooze.entry, snooze.day)) return {};
    PutOff off{snooze.what.reason, snooze.what.until, snooze.what.odometer, {}, snooze.entry};
    if (off.until && *off.until <= *h_.due.today) return {};
    if (!off.odometer) return off;
    off.total = inspection_due::total_of(h_.riding.log, *off.odometer, inspection_due::day_number(snooze.day));
    const auto& points = h_.riding.log.points;
    if (!points.empty() && points.back().total >= *off.total) return {};
    return off;
  }

  const records::Log& log_;
  const records::Bike& bike_;
  History h_;
  std::vector<LogEntry> readings_;
  std::vector<Dated<entered::Service>> services_;
  std::vector<Dated<entered::Inspected>> looks_;
  std::vector<Dated<entered::Rule>> rules_;
  std::vector<Dated<entered::Snooze>> snoozes_;
};

// ---- the board

// Which service a refusal is about: "items[1].services[3].odometer".
bool erase_service(inspection_due::Input& in, const Finding& finding) {
  std::size_t item = 0;
  std::size_t service = 0;
  const char* at = finding.field.data();
  const char* const end = at + finding.field.size();
  constexpr std::string_view first = "items[";
  constexpr std::string_view second = "].services[";
  if (!finding.field.starts_with(first)) return false;
  at = std::from_chars(at + first.size(), end, item).ptr;
  if (!std::string_view(at, static_cast<std::size_t>(end - at)).starts_with(second)) return false;
  std::from_chars(at + second.size(), end, service);
  auto& services = in.items[item].services;
  services.erase(services.begin() + static_cast<std::ptrdiff_t>(service));
  return true;
}

// Services that can't be placed are left out one by one, each with its caution.
inspection_due::Result judged(const History& h, Findings& left_out) {
  inspection_due::Result r = inspection_due::standing(h.due, h.riding);
  std::optional<inspection_due::Input> fewer;
  while (r.items.empty()) {
    const auto refusal = std::find_if(r.outcome.findings.begin(), r.outcome.findings.end(),
                                      [](const Finding& f) { return f.severity == Severity::Refusal; });
    if (refusal == r.outcome.findings.end()) break;
    if (!fewer) fewer = h.due;
    Finding finding = *refusal;
    if (!erase_service(*fewer, finding)) break;
    finding.severity = Severity::Caution;
    left_out.push_back(std::move(finding));
    r = inspection_due::standing(*fewer, h.riding);
  }
  return r;
}

State with_found(State state, const Watched& watched) {
  if (!watched.bad) return state;
  return std::min(state, watched.bad->grade == entered::Grade::Failed ? State::Overdue : State::DueSoon);
}

// No proof and nothing to count from needs looking at before what is good; so does a count without proof.
int urgency(const Row& row) {
  constexpr std::array<int, 4> order{0, 1, 4, 2};  // Overdue, DueSoon, Good, NotKnown
  const int of_state = order[static_cast<std::size_t>(row.state)];
  return of_state == 4 && !row.result.proof ? 3 : of_state;
}

bool before(const Row& a, const Row& b) {
  const auto key = [](const Row& row) {
    const ItemResult& r = row.result;
    const double share = r.distance && r.every > Distance{} ? r.distance->left / r.every : 1.0;
    return std::tuple(row.put_off, urgency(row), !r.next.has_value(), r.next ? inspection_due::day_number(*r.next) : 0,
                      share);
  };
  return key(a) < key(b);
}

bool fitted(const History& h, std::size_t i) {
  return std::none_of(h.not_fitted.begin(), h.not_fitted.end(), [&](const NotFitted& n) {
    const std::string key = key_of(n.item);
    return key == key_of(h.due.items[i].name) || key == key_of(h.watched[i].part_of);
  });
}

// What nobody can show to be done is done with the work that opens the engine there anyway.
void take_along(const History& h, std::vector<Row>& rows) {
  const std::vector<Row> alone = rows;
  for (Row& row : rows) {
    const std::string& with = h.watched[row.item].with;
    if (with.empty() || row.result.proof || due_now(row)) continue;
    for (const Row& other : alone) {
      if (h.watched[other.item].risk != with || !due_now(other)) continue;
      row.state = State::Overdue;
      row.with = h.watched[other.item].part_of.empty() ? other.result.name : h.watched[other.item].part_of;
    }
  }
}

}  // namespace

bool due_now(const Row& row) {
  return row.state == State::Overdue || (row.state == State::NotKnown && !row.result.proof);
}

std::string_view engine_id(std::string_view choice) {
  for (const auto& [name, id] : engine_ids)
    if (name == choice) return id;
  return {};
}

std::string_view engine_choice(std::string_view id) {
  for (const auto& [name, of] : engine_ids)
    if (of == id) return name;
  return {};
}

History history_of(const records::Log& log, const records::Bike& bike, const knowledge::Knowledge& known, Date today) {
  return Reader(log, bike, today).read(known);
}

Board board_of(const History& h) {
  Board board;
  board.findings = h.findings;
  if (h.due.items.empty()) return board;
  inspection_due::Result r = judged(h, board.findings);
  board.odometer = r.odometer;
  board.ridden = r.ridden;
  board.rate = r.rate;
  for (Finding& f : r.outcome.findings) board.findings.push_back(std::move(f));
  for (std::size_t i = 0; i < r.items.size(); ++i) {
    if (!fitted(h, i)) continue;
    const Watched& watched = h.watched[i];
    const State state = with_found(r.items[i].state, watched);
    board.rows.push_back({i, std::move(r.items[i]), state, watched.put_off.has_value(), {}});
  }
  take_along(h, board.rows);
  sort_stably(board.rows.begin(), board.rows.end(), before);
  return board;
}

}  // namespace camside::due_board
