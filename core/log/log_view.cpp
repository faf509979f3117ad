#include "log/log_view.hpp"

#include <algorithm>
#include <map>
#include <numeric>
#include <set>
#include <span>
#include <tuple>
#include <utility>

#include "base/stable_sort.hpp"
#include "log/log_remarks.hpp"
#include "records/strict_json.hpp"

namespace camside::records {

namespace {

// ---- which entries belong to one line

class Groups {  // disjoint sets
 public:
  std::size_t add() {
    parent_.push_back(parent_.size());
    return parent_.size() - 1;
  }
  std::size_t root(std::size_t i) {
    while (parent_[i] != i) i = parent_[i] = parent_[parent_[i]];
    return i;
  }
  void join(std::size_t a, std::size_t b) { parent_[root(a)] = root(b); }

 private:
  std::vector<std::size_t> parent_;
};

std::string without_fingerprint(const std::string& reference) {
  const std::size_t mark = reference.rfind('#');
  return mark == std::string::npos || mark == 0 ? reference : reference.substr(0, mark);
}

struct Links {
  std::vector<std::vector<std::size_t>> over;  // entries each entry replaces
  std::vector<bool> replaced;
  Groups groups;  // the entries, then what isn't here
  Findings findings;
};

class Linker {
 public:
  explicit Linker(const Log& log) : log_(log) {
    links_.over.resize(log.size());
    links_.replaced.resize(log.size());
    for (std::size_t i = 0; i < log.size(); ++i) links_.groups.add();
  }

  Links linked() {
    for (std::size_t i = 0; i < log_.size(); ++i) {
      join_same_id(i);
      for (const std::string& reference : log_.entries()[i].replaces()) link(i, reference);
    }
    return std::move(links_);
  }

 private:
  void join_same_id(std::size_t i) {
    const std::string id = log_.entries()[i].id();
    if (id.empty()) return;
    const std::vector<std::size_t> same = log_.with_id(id);
    if (same.size() < 2) return;
    for (const std::size_t other : same) links_.groups.join(i, other);
    if (same.front() == i) links_.findings.push_back(remarks::same_id_other_content(id, same.size()));
  }

  void link(std::size_t i, const std::string& reference) {
    const std::vector<std::size_t> meant = log_.meant_by(reference);
    if (meant.empty()) return link_loosely(i, without_fingerprint(reference));
    for (const std::size_t old : meant) {
      if (old == i) {
        links_.findings.push_back(remarks::replaces_itself(reference));
        continue;
      }
      links_.over[i].push_back(old);
      links_.replaced[old] = true;
      links_.groups.join(i, old);
    }
  }

  // What isn't here, or isn't clear, is not replaced; but all that would replace it belong together.
  void link_loosely(std::size_t i, const std::string& id) {
    const std::vector<std::size_t> candidates = log_.with_id(id);
    for (const std::size_t candidate : candidates) links_.groups.join(i, candidate);
    if (!candidates.empty()) return;
    links_.findings.push_back(remarks::replaces_unknown(id));
    const auto [it, fresh] = absent_.try_emplace(id, 0);
    if (fresh) it->second = links_.groups.add();
    links_.groups.join(i, it->second);
  }

  const Log& log_;
  Links links_;
  std::map<std::string, std::size_t> absent_;
};

// Entries that no current entry leads to replace each other in a circle; they count as current.
std::vector<bool> current_ones(const Links& links) {
  const std::size_t count = links.replaced.size();
  std::vector<bool> current(count);
  std::vector<bool> settled(count);
  std::vector<std::size_t> open;
  for (std::size_t i = 0; i < count; ++i) {
    current[i] = !links.replaced[i];
    if (current[i]) open.push_back(i);
  }
  while (!open.empty()) {
    const std::size_t i = open.back();
    open.pop_back();
    if (settled[i]) continue;
    settled[i] = true;
    open.insert(open.end(), links.over[i].begin(), links.over[i].end());
  }
  for (std::size_t i = 0; i < count; ++i) {
    if (!settled[i]) current[i] = true;
  }
  return current;
}

// ---- lines

std::string shown_content(const Entry& entry) {
  if (!entry.record.json->is_object()) return canonical_json(entry.record.json);
  Json json = entry.record.json;
  for (const char* name : {"id", "made", "by", "replaces"}) json.erase(name);
  return canonical_json(json);
}

bool all_say_the_same(const Log& log, const std::vector<std::size_t>& indexes) {
  return std::all_of(indexes.begin(), indexes.end(), [&](std::size_t i) {
    return i == indexes.front() || says_the_same(log.entries()[i], log.entries()[indexes.front()]);
  });
}

Line finished(const Log& log, Line line) {
  const auto& entries = log.entries();
  line.deleted =
      std::all_of(line.current.begin(), line.current.end(), [&](std::size_t i) { return entries[i].is_deletion(); });
  line.apart = !line.deleted && !all_say_the_same(log, line.current);
  for (const auto* part : {&line.current, &line.replaced}) {
    for (const std::size_t i : *part) {
      if (line.day.empty() && !entries[i].is_deletion()) line.day = entries[i].day();
    }
  }
  return line;
}

std::vector<Line> lines_of(const Log& log, std::span<const std::size_t> order, Links& links, Findings& findings) {
  const std::vector<bool> current = current_ones(links);
  std::map<std::size_t, std::size_t> line_of_root;
  std::vector<Line> lines;  // as they first appear by time, which is the same for equal sets
  for (const std::size_t i : order) {
    const auto [it, fresh] = line_of_root.try_emplace(links.groups.root(i), lines.size());
    if (fresh) lines.emplace_back();
    Line& line = lines[it->second];
    (current[i] ? line.current : line.replaced).push_back(i);
    if (current[i] && links.replaced[i]) findings.push_back(remarks::replaces_in_a_circle(log.entries()[i].id()));
  }
  for (Line& line : lines) line = finished(log, std::move(line));
  return lines;
}

// The bikes a line belongs to: those its current entries name; of a deleted line, those it named before.
std::set<std::string> bikes_of(const Log& log, const Line& line) {
  std::set<std::string> bikes;
  for (const std::size_t i : line.current) {
    if (!log.entries()[i].is_deletion()) bikes.insert(log.entries()[i].bike());
  }
  if (!bikes.empty()) return bikes;
  for (const std::size_t i : line.replaced) {
    if (!log.entries()[i].is_deletion()) bikes.insert(log.entries()[i].bike());
  }
  if (bikes.empty()) bikes.insert(log.entries()[line.current.front()].bike());
  return bikes;
}

// ---- bikes

// A later entry's words go before an earlier one's; `entries` are by time made.
void take_facts(Bike& bike, const Entry& entry) {
  const std::pair<const char*, std::string*> fields[]{
      {"nickname", &bike.nickname},     {"engine", &bike.engine}, {"own_engine", &bike.own_engine},
      {"model_year", &bike.model_year}, {"drive", &bike.drive},   {"odometer_unit", &bike.odometer_unit},
  };
  for (const auto& [name, to] : fields) {
    const std::string text = entry.entered_text(name);
    if (!text.empty()) *to = text;
  }
}

// Indexes of the current entries of a kind, by time made.
std::vector<std::size_t> current_of_kind(const Log& log, const Bike& bike, std::string_view kind) {
  std::vector<std::size_t> found;
  for (const Line& line : bike.lines) {
    for (const std::size_t i : line.current) {
      if (log.entries()[i].kind() == kind && log.entries()[i].bike() == bike.id) found.push_back(i);
    }
  }
  if (found.size() < 2) return found;
  sort_stably(found.begin(), found.end(), [&](std::size_t a, std::size_t b) {
    return std::make_tuple(log.entries()[a].made_at(), log.entries()[a].id()) <
           std::make_tuple(log.entries()[b].made_at(), log.entries()[b].id());
  });
  return found;
}

// Indexes by the day they are about, then by time made.
void sort_by_day(const Log& log, std::vector<std::size_t>& indexes) {
  sort_stably(indexes.begin(), indexes.end(),
              [&](std::size_t a, std::size_t b) { return log.entries()[a].day() < log.entries()[b].day(); });
}

// `rank` is the place of each entry by time made.
void finish(const Log& log, std::span<const std::size_t> rank, Bike& bike) {
  sort_stably(bike.lines.begin(), bike.lines.end(), [&](const Line& a, const Line& b) {
    if (a.day != b.day) return a.day < b.day;
    return rank[a.current.front()] < rank[b.current.front()];
  });
  for (const std::size_t i : current_of_kind(log, bike, "facts")) take_facts(bike, log.entries()[i]);
  bike.clock_swaps = current_of_kind(log, bike, "clock");
  sort_by_day(log, bike.clock_swaps);
  bike.removed = std::all_of(bike.lines.begin(), bike.lines.end(), [](const Line& line) { return line.deleted; });
}

void note_apart(const Log& log, const std::vector<Line>& lines, Findings& findings) {
  for (const Line& line : lines) {
    if (line.apart)
      findings.push_back(remarks::corrected_apart(log.entries()[line.current.front()].id(), line.current.size()));
  }
}

void sort_findings(Findings& findings) {
  sort_stably(findings.begin(), findings.end(), [](const Finding& a, const Finding& b) {
    return std::tie(a.number, a.text) < std::tie(b.number, b.text);
  });
}

}  // namespace

std::string Bike::name() const {
  return nickname.empty() ? id : nickname;
}

View view(const Log& log) {
  View view;
  Links links = Linker(log).linked();
  view.findings = std::move(links.findings);
  const std::vector<std::size_t> order = log.in_order();
  std::vector<std::size_t> rank(order.size());
  for (std::size_t place = 0; place < order.size(); ++place) rank[order[place]] = place;
  std::vector<Line> lines = lines_of(log, order, links, view.findings);
  note_apart(log, lines, view.findings);
  sort_findings(view.findings);
  std::map<std::string, Bike> bikes;
  for (Line& line : lines) {
    const std::set<std::string> named = bikes_of(log, line);
    for (const std::string& id : named) bikes[id].lines.push_back(named.size() > 1 ? line : std::move(line));
  }
  for (auto& [id, bike] : bikes) {
    bike.id = id;
    finish(log, rank, bike);
    view.bikes.push_back(std::move(bike));
  }
  sort_stably(view.bikes.begin(), view.bikes.end(),
              [](const Bike& a, const Bike& b) { return std::tie(a.nickname, a.id) < std::tie(b.nickname, b.id); });
  return view;
}

const Bike* find_bike(const View& view, std::string_view id) {
  const auto it = std::find_if(view.bikes.begin(), view.bikes.end(), [&](const Bike& b) { return b.id == id; });
  return it == view.bikes.end() ? nullptr : &*it;
}

std::vector<std::string> bikes_called(const View& view, std::string_view name) {
  if (find_bike(view, name) != nullptr) return {std::string(name)};
  std::vector<std::string> ids;
  for (const Bike& bike : view.bikes) {
    if (!bike.removed && bike.nickname == name) ids.push_back(bike.id);
  }
  return ids;
}

std::optional<std::size_t> latest_odometer(const Log& log, const Bike& bike) {
  std::vector<std::size_t> readings = current_of_kind(log, bike, "odometer");
  sort_by_day(log, readings);
  if (readings.empty()) return std::nullopt;
  return readings.back();
}

bool says_the_same(const Entry& a, const Entry& b) {
  return shown_content(a) == shown_content(b);
}

}  // namespace camside::records
